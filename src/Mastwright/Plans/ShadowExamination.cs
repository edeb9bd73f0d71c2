using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Ground;
using Mastwright.Network.Shadow;

namespace Mastwright.Plans;

/// <summary>Puts a shadow into words and numbers.</summary>
public static class ShadowExamination
{
    /// <summary>The report over a map.</summary>
    /// <param name="setup">What the map was worked out from.</param>
    /// <param name="shadow">The map, with what relays reach.</param>
    /// <param name="ground">The ground.</param>
    /// <param name="relays">The relays whose maps were laid over it.</param>
    /// <param name="hopLimit">Most hops that count.</param>
    public static ShadowReport Of(ReachSetup setup, ShadowMap shadow, GroundMosaic ground, ImmutableArray<(LinkStation Station, int Hops)> relays, int hopLimit)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentNullException.ThrowIfNull(shadow);
        ImmutableArray<ShadowPart> parts = shadow.Parts(hopLimit);
        return new()
        {
            Setup = setup,
            Shadow = shadow,
            HopLimit = hopLimit,
            Parts = parts,
            Ridge = RidgeLine.Of(shadow, ground),
            Relays = relays,
            Findings = [.. setup.Findings, ShadowFindings.Of(setup.Station.Subject, setup.Station.Name, parts)],
            Assumptions = setup.Assumptions,
            Areas = ShadowFindings.Areas(setup.Station.Name, parts),
        };
    }

    /// <summary>A cause in words.</summary>
    public static string Words(ShadowCause cause) => ShadowFindings.Words(cause);

    /// <summary>The stable name of a cause.</summary>
    public static string Code(ShadowCause cause) => ShadowFindings.Code(cause);
}
