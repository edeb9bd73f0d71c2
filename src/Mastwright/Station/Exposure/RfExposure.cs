using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;

namespace Mastwright.Station.Exposure;

/// <summary>How far people have to stay from an antenna by the law of the place, with the guidelines of ICNIRP beside it.</summary>
/// <remarks>
/// The judgement counts a transmitter that never pauses and a ground that reflects: what pauses would save is shown, not relied on. A
/// distance under 0.2 m is given as 0.2 m, because the far-field formula does not reach that near.
/// </remarks>
public static class RfExposure
{
    /// <summary>Key of the guidelines that are shown beside the law.</summary>
    public const string GuidelineRegion = "ICNIRP";

    /// <summary>Examines a station.</summary>
    public static Examination Examine(ExposureInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        return Examination.Of(Examine(input, Exposed.Public), Examine(input, Exposed.Workers));
    }

    /// <summary>The limits for somebody turned into distances: those of the law first, the strictest of each kind.</summary>
    /// <param name="input">The station.</param>
    /// <param name="who">Whom the limits are for.</param>
    /// <param name="eirpDbm">EIRP in dBm.</param>
    /// <returns>The law's, null where it has none; the guidelines', strictest first.</returns>
    public static (ExposureResult? Law, ImmutableArray<ExposureResult> Beside) Distances(ExposureInput input, Exposed who, double eirpDbm)
    {
        ArgumentNullException.ThrowIfNull(input);
        double watts = Math.Pow(10, (eirpDbm - 30) / 10);
        IEnumerable<ExposureResult> Of(string place) =>
            input.Book.ExposureLimits
                .Where(limit => limit.For == who && string.Equals(limit.Region, place, StringComparison.OrdinalIgnoreCase) && limit.Holds(input.FrequencyHz))
                .Select(limit => ExposureResult.Of(limit, input.FrequencyHz, watts, input.Traffic))
                .OrderByDescending(result => result.ReflectedMetres);

        // A country's own text comes before that of the union it belongs to.
        string[] places = [input.Place, input.Region?.Exposure ?? ""];
        ExposureResult? law = places
            .Where(place => place.Length > 0 && !string.Equals(place, GuidelineRegion, StringComparison.OrdinalIgnoreCase))
            .SelectMany(Of)
            .FirstOrDefault();
        return (law, [.. Of(GuidelineRegion)]);
    }

    private static Examination Examine(ExposureInput input, Exposed who)
    {
        if (input.EirpDbm is not { } eirp)
        {
            string missing = input.MissingToSend.IsEmpty ? "the radiated power" : string.Join(", ", input.MissingToSend);
            return new() { Findings = [ExposureFindings.Unknown(input, who, missing)] };
        }

        (ExposureResult? law, ImmutableArray<ExposureResult> beside) = Distances(input, who, eirp.High);
        return (law ?? beside.FirstOrDefault()) is not { } result
            ? new() { Findings = [ExposureFindings.Unknown(input, who, Text($"a limit of exposure at {input.FrequencyHz / 1e6:0.0##} MHz in the catalogue"))] }
            : new()
            {
                Ledgers = [Density(input, result, eirp.High, who, law is null ? [] : beside)],
                Findings = [ExposureFindings.Of(input, who, result, law)],
            };
    }

    /// <summary>How the power density at the distance to keep comes about, as a ledger in decibels; what is not counted stands in it with nothing.</summary>
    private static Ledger Density(ExposureInput input, ExposureResult result, double eirpDbm, Exposed who, ImmutableArray<ExposureResult> beside)
    {
        double keep = result.KeepMetres;
        double spread = -10 * Math.Log10(4 * Math.PI * keep * keep);
        double reflection = 10 * Math.Log10(ExposureDistance.ReflectionFactor);
        string limit = Text($"{result.Limit.Source.Document} allows {result.DensityWattsPerSquareMetre:0.00} W/m², averaged over {result.Limit.AveragingSeconds / 60:0} minutes: {(10 * Math.Log10(result.DensityWattsPerSquareMetre)) + 30:0.00} dB(mW/m²)");
        return new(Text($"power density for {(who == Exposed.Public ? "the public" : "workers")} {keep:0.00} m off in the main beam, sending all the time"), "dB(mW/m²)",
        [
            new("eirp", "EIRP, highest of its range", eirpDbm, "radiated power"),
            new("spreading", "over a sphere of that radius", spread, "OET Bulletin 65, section 2", limit),
            new("reflection", "from a ground that reflects", reflection, "OET Bulletin 65, section 2", "2.56 times"),
            new("near-field", "nearness to the antenna, not counted", 0, "far field from 2·D²/λ, reactive field within λ/2π", Field(input)),
            .. result is { AveragedMetres: { } averaged, AirShare: { } share }
                ? [new LedgerLine("pauses", "pauses between the packets, not counted", 0, "traffic of the plan", Text($"if those of the busiest hour counted, {100 * share:0.#} % of the time on the air, the limit would be reached at {ExposureFindings.Metres(averaged)}"))]
                : Array.Empty<LedgerLine>(),
            .. beside.Take(1).Select(strictest => new LedgerLine(
                "guidelines", "guidelines beside the law, not counted", 0, strictest.Limit.Source.ToString(),
                $"by {strictest.Limit.Source.Document} ({strictest.Limit.Over}) the limit is reached at {ExposureFindings.Metres(strictest.ReflectedMetres)}")),
        ]);
    }

    /// <summary>From where on the formula holds, and up to where it says nothing at all.</summary>
    private static string Field(ExposureInput input)
    {
        string reactive = $"within {ExposureFindings.Metres(ExposureDistance.ReactiveMetres(input.FrequencyHz))} (λ/2π) the far-field formula says nothing";
        return input.AntennaLengthMetres is { } length
            ? $"{reactive}; it holds from {ExposureFindings.Metres(ExposureDistance.FarFieldMetres(length, input.FrequencyHz))} on (2·D²/λ)"
            : $"{reactive}; from where on it holds (2·D²/λ) is not known without the antenna's length";
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
