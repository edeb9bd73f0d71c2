using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Rules;

namespace Mastwright.Station.Exposure;

/// <summary>The judgements on how near people come to an antenna.</summary>
internal static class ExposureFindings
{
    /// <summary>How many times the distance to keep people stay away for the verdict to be better than tight. Common practice.</summary>
    private const double WantedTimes = 2;

    /// <summary>The distance to keep held against how near people come.</summary>
    /// <param name="input">The station.</param>
    /// <param name="who">Whom it is for.</param>
    /// <param name="result">The limit that decides.</param>
    /// <param name="law">The law's; null where the catalogue has none.</param>
    internal static Finding Of(ExposureInput input, Exposed who, ExposureResult result, ExposureResult? law)
    {
        double? near = input.People.Of(who);
        Verdict verdict = near switch
        {
            null => Verdict.Unknown,
            { } metres when metres < result.KeepMetres => Verdict.Fails,
            { } metres when metres < WantedTimes * result.KeepMetres => Verdict.Tight,
            _ => Verdict.Ok,
        };
        bool firm = law is { Limit: { Standing: LimitStanding.Law, Source.IsFirm: true } };
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
                ("standing", Standing(law)),
                ("reach", Reach(result, who)),
                ("keep", Metres(result.KeepMetres)),
                ("near", Near(who, near)),
                ("ask", near is not null ? "" : who == Exposed.Public ? ", and give at people/public how near anybody comes" : ", and give at people/workers how near they come"),
                ("guide", Guide(input, result)),
                ("memory", law is null ? "" : RuleWords.Doubt(law.Limit.Source)),
                ("read", firm ? "" : " Look up the law of your country, and put its limits with their source into a catalogue file.")),
        };
    }

    /// <summary>No distance was worked out: the least is kept all the same.</summary>
    /// <param name="input">The station.</param>
    /// <param name="who">Whom it is for.</param>
    /// <param name="missing">What is missing.</param>
    internal static Finding Unknown(ExposureInput input, Exposed who, string missing)
    {
        double? near = input.People.Of(who);
        return new()
        {
            Code = who == Exposed.Public ? "exposure-public-unknown" : "exposure-workers-unknown",
            Subject = input.PlanPath,
            Verdict = near < ExposureDistance.LeastMetres ? Verdict.Fails : Verdict.Unknown,
            Quantity = "nearest that people come to the antenna",
            Unit = "m",
            Value = near is { } known ? Estimate.Exactly(known) : null,
            Limit = ExposureDistance.LeastMetres,
            Margin = near - ExposureDistance.LeastMetres,
            Source = "common practice",
            Details = FindingDetails.Of(("missing", missing), ("keep", Metres(ExposureDistance.LeastMetres)), ("near", Near(who, near))),
        };
    }

    /// <summary>What the limit is worth where the station stands, when it is not that place's own law.</summary>
    private static string Standing(ExposureResult? law) => law switch
    {
        null => " These are guidelines: the law of the place is not in the catalogue.",
        { Limit.Standing: LimitStanding.Recommendation } => " That recommendation binds nobody: the law of the place may be stricter, and was not read.",
        { Limit.Standing: LimitStanding.Minimum } => " That is the least that the law of each member state of the European Union has to ask for: the law of the place may be stricter, and was not read.",
        _ => "",
    };

    /// <summary>Where the limit is reached, however near that is.</summary>
    private static string Reach(ExposureResult result, Exposed who)
    {
        string least = result.ReflectedMetres < ExposureDistance.LeastMetres ? ", which is nearer than is ever kept" : "";
        return $"Sending all the time, the main beam reaches what {result.Limit.Source.Document} allows {(who == Exposed.Public ? "the public" : "workers")} at {Metres(result.FreeMetres)}, over a ground that reflects at {Metres(result.ReflectedMetres)}{least}";
    }

    private static string Near(Exposed who, double? metres) => metres is { } near
        ? $"By the plan {(who == Exposed.Public ? "nobody" : "nobody at work")} comes nearer than {Metres(near)}."
        : $"How near {(who == Exposed.Public ? "people" : "people at work")} come is not known.";

    /// <summary>What the distance is worth where the far-field formula does not hold, or nobody can say whether it does.</summary>
    private static string Guide(ExposureInput input, ExposureResult result)
    {
        if (input.AntennaLengthMetres is not { } length)
        {
            return " From where on the far-field formula holds is not known without the antenna's length: a guide and no proof.";
        }

        double far = ExposureDistance.FarFieldMetres(length, input.FrequencyHz);
        return far > result.KeepMetres ? $" The far-field formula was used nearer to the antenna than it holds ({Metres(far)}): a guide and no proof." : "";
    }

    internal static string Metres(double metres) => metres < 0.1 ? Text($"{metres:0.000} m") : Text($"{metres:0.00} m");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
