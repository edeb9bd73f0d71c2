using Mastwright.Findings;
using Mastwright.Station.Wind;

namespace Mastwright.Station.Mast;

/// <summary>The ledgers of what is judged on a mast besides its sections: brackets, guys, lean, pointing loss, swing.</summary>
internal static class MastLedgers
{
    /// <summary>Force on a bracket as a design value: the couple of the moment over the spacing, at the upper bracket with the wind itself on top.</summary>
    internal static Ledger Bracket(MastCase at, WindModel wind, double spacingMetres, bool isUpper)
    {
        double couple = at.Beam.MomentNewtonMetres(0) / spacingMetres;
        double plain = couple + (isUpper ? at.Beam.ShearNewtons(0) : 0);
        List<LedgerLine> lines = [new("couple", "moment at the upper bracket over the spacing", couple, "the ledger of the moment", FormattableString.Invariant($"{at.Beam.MomentNewtonMetres(0):0.0} N·m over {spacingMetres:0.00} m"))];
        if (isUpper)
        {
            lines.Add(new("shear", "the wind itself", at.Beam.ShearNewtons(0), "the ledger of the moment"));
        }

        return new($"force on the {(isUpper ? "upper" : "lower")} bracket, design value, {at.Name}", "N", [.. lines, .. Factors(at, wind, plain, "N")]);
    }

    /// <summary>Tension of the one guy into the wind, as a design value.</summary>
    internal static Ledger Guy(MastCase at, WindModel wind, GuyLevel guys)
    {
        double across = Math.Abs(at.GuyAcrossNewtons);
        double tension = GuyPull.TensionNewtons(across, guys.AngleDegrees);
        return new($"tension of a guy, design value, {at.Name}", "N",
        [
            new("across", "pull across the mast", across, "the ledger of the moment"),
            new("slope", "more along the slope of the rope", tension - across, "common statics", FormattableString.Invariant($"÷ cos {guys.AngleDegrees:0.#}°")),
            .. Factors(at, wind, tension, "N"),
        ]);
    }

    /// <summary>Lean of the top, part by part.</summary>
    internal static Ledger Lean(MastCase at, WindModel wind)
    {
        (double, double)[] tubes = [.. at.Tubes.Select(tube => (tube.Tube.LengthMetres, tube.Stiffness))];
        double top = at.Beam.LengthMetres;
        return new($"lean of the mast's top, {wind.PlainName}, {at.Name}", "°",
            [.. at.Loads.Select(load => new LedgerLine(load.Code, load.Label, double.RadiansToDegrees(new Cantilever(tubes, [load]).SlopeRadians(top)), load.Source, FormattableString.Invariant($"{load.ForceNewtons:0.0} N")))]);
    }

    /// <summary>What the lean costs of the beam.</summary>
    internal static Ledger Pointing(MastCase at, double leanDegrees, double beamwidthDegrees) => new($"loss of the beam by the lean of the top, {at.Name}", "dB",
    [
        new("lean", FormattableString.Invariant($"{leanDegrees:0.00}° of a beam {beamwidthDegrees:0.#}° high"), MastPointing.LossDb(leanDegrees, beamwidthDegrees), "12·(lean/beamwidth)², main beam of Rec. ITU-R F.1336"),
    ]);

    /// <summary>The natural frequency of the bare tubes, and what each mass they carry takes from it, in turn from the foot up.</summary>
    internal static Ledger Swing(MastCase at)
    {
        List<LedgerLine> lines = [];
        List<MastMass> carried = [.. at.Masses.Where(IsTube)];
        double before = NaturalFrequency.Hertz(at.Tubes, [.. carried]);
        lines.Add(new("tubes", "the bare tubes on stiff brackets", before, "Rayleigh's quotient"));
        foreach (MastMass mass in at.Masses.Where(mass => !IsTube(mass)))
        {
            carried.Add(mass);
            double hertz = NaturalFrequency.Hertz(at.Tubes, [.. carried]);
            lines.Add(new(mass.Code, "with the " + mass.Label, hertz - before, mass.Source, FormattableString.Invariant($"{mass.Kilograms:0.0} kg, centre {(mass.FromMetres + mass.ToMetres) / 2:0.00} m up")));
            before = hertz;
        }

        return new($"natural frequency of the mast, {at.Name}", "Hz", [.. lines]);
    }

    private static bool IsTube(MastMass mass) => mass.Code.StartsWith("tube-", StringComparison.Ordinal);

    private static IEnumerable<LedgerLine> Factors(MastCase at, WindModel wind, double plain, string unit)
    {
        double structural = plain * (wind.StructuralFactor - 1);
        yield return new("structural-factor", "structural factor", structural, wind.StructuralSource, FormattableString.Invariant($"× {wind.StructuralFactor:0.###}; {wind.PlainName} so far: {plain:0.0} {unit}"));
        yield return new("load-factor", "load factor for wind", plain * (at.Factor - wind.StructuralFactor), wind.LoadFactorSource, FormattableString.Invariant($"× {wind.LoadFactor:0.###}"));
    }
}
