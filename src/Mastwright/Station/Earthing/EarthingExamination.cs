using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Feed;
using Mastwright.Station.Supply;

namespace Mastwright.Station.Earthing;

/// <summary>What a fit-out's earthing is examined from.</summary>
public sealed record EarthingInput
{
    /// <summary>Where in the plan the fit-out stands.</summary>
    public required string FitOutPath { get; init; }

    /// <summary>The earthing; null when the plan says nothing of it.</summary>
    public required EarthingFit? Earthing { get; init; }

    /// <summary>Height of the antenna's tip above the ground in metres; null when unknown.</summary>
    public double? TipHeightMetres { get; init; }

    /// <summary>Whether the antenna is inside a building.</summary>
    public bool IsIndoors { get; init; }

    /// <summary>The feed.</summary>
    public ImmutableArray<FeedPart> Feed { get; init; } = [];

    /// <summary>The supply from its source to the loads.</summary>
    public ImmutableArray<SupplyPart> Supply { get; init; } = [];

    /// <summary>Whether the supply's cables lead to a box outside.</summary>
    public bool IsBoxOutside { get; init; }

    /// <summary>Whether a solar panel charges the station: its cable comes in from outside.</summary>
    public bool HasPanel { get; init; }

    /// <summary>Lightning classes, conductors, soils.</summary>
    public required StationCatalogue Catalogue { get; init; }

    internal string Path => StationDefaults.Join(FitOutPath, "earthing");
}

/// <summary>Earth, lightning and surges: numbers held against the standards' numbers. It never says that something is protected.</summary>
public static class EarthingExamination
{
    private const string MastStandard = "IEC 60728-11:2016, from memory";

    /// <summary>Low-frequency resistance in ohms that is wished for (IEC 62305-3:2010, clause 5.4.1, from memory).</summary>
    private const double WantedOhms = 10;

    /// <summary>An antenna further below the roof's edge than this in metres needs no earth (IEC 60728-11, clause 11, from memory) …</summary>
    private const double ExemptBelowMetres = 2;

    /// <summary>… if it is also nearer to the wall than this in metres.</summary>
    private const double ExemptFromWallMetres = 1.5;

    /// <summary>Examines earth and lightning of a fit-out.</summary>
    /// <param name="input">What is known.</param>
    public static Examination Of(EarthingInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        if (input.IsIndoors)
        {
            return Examination.Nothing;
        }

        List<Finding> findings = [SurgeOnCoax(input)];
        List<Ledger> ledgers = [];
        List<Assumption> assumptions = [];
        if (input.Earthing is not { } earthing)
        {
            findings.Add(Finding.Unknown("earthing-not-described", input.FitOutPath, "earthing"));
            findings.AddRange(DataCableReview.Of(input));
            return new() { Findings = [.. findings] };
        }

        findings.AddRange(DataCableReview.Of(input));
        findings.Add(MastEarth(input, earthing));
        findings.Add(LightningReview.Zone(input, earthing, ledgers));
        EarthResistance.Judge(input, earthing, WantedOhms, findings, ledgers, assumptions);
        if (earthing.HasLightningProtection != false)
        {
            findings.Add(LightningReview.Separation(input, earthing, ledgers, assumptions));
        }

        return new() { Ledgers = [.. ledgers], Findings = [.. findings], Assumptions = [.. assumptions] };
    }

    private static Finding SurgeOnCoax(EarthingInput input)
    {
        bool has = input.Feed.Any(part => part is LossyPart { Kind: LossyPartKind.SurgeArrester });
        return new()
        {
            Code = "surge-coax",
            Subject = StationDefaults.Join(input.FitOutPath, "feed"),
            Verdict = has ? Verdict.Ok : Verdict.Tight,
            Source = "common practice; IEC 62305-4",
            Details = FindingDetails.Of(("has", has
                ? "The coax has a surge arrester, which lowers a surge from the antenna and does not stop a strike."
                : "The coax has no surge arrester: a surge on the antenna reaches the radio through it.")),
        };
    }

    private static Finding MastEarth(EarthingInput input, EarthingFit earthing)
    {
        if (earthing is { BelowRoofEdgeMetres: > ExemptBelowMetres, FromWallMetres: < ExemptFromWallMetres })
        {
            return Made("mast-earth-exempt", Verdict.Ok, ("below", Metres(earthing.BelowRoofEdgeMetres)), ("wall", Metres(earthing.FromWallMetres)));
        }

        EarthConductorRow? least = input.Catalogue.Earthing.Conductors.Find(earthing.ConductorMaterial);
        if (least is null || earthing.ConductorSquareMillimetres is not { } area)
        {
            return Made("mast-earth-unknown", Verdict.Unknown, ("known", input.Catalogue.Earthing.Conductors.Listed()));
        }

        return Made(
            "mast-earth", area >= least.LeastSquareMillimetres - 1e-6 ? Verdict.Ok : Verdict.Fails,
            ("area", FormattableString.Invariant($"{area:0.#} mm²")), ("material", least.Key), ("least", FormattableString.Invariant($"{least.LeastSquareMillimetres:0.#} mm²"))) with
        {
            Quantity = "conductor from the mast to earth",
            Unit = "mm²",
            Value = Estimate.Exactly(area),
            Limit = least.LeastSquareMillimetres,
            Margin = area - least.LeastSquareMillimetres,
            Source = least.Source,
        };

        Finding Made(string code, Verdict verdict, params ReadOnlySpan<(string, string)> details) => new()
        {
            Code = code,
            Subject = input.Path,
            Verdict = verdict,
            Source = MastStandard,
            Details = FindingDetails.Of(details),
        };
    }

    private static string Metres(double? metres) => FormattableString.Invariant($"{metres:0.0} m");
}
