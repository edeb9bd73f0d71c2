using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.Earthing;

/// <summary>Where the antenna is in the zone of an air termination, and how far it is from a lightning protection system, by IEC 62305-3. Neither says that it is protected.</summary>
internal static class LightningReview
{
    private const string Standard = "IEC 62305-3:2010";

    /// <summary>km of the separation distance through brick, concrete or wood; through air it is 1 (from memory).</summary>
    private const double SolidFactor = 0.5;

    /// <summary>The antenna's tip against the zone of the rolling sphere.</summary>
    internal static Finding Zone(EarthingInput input, EarthingFit earthing, List<Ledger> ledgers)
    {
        string path = StationDefaults.Join(input.Path, "air-termination");
        if (earthing.AirTermination == AirTermination.None)
        {
            return new()
            {
                Code = "lightning-highest",
                Subject = path,
                Verdict = Verdict.Tight,
                Source = Standard + ", clause 5.2",
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
        double? angle = capped > 0 ? RollingSphere.ProtectionAngleDegrees(row.SphereMetres, capped) : null;
        ledgers.Add(ZoneLedger(row, rod, distance, zone));
        ledgers.Add(new("protection angle derived from the ball", "°",
        [
            new("angle", FormattableString.Invariant($"a rod of {capped:0.0} m under a ball of {row.SphereMetres:0} m"), angle ?? 0, Standard + ", Figure 1, derived", "tan α = 2·(area under the arc)/h²; nothing is judged by it"),
        ]));
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
            Source = $"{Standard}, Table 2, rolling sphere; {row.Source}",
            Details = FindingDetails.Of(
                ("tip", Metres(tip)),
                ("where", tip <= zone ? "inside" : "outside"),
                ("zone", Metres(zone)),
                ("rod", Metres(rod)),
                ("distance", Metres(distance)),
                ("class", row.Key),
                ("radius", FormattableString.Invariant($"{row.SphereMetres:0} m")),
                ("angle", angle is { } degrees ? FormattableString.Invariant($"{degrees:0}°") : "none")),
        };
    }

    /// <summary>The distance to a lightning protection system against the separation distance.</summary>
    internal static Finding Separation(EarthingInput input, EarthingFit earthing, List<Ledger> ledgers, List<Assumption> assumptions)
    {
        string path = StationDefaults.Join(input.Path, "lightning-protection");
        LightningClassRow? row = input.Catalogue.Earthing.Classes.Find(earthing.LightningClass);
        if (earthing.HasLightningProtection is null || row is null || earthing.SeparationLengthMetres is not { } length || earthing.SeparationMetres is not { } distance
            || earthing.DownConductors is not { } conductors)
        {
            return Finding.Unknown("lightning-separation-unknown", path, "separation distance");
        }

        if (earthing.ThroughSolid is null)
        {
            assumptions.Add(new("separation-through-air", "nothing but air between antenna and lightning protection: km 1; through brick, concrete or wood twice the distance is needed", "assumed", input.Path + "/through-solid"));
        }

        double share = conductors switch { <= 1 => 1, 2 => 0.66, _ => 0.44 };
        double insulation = earthing.ThroughSolid == true ? SolidFactor : 1;
        double needed = RollingSphere.SeparationMetres(row.SeparationFactor, share, insulation, length);
        ledgers.Add(Ledger.SummingTo(needed, "separation distance from the lightning protection", "m",
        [
            new("length", "length along its conductor to the nearest bond", length, input.Path + "/separation-length"),
            new("class", $"factor ki of class {row.Key}", length * (row.SeparationFactor - 1), row.Source, Times(row.SeparationFactor)),
            new("share", FormattableString.Invariant($"share of the current kc, {conductors} down-conductor{(conductors == 1 ? "" : "s")}"), length * row.SeparationFactor * (share - 1), Standard + ", from memory", Times(share)),
            new(
                "insulation", "km of what lies between", length * row.SeparationFactor * share * ((1 / insulation) - 1), earthing.ThroughSolid is null ? "assumed" : input.Path + "/through-solid",
                FormattableString.Invariant($"÷ {insulation:0.#}")),
        ]));
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
            Source = $"{Standard}, (4); ki and kc from memory",
            Details = FindingDetails.Of(
                ("distance", FormattableString.Invariant($"{distance:0.00} m")),
                ("needed", FormattableString.Invariant($"{needed:0.00} m")),
                ("how", FormattableString.Invariant($"ki {row.SeparationFactor:0.##} · kc {share:0.##} / km {insulation:0.#} · {length:0.#} m"))),
        };
    }

    /// <summary>The ball's centre is its radius above the ground; at a distance within its reach its edge is that much lower than the centre.</summary>
    private static Ledger ZoneLedger(LightningClassRow row, double rod, double distance, double zone)
    {
        double reach = RollingSphere.GroundReachMetres(row.SphereMetres, rod);
        return Ledger.SummingTo(zone, "height of the zone where the antenna stands", "m",
        [
            new("centre", $"centre of the ball of class {row.Key}", row.SphereMetres, $"{Standard}, Table 2; {row.Source}"),
            new("edge", "down to the ball's edge above the antenna", zone - row.SphereMetres, Standard + ", rolling sphere", reach > distance
                ? FormattableString.Invariant($"√(R² − (d − x)²) with d = √(2·R·h − h²) = {reach:0.00} m for a rod of {rod:0.0} m, x = {distance:0.0} m")
                : FormattableString.Invariant($"the antenna, {distance:0.0} m away, is beyond the rod's reach of {reach:0.00} m")),
        ]);
    }

    private static string Times(double factor) => FormattableString.Invariant($"× {factor:0.##}");

    private static string Metres(double metres) => FormattableString.Invariant($"{metres:0.0} m");
}
