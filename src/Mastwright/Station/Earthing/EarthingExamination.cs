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

    /// <summary>Lightning classes, conductors, soils.</summary>
    public required StationCatalogue Catalogue { get; init; }

    internal string Path => StationDefaults.Join(FitOutPath, "earthing");
}

/// <summary>Earth, lightning and surges: numbers held against the standards' numbers. It never says that something is protected.</summary>
public static class EarthingExamination
{
    private const string MastStandard = "IEC 60728-11:2016, from memory";
    private const string LightningStandard = "IEC 62305-3:2010";

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
        findings.Add(Zone(input, earthing));
        EarthResistance.Judge(input, earthing, WantedOhms, findings, ledgers, assumptions);
        if (earthing.HasLightningProtection != false)
        {
            findings.Add(Separation(input, earthing));
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

    private static Finding Zone(EarthingInput input, EarthingFit earthing)
    {
        string path = StationDefaults.Join(input.Path, "air-termination");
        if (earthing.AirTermination == AirTermination.None)
        {
            return new()
            {
                Code = "lightning-highest",
                Subject = path,
                Verdict = Verdict.Tight,
                Source = LightningStandard + ", clause 5.2",
            };
        }

        LightningClassRow? row = input.Catalogue.Earthing.Classes.Find(earthing.LightningClass);
        MissingKeys missing = new();
        missing.Need(row is null, "class");
        missing.Need(earthing.AirTermination == AirTermination.NotSaid, "air-termination");
        missing.Need(earthing.AirTermination == AirTermination.Rod && earthing.RodHeightMetres is null, "rod-height");
        missing.Need(earthing.AirTermination == AirTermination.Rod && earthing.RodDistanceMetres is null, "rod-distance");
        missing.Need(input.TipHeightMetres is null, "the height of the antenna's tip");
        if (missing.Any)
        {
            return Finding.Unknown("lightning-zone-unknown", path, "height of the zone", ("missing", missing.Listed));
        }

        double rod = earthing.RodHeightMetres!.Value;
        double distance = earthing.RodDistanceMetres!.Value;
        double tip = input.TipHeightMetres!.Value;
        double zone = RollingSphere.ZoneHeightMetres(row!.SphereMetres, rod, distance);
        double capped = Math.Min(rod, row.SphereMetres);
        return new()
        {
            Code = "lightning-zone",
            Subject = path,
            Verdict = tip <= zone ? Verdict.Ok : Verdict.Tight,
            Quantity = "height of the antenna's tip",
            Unit = "m",
            Value = Estimate.Exactly(tip),
            Limit = zone,
            Margin = zone - tip,
            Source = $"{LightningStandard}, Table 2, rolling sphere; {row.Source}",
            Details = FindingDetails.Of(
                ("tip", Metres(tip)),
                ("where", tip <= zone ? "inside" : "outside"),
                ("zone", Metres(zone)),
                ("rod", Metres(rod)),
                ("distance", Metres(distance)),
                ("class", row.Key),
                ("radius", FormattableString.Invariant($"{row.SphereMetres:0} m")),
                ("angle", capped > 0 ? FormattableString.Invariant($"{RollingSphere.ProtectionAngleDegrees(row.SphereMetres, capped):0}°") : "none")),
        };
    }

    private static Finding Separation(EarthingInput input, EarthingFit earthing)
    {
        string path = StationDefaults.Join(input.Path, "lightning-protection");
        LightningClassRow? row = input.Catalogue.Earthing.Classes.Find(earthing.LightningClass);
        if (earthing.HasLightningProtection is null || row is null || earthing.SeparationLengthMetres is not { } length || earthing.SeparationMetres is not { } distance
            || earthing.DownConductors is not { } conductors)
        {
            return Finding.Unknown("lightning-separation-unknown", path, "separation distance");
        }

        double share = conductors switch { <= 1 => 1, 2 => 0.66, _ => 0.44 };
        double needed = RollingSphere.SeparationMetres(row.SeparationFactor, share, earthing.ThroughSolid ? 0.5 : 1, length);
        return new()
        {
            Code = "lightning-separation",
            Subject = path,
            Verdict = distance >= needed ? Verdict.Ok : Verdict.Fails,
            Quantity = "separation distance",
            Unit = "m",
            Value = Estimate.Exactly(distance),
            Limit = needed,
            Margin = distance - needed,
            Source = $"{LightningStandard}, (4); ki and kc from memory",
            Details = FindingDetails.Of(
                ("distance", FormattableString.Invariant($"{distance:0.00} m")),
                ("needed", FormattableString.Invariant($"{needed:0.00} m")),
                ("how", FormattableString.Invariant($"ki {row.SeparationFactor:0.##} · kc {share:0.##} / km {(earthing.ThroughSolid ? 0.5 : 1):0.#} · {length:0.#} m"))),
        };
    }

    private static string Metres(double? metres) => FormattableString.Invariant($"{metres:0.0} m");
}
