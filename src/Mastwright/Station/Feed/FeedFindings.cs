using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.Feed;

/// <summary>The judgements on a feed.</summary>
internal static class FeedFindings
{
    /// <summary>Loss in dB above which a feed is called lossy: half of the power. Common practice.</summary>
    internal const double WantedLossDb = 3;

    internal static Finding LineTypeUnknown(string subject, string lineType, StationCatalogue catalogue) => Finding.Unknown(
        "line-type-unknown", subject, "line attenuation",
        ("type", lineType),
        ("near", NearestWord.Of(lineType, catalogue.LineTypes.Select(row => row.Key)) is { } near ? $" Did you mean '{near}'?" : ""),
        ("known", string.Join(", ", catalogue.LineTypes.Select(row => row.Key)))) with { Unit = "dB" };

    internal static Finding LineTableInconsistent(string subject, LineTypeRow row) => new()
    {
        Code = "line-table-inconsistent",
        Subject = subject,
        Verdict = Verdict.Unknown,
        Quantity = "worst miss of a published point",
        Unit = "%",
        Value = Estimate.Exactly(100 * row.Fit.WorstResidual),
        Limit = 100 * AttenuationFit.AllowedResidual,
        Margin = 100 * (AttenuationFit.AllowedResidual - row.Fit.WorstResidual),
        Source = row.Source,
        Details = FindingDetails.Of(("type", row.Key), ("miss", Text($"{100 * row.Fit.WorstResidual:0.0} %"))),
    };

    internal static Finding PartLossUnknown(string subject, string part) =>
        Finding.Unknown("part-loss-unknown", subject, "insertion loss", ("part", part)) with { Unit = "dB" };

    internal static Finding AmplifierNoiseUnknown(string subject, string amplifier) =>
        Finding.Unknown("amplifier-noise-unknown", subject, "noise figure", ("amplifier", amplifier)) with { Unit = "dB" };

    internal static Finding AmplifierLimitUnknown(string subject, string amplifier) =>
        Finding.Unknown("amplifier-limit-unknown", subject, "most output", ("amplifier", amplifier)) with { Unit = "dBm" };

    internal static Finding MismatchBehindAmplifier(string subject) =>
        Finding.Unknown("mismatch-behind-amplifier", subject, "return loss at the antenna") with { Unit = "dB" };

    internal static Finding MismatchImpossible(string subject, double returnLossDb, Estimate lossDb)
    {
        double reflection = Math.Pow(10, -Mismatch.ReturnLossDbAtFarEnd(returnLossDb, lossDb.Median) / 20);
        return new()
        {
            Code = "mismatch-impossible",
            Subject = subject,
            Verdict = Verdict.Fails,
            Quantity = "reflection coefficient at the antenna",
            Value = Estimate.Exactly(reflection),
            Limit = 1,
            Margin = 1 - reflection,
            Source = "a passive antenna reflects no more than it gets",
            Details = FindingDetails.Of(
                ("reading", Text($"{returnLossDb:0.0} dB")),
                ("loss", Text($"{lossDb.Median:0.0} dB")),
                ("least", Text($"{2 * lossDb.Median:0.0} dB"))),
        };
    }

    internal static Finding AntennaMatch(string subject, Estimate returnLossDb, bool carried)
    {
        double vswr = Mismatch.VswrFromReturnLossDb(returnLossDb.Median);
        return new()
        {
            Code = "antenna-match",
            Subject = subject,
            Verdict = Judge(returnLossDb),
            Quantity = "return loss at the antenna",
            Unit = "dB",
            Value = returnLossDb,
            Limit = StationDefaults.LeastReturnLossDb,
            Margin = returnLossDb.Median - StationDefaults.LeastReturnLossDb,
            Source = "common practice",
            Details = FindingDetails.Of(
                ("return-loss", Text($"{returnLossDb.Median:0.0} dB")),
                ("vswr", Text($"{vswr:0.00}")),
                ("how", carried ? "carried from the radio through twice the feed's loss" : "given at the antenna")),
        };
    }

    internal static Finding FeedLoss(string subject, Estimate lossDb, ImmutableArray<string> assumptions) => new()
    {
        Code = "feed-loss",
        Subject = subject,
        Verdict = lossDb.Median <= WantedLossDb ? Verdict.Ok : Verdict.Tight,
        Quantity = "loss of the feed",
        Unit = "dB",
        Value = lossDb,
        Limit = WantedLossDb,
        Margin = WantedLossDb - lossDb.Median,
        Assumptions = assumptions,
        Source = "common practice",
        Details = FindingDetails.Of(
            ("loss", Text($"{lossDb.Median:0.0} dB")),
            ("limit", Text($"{WantedLossDb:0} dB")),
            ("share", Text($"{100 * Math.Pow(10, -lossDb.Median / 10):0} %"))),
    };

    private static Verdict Judge(Estimate returnLossDb)
    {
        if (returnLossDb.High < StationDefaults.LeastReturnLossDb)
        {
            return Verdict.Fails;
        }

        if (returnLossDb.Low < StationDefaults.LeastReturnLossDb)
        {
            return Verdict.Unknown;
        }

        return returnLossDb.Median < StationDefaults.GoodReturnLossDb ? Verdict.Tight : Verdict.Ok;
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
