using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Evidence.Statistics;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Agreement;

/// <summary>How prediction and records agree over the direct links of one station.</summary>
/// <param name="Rows">The links.</param>
/// <param name="Compared">How many of them were heard with a level.</param>
/// <param name="BiasDb">Mean of measured less predicted; NaN without a link.</param>
/// <param name="BiasInterval">Interval of the mean (Student); null below three links.</param>
/// <param name="SpreadDb">Standard deviation around it; NaN below two links.</param>
public sealed record AgreementSummary(ImmutableArray<AgreementRow> Rows, int Compared, double BiasDb, ConfidenceInterval? BiasInterval, double SpreadDb)
{
    /// <summary>Confidence from which a link is expected to work, or not to (common practice).</summary>
    public const double Sure = 0.9;

    private const int LeastLinks = 3;

    /// <summary>Sums links up.</summary>
    /// <param name="rows">The links.</param>
    /// <param name="confidence">Confidence of the interval.</param>
    public static AgreementSummary Of(IEnumerable<AgreementRow> rows, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ImmutableArray<AgreementRow> all = [.. rows];
        double[] off = [.. all.Select(row => row.OffDb).OfType<double>()];
        double bias = off.Length == 0 ? double.NaN : off.Average();
        double spread = off.Length < 2 ? double.NaN : Math.Sqrt(off.Sum(one => (one - bias) * (one - bias)) / (off.Length - 1));
        double half = off.Length < LeastLinks ? double.NaN : Quantiles.Student((1 + confidence) / 2, off.Length - 1) * spread / Math.Sqrt(off.Length);
        return new(all, off.Length, bias, double.IsNaN(half) ? null : new(bias - half, bias + half), spread);
    }

    /// <summary>What is to be said of it.</summary>
    /// <param name="subject">The station in the plan.</param>
    public IEnumerable<Finding> Findings(string subject)
    {
        yield return BiasInterval is { } interval
            ? new()
            {
                Code = "agreement-bias",
                Subject = subject,
                Quantity = "measured less predicted signal power",
                Unit = "dB",
                Value = Estimate.Of(interval.Low, BiasDb, interval.High),
                Limit = 0,
                Verdict = interval.Holds(0) ? Verdict.Ok : Verdict.Tight,
                Source = "docs/physics/agreement.md",
                Details = FindingDetails.Of(
                    ("bias", Db(BiasDb)), ("low", Db(interval.Low)), ("high", Db(interval.High)), ("spread", Text($"{SpreadDb:0.0} dB")), ("links", Text($"{Compared} links")),
                    ("says", interval.Holds(0) ? "they agree within what so few links can tell" : BiasDb < 0 ? "less arrives than was predicted" : "more arrives than was predicted")),
            }
            : Finding.Unknown("agreement-unknown", subject, "measured less predicted signal power", ("links", Text($"{Compared}")), ("wanted", Text($"{LeastLinks}")));
        foreach (AgreementRow row in Rows.Where(row => row.IsSilent || row.IsUnexpected))
        {
            string code = row.IsSilent ? "agreement-silent" : "agreement-unexpected";
            yield return new()
            {
                Code = code,
                Subject = $"{row.Name} → {subject}",
                Quantity = "confidence that the link works",
                Value = Estimate.Exactly(row.Works),
                Limit = row.IsSilent ? Sure : 1 - Sure,
                Verdict = Verdict.Tight,
                Source = "docs/physics/agreement.md",
                Details = FindingDetails.Of(("name", row.Name), ("works", Text($"{100 * row.Works:0} %"))),
            };
        }
    }

    private static string Db(double value) => Text($"{value:+0.0;−0.0;0.0} dB");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
