using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Agreement;

/// <summary>What is to be said of a fitted correction.</summary>
public static class CorrectionFindings
{
    private const string Page = "docs/physics/agreement.md";

    /// <summary>That nothing could be fitted.</summary>
    /// <param name="subject">What it was fitted for.</param>
    /// <param name="links">How many links there were.</param>
    public static Finding TooFew(string subject, int links) => Finding.Unknown(
        "correction-unknown",
        subject,
        "correction of the prediction",
        ("links", Text($"{links}")),
        ("wanted", Text($"{CorrectionFit.LeastLinks}")),
        ("groups", Text($"{CorrectionFit.LeastGroups}")));

    /// <summary>What is to be said of one that was fitted.</summary>
    /// <param name="fit">The correction.</param>
    /// <param name="subject">What it was fitted for.</param>
    public static IEnumerable<Finding> Of(CorrectionFit fit, string subject)
    {
        ArgumentNullException.ThrowIfNull(fit);
        yield return Score(fit.ByStation, subject);
        yield return Score(fit.ByBlock, subject);
        foreach (CorrectionScore score in new[] { fit.ByStation, fit.ByBlock }.Where(score => !score.IntervalHolds))
        {
            yield return new()
            {
                Code = "correction-interval",
                Subject = subject,
                Quantity = "share held by the 90 % interval",
                Unit = "%",
                Value = Estimate.Exactly(100 * score.HeldAsUsed),
                Limit = score.HeldAsUsed < 0.9 ? 85 : 95,
                Verdict = Verdict.Tight,
                Source = Page,
                Details = FindingDetails.Of(
                    ("held", Text($"{100 * score.HeldAsUsed:0} %")), ("left", score.LeftOut), ("links", Text($"{score.Links} links")), ("says", score.HeldAsUsed < 0.9 ? "narrow" : "wide")),
            };
        }

        if (!fit.AppliesTo.IsEmpty)
        {
            yield return new()
            {
                Code = "correction-own",
                Subject = subject,
                Verdict = Verdict.Tight,
                Source = Page,
                Details = FindingDetails.Of(("stations", string.Join(", ", fit.AppliesTo)), ("receivers", Text($"{CorrectionTable.LeastReceivers}"))),
            };
        }
    }

    private static Finding Score(CorrectionScore score, string subject) => new()
    {
        Code = score.BeatsRivals ? "correction-better" : "correction-beaten",
        Subject = subject,
        Quantity = "error on links left out",
        Unit = "dB",
        Value = Estimate.Exactly(score.AsUsedDb),
        Limit = score.Best.OffDb,
        Verdict = score.BeatsRivals ? Verdict.Ok : Verdict.Fails,
        Source = Page,
        Details = FindingDetails.Of(
            ("off", Text($"{score.AsUsedDb:0.0} dB")), ("left", score.LeftOut), ("rival", score.Best.Name), ("best", Text($"{score.Best.OffDb:0.0} dB"))),
    };

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
