using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Rules;

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

    /// <summary>How many times the distance to keep people stay away for the verdict to be better than tight. Common practice.</summary>
    private const double WantedTimes = 2;

    /// <summary>Examines a station.</summary>
    public static Examination Examine(ExposureInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        if (input.EirpDbm is not { } eirp)
        {
            // What is missing for the radiated power is told where the power is judged.
            return Examination.Nothing;
        }

        return Examination.Of(Examine(input, Exposed.Public, eirp.High), Examine(input, Exposed.Workers, eirp.High));
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
        ImmutableArray<ExposureResult> Of(string region) =>
        [
            .. input.Book.ExposureLimits
                .Where(limit => limit.For == who && string.Equals(limit.Region, region, StringComparison.OrdinalIgnoreCase) && limit.Holds(input.FrequencyHz))
                .Select(limit => ExposureResult.Of(limit, input.FrequencyHz, watts, input.Traffic))
                .OrderByDescending(result => result.ReflectedMetres),
        ];
        return (input.Region is { } place ? Of(place.Exposure).FirstOrDefault() : null, Of(GuidelineRegion));
    }

    private static Examination Examine(ExposureInput input, Exposed who, double eirpDbm)
    {
        (ExposureResult? law, ImmutableArray<ExposureResult> beside) = Distances(input, who, eirpDbm);
        ExposureResult? result = law ?? beside.FirstOrDefault();
        if (result is null)
        {
            return Examination.Nothing;
        }

        return new()
        {
            Ledgers = [Density(result, eirpDbm, who)],
            Findings = [Finding(input, who, result, law, beside)],
        };
    }

    private static Finding Finding(ExposureInput input, Exposed who, ExposureResult result, ExposureResult? law, ImmutableArray<ExposureResult> beside)
    {
        double? near = input.People.Of(who);
        Verdict verdict = near switch
        {
            null => Verdict.Unknown,
            { } metres when metres < result.KeepMetres => Verdict.Fails,
            { } metres when metres < WantedTimes * result.KeepMetres => Verdict.Tight,
            _ => Verdict.Ok,
        };
        bool firm = law is not null && !law.Limit.Source.FromMemory;
        return new()
        {
            Code = who == Exposed.Public ? "exposure-public" : "exposure-workers",
            Subject = input.PlanPath,
            Verdict = !firm && (verdict is Verdict.Ok or Verdict.Tight) ? Verdict.Unknown : verdict,
            Quantity = "nearest that people come to the antenna",
            Unit = "m",
            Value = near is { } known ? Estimate.Exactly(known) : null,
            Limit = result.KeepMetres,
            Margin = near - result.KeepMetres,
            Source = result.Limit.Source.ToString(),
            Details = FindingDetails.Of(
                ("document", result.Limit.Source.Document),
                ("density", Text($"{result.DensityWattsPerSquareMetre:0.00} W/m²")),
                ("averaging", Text($"{result.Limit.AveragingSeconds / 60:0} minutes")),
                ("free", Metres(result.FreeMetres)),
                ("reflected", Metres(result.ReflectedMetres)),
                ("averaged", result is { AveragedMetres: { } averaged } ? Metres(averaged) : ""),
                ("on-air", result is { AirShare: { } share } ? Text($"{100 * share:0.#} %") : ""),
                ("reactive", Metres(ExposureDistance.ReactiveMetres(input.FrequencyHz))),
                ("far-field", input.AntennaLengthMetres is { } length ? Metres(ExposureDistance.FarFieldMetres(length, input.FrequencyHz)) : ""),
                ("reach", Reach(result)),
                ("keep", Metres(result.KeepMetres)),
                ("near", near is { } distance ? Text($"By the plan {(who == Exposed.Public ? "nobody" : "nobody at work")} comes nearer than {Metres(distance)}.") : $"How near {(who == Exposed.Public ? "people" : "people at work")} come is not known."),
                ("field", Field(input, result)),
                ("beside", Beside(law, beside)),
                ("memory", law is { Limit.Source.FromMemory: true } ? " This limit is from memory: read the law before relying on it." : "")),
        };
    }

    /// <summary>How the power density at the distance to keep comes about, as a ledger in decibels.</summary>
    private static Ledger Density(ExposureResult result, double eirpDbm, Exposed who)
    {
        double keep = result.KeepMetres;
        double spread = -10 * Math.Log10(4 * Math.PI * keep * keep);
        double reflection = 10 * Math.Log10(ExposureDistance.ReflectionFactor);
        string limit = Text($"the limit is {(10 * Math.Log10(result.DensityWattsPerSquareMetre)) + 30:0.00} dB(mW/m²)");
        return new(Text($"power density for {(who == Exposed.Public ? "the public" : "workers")} {keep:0.00} m off in the main beam, sending all the time"), "dB(mW/m²)",
        [
            new("eirp", "EIRP, highest of its range", eirpDbm, "radiated power"),
            new("spreading", "over a sphere of that radius", spread, "OET Bulletin 65, section 2", limit),
            new("reflection", "from a ground that reflects", reflection, "OET Bulletin 65, section 2", "2.56 times"),
        ]);
    }

    /// <summary>Where the limit is reached; below the least distance the number would only feign precision.</summary>
    private static string Reach(ExposureResult result) => result.ReflectedMetres <= ExposureDistance.LeastMetres
        ? "Sending all the time, the main beam reaches that nearer than 0.2 m, even over a ground that reflects"
        : Text($"Sending all the time, the main beam reaches that at {Metres(result.FreeMetres)}, over a ground that reflects at {Metres(result.ReflectedMetres)}")
            + (result is { AveragedMetres: { } averaged, AirShare: { } share } ? Text($" (at {Metres(averaged)} if the pauses of the busiest hour count, {100 * share:0.#} % of the time on the air)") : "");

    private static string Field(ExposureInput input, ExposureResult result)
    {
        if (input.AntennaLengthMetres is not { } length)
        {
            return " The far-field formula was used; from where on it holds is not known without the antenna's length, so that is a guide and no proof.";
        }

        return ExposureDistance.FarFieldMetres(length, input.FrequencyHz) > result.KeepMetres
            ? " The far-field formula was used nearer to the antenna than it holds, so that is a guide and no proof."
            : "";
    }

    private static string Beside(ExposureResult? law, ImmutableArray<ExposureResult> beside)
    {
        if (law is null || beside.IsEmpty)
        {
            return "";
        }

        ExposureResult strictest = beside[0];
        string how = $"{strictest.Limit.Over}{(strictest.Limit.Source.FromMemory ? ", from memory" : "")}";
        return strictest.ReflectedMetres <= ExposureDistance.LeastMetres
            ? $" By {strictest.Limit.Source.Document} ({how}) it is nearer than 0.2 m too."
            : Text($" By {strictest.Limit.Source.Document} ({how}) it is {Metres(strictest.ReflectedMetres)}.");
    }

    private static string Metres(double metres) => Text($"{metres:0.00} m");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
