using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Station.Earthing;

/// <summary>Surge arresters on the data and power cables outside: what the plan says of them, held against the supply itself.</summary>
/// <remarks>
/// A cable of the supply runs outside when it leads to a box outside, or when the plan says that one does; that of a solar panel always does. An arrester belongs at each end that enters a
/// building or a box: common practice; IEC 62305-4.
/// </remarks>
internal static class DataCableReview
{
    private const string Practice = "common practice; IEC 62305-4";

    internal static IEnumerable<Finding> Of(EarthingInput input)
    {
        DataCableSurge said = input.Earthing?.DataCable ?? DataCableSurge.NotSaid;
        ImmutableArray<CableEnds> all = CableEnds.Of(input.Supply);
        ImmutableArray<CableEnds> outside = input.IsBoxOutside || said is DataCableSurge.Arrester or DataCableSurge.Bare ? all : [];
        if (input.Earthing is null && outside.IsEmpty && !input.HasPanel)
        {
            yield break;
        }

        yield return outside.IsEmpty ? ByWord(input, said) : ByChain(input, outside, said);
        if (Contradiction(said, outside) is { } words)
        {
            yield return new()
            {
                Code = "surge-data-cable-differs",
                Subject = StationDefaults.Join(input.Path, "data-cable"),
                Verdict = Verdict.Tight,
                Source = StationDefaults.Join(input.FitOutPath, "supply"),
                Details = FindingDetails.Of(("differs", words)),
            };
        }
    }

    /// <summary>Without a cable in the supply there is only what the plan says; at which ends an arrester is, it does not say.</summary>
    private static Finding ByWord(EarthingInput input, DataCableSurge said) => Made(
        input,
        said switch
        {
            DataCableSurge.NoCable => input.HasPanel ? Verdict.Unknown : Verdict.Ok,
            DataCableSurge.Bare => Verdict.Tight,
            _ => Verdict.Unknown,
        },
        said switch
        {
            DataCableSurge.NotSaid or DataCableSurge.NoCable when input.HasPanel =>
                $"The cable of the solar panel runs outside{(said == DataCableSurge.NoCable ? ", though the plan says that no data or power cable does" : "")}, and whether it has a surge arrester nobody said",
            DataCableSurge.NotSaid => "Whether a data or power cable runs outside, and has a surge arrester at each end, nobody said",
            DataCableSurge.NoCable => "By the plan no data or power cable runs outside",
            DataCableSurge.Arrester => "By the plan the data or power cable outside has a surge arrester; at which of its ends is not known, as the supply does not have the cable",
            _ => "By the plan the data or power cable outside has no surge arrester",
        });

    private static Finding ByChain(EarthingInput input, ImmutableArray<CableEnds> outside, DataCableSurge said)
    {
        // The supply begins at the battery: the panel's cable is not among its own.
        bool isPanelOpen = input.HasPanel && said != DataCableSurge.Arrester;
        return Made(
            input,
            !outside.All(cable => cable is { IsGuardedAtSource: true, IsGuardedAtLoads: true }) ? Verdict.Tight : isPanelOpen ? Verdict.Unknown : Verdict.Ok,
            string.Join("; ", outside.Select(cable => $"{Name(cable)} has {Ends(cable)}")) + (isPanelOpen ? "; whether the cable of the solar panel has one nobody said" : ""));
    }

    private static string Ends(CableEnds cable) => (cable.IsGuardedAtSource, cable.IsGuardedAtLoads) switch
    {
        (true, true) => "a surge arrester at each end",
        (true, false) => "a surge arrester at its end towards the source, and none at the other",
        (false, true) => "a surge arrester at its end towards the loads, and none at the other",
        _ => "no surge arrester at either end",
    };

    private static string? Contradiction(DataCableSurge said, ImmutableArray<CableEnds> outside) => said switch
    {
        DataCableSurge.NoCable when outside.Length > 0 => $"that no data or power cable runs outside, and {Listed(outside)} leads to a box outside",
        DataCableSurge.Arrester when outside.Where(cable => cable is { IsGuardedAtSource: false, IsGuardedAtLoads: false }).ToImmutableArray() is { Length: > 0 } bare =>
            $"that the data or power cable outside has a surge arrester, and beside {Listed(bare)} the supply has none",
        DataCableSurge.Bare when outside.Where(cable => cable.IsGuardedAtSource || cable.IsGuardedAtLoads).ToImmutableArray() is { Length: > 0 } guarded =>
            $"that the data or power cable outside has no surge arrester, and beside {Listed(guarded)} the supply has one",
        _ => null,
    };

    private static string Listed(ImmutableArray<CableEnds> cables) => string.Join(", ", cables.Select(cable => $"{cable.Cable.CableType} ({cable.Cable.PlanPath})"));

    private static string Name(CableEnds cable) => $"The {(cable.Cable.IsData ? "data cable" : "cable")} {cable.Cable.CableType} outside";

    private static Finding Made(EarthingInput input, Verdict verdict, string words) => new()
    {
        Code = "surge-data-cable",
        Subject = input.Path,
        Verdict = verdict,
        Source = Practice,
        Details = FindingDetails.Of(("has", words)),
    };
}
