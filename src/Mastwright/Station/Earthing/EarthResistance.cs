using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.Earthing;

/// <summary>Resistance of a fit-out's own earth rods.</summary>
internal static class EarthResistance
{
    internal static void Judge(
        EarthingInput input, EarthingFit earthing, double wantedOhms, List<Finding> findings, List<Ledger> ledgers, List<Assumption> assumptions)
    {
        if (earthing is { Rods: null, RodLengthMetres: null, RodDiameterMetres: null })
        {
            // The conductor then leads to the earth of the building, which is measured there.
            return;
        }

        string path = StationDefaults.Join(input.Path, "rods");
        int count = earthing.Rods ?? 1;
        (Estimate? soil, string soilSource) = Soil(input, earthing, findings, assumptions);
        MissingKeys missing = new();
        missing.Need(soil is null, "soil-resistivity or soil");
        missing.Need(earthing.RodLengthMetres is null, "length");
        missing.Need(earthing.RodDiameterMetres is null, "diameter");
        missing.Need(count > 1 && earthing.RodSpacingMetres is null, "spacing");
        if (missing.Any)
        {
            findings.Add(Unworked(path, missing.Listed));
            return;
        }

        double length = earthing.RodLengthMetres!.Value;
        double diameter = earthing.RodDiameterMetres!.Value;
        if (count > 1 && earthing.RodSpacingMetres < length)
        {
            findings.Add(Close(path, earthing.RodSpacingMetres.Value, length));
        }

        Estimate all = soil!.Value.Map(ohmMetres => EarthRod.InParallelOhms(EarthRod.Ohms(ohmMetres, length, diameter), count, earthing.RodSpacingMetres ?? 0, ohmMetres));
        double one = EarthRod.Ohms(soil.Value.Median, length, diameter);
        ImmutableArray<LedgerLine> lines =
        [
            new("rod", "one rod", one, soilSource + "; ρ/(2πL)·(ln(8L/d) − 1)", FormattableString.Invariant($"{soil.Value} Ω·m, {length:0.##} m long, {diameter * 1000:0.#} mm thick")),
            .. count > 1
                ? [new LedgerLine("parallel", FormattableString.Invariant($"{count} rods, {earthing.RodSpacingMetres:0.#} m apart"), all.Median - one, "BS 7430 form, λ from memory", FormattableString.Invariant($"× {all.Median / one:0.###}"))]
                : Array.Empty<LedgerLine>(),
        ];
        ledgers.Add(Ledger.SummingTo(all.Median, "resistance of the earth rods", "Ω", lines));
        findings.Add(new()
        {
            Code = "earth-resistance",
            Subject = path,
            Verdict = all.High <= wantedOhms ? Verdict.Ok : all.Low > wantedOhms ? Verdict.Tight : Verdict.Unknown,
            Quantity = "earth resistance",
            Unit = "Ω",
            Value = all,
            Limit = wantedOhms,
            Margin = wantedOhms - all.Median,
            Source = "IEC 62305-3:2010, clause 5.4.1, from memory",
            Details = FindingDetails.Of(
                ("rods", count == 1 ? "One rod has" : FormattableString.Invariant($"{count} rods have")),
                ("ohms", all.IsExact ? FormattableString.Invariant($"{all.Median:0.#} Ω") : FormattableString.Invariant($"{all.Low:0.#} to {all.High:0.#} Ω")),
                ("wanted", FormattableString.Invariant($"{wantedOhms:0} Ω"))),
        });
    }

    private static Finding Unworked(string path, string missing) =>
        Finding.Unknown("earth-resistance-unknown", path, "earth resistance", ("missing", missing)) with { Unit = "Ω" };

    /// <summary>Rods nearer to one another than their length share the same soil: the form no longer holds for them.</summary>
    private static Finding Close(string path, double spacing, double length) => new()
    {
        Code = "earth-rods-close",
        Subject = path,
        Verdict = Verdict.Tight,
        Quantity = "distance between neighbouring rods",
        Unit = "m",
        Value = Estimate.Exactly(spacing),
        Limit = length,
        Margin = spacing - length,
        Source = "BS 7430 form, from memory; common practice",
        Details = FindingDetails.Of(("spacing", FormattableString.Invariant($"{spacing:0.##} m")), ("length", FormattableString.Invariant($"{length:0.##} m"))),
    };

    private static (Estimate? OhmMetres, string Source) Soil(EarthingInput input, EarthingFit earthing, List<Finding> findings, List<Assumption> assumptions)
    {
        if (earthing.SoilOhmMetres is { } given)
        {
            return (given, input.Path + "/soil-resistivity");
        }

        if (earthing.Soil.Length == 0)
        {
            return (null, "");
        }

        if (input.Catalogue.Earthing.Soils.Find(earthing.Soil) is { } row)
        {
            assumptions.Add(new("soil-resistivity", FormattableString.Invariant($"{row.Key}: {row.OhmMetres} Ω·m; dry or frozen soil has several times as much"), row.Source, input.Path + "/soil-resistivity"));
            return (row.OhmMetres, "catalogue " + row.Key + ": " + row.Source);
        }

        findings.Add(new()
        {
            Code = "soil-not-listed",
            Subject = StationDefaults.Join(input.Path, "soil"),
            Verdict = Verdict.Unknown,
            Details = FindingDetails.Of(("given", earthing.Soil), ("known", input.Catalogue.Earthing.Soils.Listed())),
        });
        return (null, "");
    }
}
