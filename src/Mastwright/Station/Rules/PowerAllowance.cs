using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;
using Mastwright.Station.Feed;

namespace Mastwright.Station.Rules;

/// <summary>How much power a row of law allows with an antenna, and what setting of the radio that comes to.</summary>
public static class PowerAllowance
{
    /// <summary>The limit of a rule in dBm against its reference, and how it comes about; null when the rule sets none.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="occupiedHz">Occupied bandwidth in hertz, greater than zero: a density counts over it as if it were even.</param>
    /// <param name="gainDbi">Gain of the antenna's main beam in dBi; the highest of its range counts.</param>
    /// <remarks>
    /// A conducted limit falls by what the gain is above the free gain (47 CFR 15.247(b)(4)). A density limit is 10·log10(occupied
    /// bandwidth / the density's bandwidth) above its figure for a signal that fills its bandwidth evenly; a real one is higher in places.
    /// </remarks>
    public static Ledger? Limit(RadioRule rule, double occupiedHz, Estimate gainDbi)
    {
        ArgumentNullException.ThrowIfNull(rule);
        Ledger? whole = rule.PowerDbm is { } power ? Whole(rule, power, gainDbi) : null;
        Ledger? density = rule is { DensityDbm: { } dbm, DensityBandwidthHz: { } width } ? Density(rule, dbm, width, occupiedHz) : null;
        return whole is null || (density is not null && density.Total < whole.Total) ? density : whole;
    }

    /// <summary>The largest setting of the radio that keeps a limit whatever its tolerance and the ranges of feed and antenna.</summary>
    /// <param name="limit">The limit, line by line, in dBm.</param>
    /// <param name="reference">What it is against.</param>
    /// <param name="gainDbi">Gain of the main beam in dBi.</param>
    /// <param name="stages">The feed from radio to antenna. A loss that is not known counts as none.</param>
    /// <param name="toleranceDb">How far the radio may be above its setting, in dB: zero or more.</param>
    /// <param name="planPath">Where in the plan the fit-out stands.</param>
    /// <returns>The setting in dBm, line by line; null when an amplifier holds the limit at every setting, or its gain is not known.</returns>
    public static Ledger? Setting(
        Ledger limit, PowerReference reference, Estimate gainDbi, ImmutableArray<FeedStage> stages, double toleranceDb, string planPath)
    {
        ArgumentNullException.ThrowIfNull(limit);
        ArgumentNullException.ThrowIfNull(planPath);
        List<LedgerLine> lines = [.. limit.Lines];
        double allowed = limit.Total;
        void Add(string code, string label, double value, string source, string note = "")
        {
            lines.Add(new(code, label, value, source, note));
            allowed += value;
        }

        if (reference == PowerReference.Erp)
        {
            Add("to-isotropic", "from a half-wave dipole to an isotropic antenna", RadiatedPower.HalfWaveDipoleDbi, "definition of ERP");
        }

        if (reference != PowerReference.Conducted)
        {
            Add("antenna-gain", "gain of the main beam", -gainDbi.High, StationDefaults.Join(planPath, "antenna/gain"), gainDbi.IsExact ? "" : "highest of its range");
        }

        foreach (FeedStage stage in stages.Reverse())
        {
            if (stage.AmplifiesTransmission && (stage.TransmitGainDb is null || stage.TransmitMaximumDbm is { } most && most.High <= allowed))
            {
                return null;
            }

            double gain = stage.TransmitGainDb?.High ?? 0;
            Add(stage.Code, stage.Label, -gain, stage.Source, stage.TransmitGainDb is null ? "not known: counted as no loss" : stage.TransmitGainDb.Value.IsExact ? "" : "least of its range");
        }

        if (toleranceDb > 0)
        {
            Add("radio-tolerance", "what the radio may be above its setting", -toleranceDb, StationDefaults.Join(planPath, "radio/power"));
        }

        return Ledger.SummingTo(allowed, "largest lawful setting of the radio", "dBm", [.. lines]);
    }

    private static Ledger Whole(RadioRule rule, double power, Estimate gain)
    {
        string source = rule.Source.ToString();
        ImmutableArray<LedgerLine> lines = [new("limit", "limit of " + rule.Name, power, source)];
        if (rule is { Reference: PowerReference.Conducted, GainFreeDbi: { } free } && gain.High > free)
        {
            lines = lines.Add(new(
                "gain-above",
                string.Create(CultureInfo.InvariantCulture, $"antenna gain above {free:0.#} dBi"),
                free - gain.High,
                source,
                gain.IsExact ? "" : "highest of its range"));
        }

        return new("power allowed", "dBm", lines);
    }

    private static Ledger Density(RadioRule rule, double dbm, double width, double occupiedHz) => new("power allowed", "dBm",
    [
        new("density", string.Create(CultureInfo.InvariantCulture, $"density limit of {rule.Name} in {width / 1e3:0.#} kHz"), dbm, rule.Source.ToString()),
        new("over-bandwidth", "spread evenly over the occupied bandwidth", 10 * Math.Log10(occupiedHz / width), "ratio of the bandwidths"),
    ]);
}
