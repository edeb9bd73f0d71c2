using Mastwright.Findings;

namespace Mastwright.Station.Mast;

/// <summary>Every value of a mast that is used when nobody gave it: one place, each listed as assumed where it is used.</summary>
internal static class MastDefaults
{
    internal static Assumption RoundMembers { get; } = new(
        "round-members", "round members of galvanised roughness, 0.2 mm, with an end-effect factor of 1", "EN 1991-1-4, Table 7.13, from memory, and clause 7.13");

    internal static Assumption BoxDrag(string mastPath) => new("mast-box-drag", "force coefficient 2 of the box on the mast, a flat face", "from memory, TIA-222 for flat members", mastPath + "/box/drag-coefficient");

    internal static Assumption AreaDrag(string antennaPath) => new("antenna-area-drag", "force coefficient 2 on the antenna's given wind area", "from memory, TIA-222 for flat members", antennaPath + "/drag-coefficient");

    internal static Assumption CableLength(string mastPath) => new("mast-cable-length", "the cable runs up all of the free length", "assumed", mastPath + "/cable/length");

    /// <summary>What a mast in the wind rests on that its plan does not give.</summary>
    internal static IEnumerable<Assumption> Of(MastInput input)
    {
        yield return RoundMembers;
        if (input.Mast!.Box is { DragCoefficient: null, CentreMetres: > 0 })
        {
            yield return BoxDrag(input.MastPath);
        }

        if (input.Antenna is { WindAreaSquareMetres: not null, DragCoefficient: null })
        {
            yield return AreaDrag(input.AntennaPath);
        }

        if (input.Mast.Cable is { LengthMetres: null })
        {
            yield return CableLength(input.MastPath);
        }
    }
}
