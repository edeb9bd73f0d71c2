using System.Globalization;
using System.Text;
using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Network.Links;
using Mastwright.Plans;

namespace Mastwright.Cli.Output;

/// <summary>The links between all stations on the terminal, 80 columns wide.</summary>
internal static class LinksText
{
    private const int NameWidth = 32;

    internal static void Write(MatrixReport report, bool all, IReadOnlyList<string> written)
    {
        LinkMatrix matrix = report.Matrix;
        LinkPair[] pairs = matrix.Pairs.ToArray();
        StringBuilder text = new();
        text.Wrapped(
            string.Create(CultureInfo.InvariantCulture, $"{report.Plan.Name}: {pairs.Length} pairs of {matrix.Stations.Length} stations at {report.Settings.FrequencyHz / 1e6:0.###} MHz, {report.Settings.TimePercent:0.#} % of the time"), 0);
        LinkPair[] shown = [.. pairs.Where(pair => all || pair.Out.MarginDb is { Median: >= 0 } || pair.Back.MarginDb is { Median: >= 0 })];
        if (shown.Length > 0)
        {
            text.AppendLine();
            text.Line($"  {"",-NameWidth} {"km",6} {"there",6} {"back",6} {"works",6} {"gets",5}  verdict");
        }

        foreach (LinkPair pair in shown.OrderByDescending(pair => pair.LeastMarginDb ?? double.NegativeInfinity))
        {
            string names = $"{matrix.Stations[pair.From].Name} ~ {matrix.Stations[pair.To].Name}";
            text.Line($"  {Fit(names),-NameWidth} {pair.DistanceMetres / 1000,6:0.0} {Margin(pair.Out),6} {Margin(pair.Back),6} {LinkOdds.ShortPercent(pair.WorksBothWays),6} {LinkOdds.ShortPercent(Delivers(pair)),5}  {VerdictText.Word(pair.Verdict)}");
        }

        text.AppendLine();
        text.Wrapped("there, back: margin in dB at the best guess. works: confidence that the weaker direction works. gets: packets it delivers if it does.", 0);
        if (shown.Length < pairs.Length)
        {
            text.Wrapped(string.Create(CultureInfo.InvariantCulture, $"{pairs.Length - shown.Length} pairs that fall short both ways, or are unknown, are not shown; --all shows them."), 0);
        }

        text.Findings(report.Findings);
        text.Assumed(report.Assumptions);
        text.Line($"Pairs: {Count(pairs, Verdict.Ok)} ok, {Count(pairs, Verdict.Tight)} tight, {Count(pairs, Verdict.Fails)} fail, {Count(pairs, Verdict.Unknown)} unknown.");
        text.Wrapped(CheckText.Promise, 0);
        foreach (string file in written)
        {
            text.Line($"Written: {file}");
        }

        Console.Out.Write(text.ToString());
    }

    /// <summary>The findings that are not ok, each with what to do.</summary>
    internal static void Findings(this StringBuilder text, IEnumerable<Finding> findings)
    {
        foreach (IGrouping<(Verdict, string), Finding> group in findings.Where(one => one.Verdict != Verdict.Ok).GroupBy(one => (one.Verdict, $"{FindingSentences.Text(one)} {FindingSentences.Advice(one)}")))
        {
            text.AppendLine();
            string[] subjects = [.. group.Select(one => one.Subject).Distinct(StringComparer.Ordinal)];
            text.Wrapped($"{VerdictText.Word(group.Key.Item1)}  {string.Join(", ", subjects.Take(3))}{(subjects.Length > 3 ? string.Create(CultureInfo.InvariantCulture, $" and {subjects.Length - 3} more") : "")}", 0);
            text.Wrapped(group.Key.Item2, 3);
        }
    }

    /// <summary>What was assumed because the plan does not say.</summary>
    internal static void Assumed(this StringBuilder text, IEnumerable<Assumption> assumptions)
    {
        Assumption[] all = [.. assumptions];
        if (all.Length > 0)
        {
            text.AppendLine();
            text.AppendLine("Assumed, because the plan does not say");
        }

        foreach (string words in all.Select(one => one.Words).Distinct(StringComparer.Ordinal))
        {
            text.Wrapped("– " + words, 3);
        }

        text.AppendLine();
    }

    /// <summary>A name, or two of them, in so many columns.</summary>
    internal static string Fit(string names, int width = NameWidth) => names.Length <= width ? names : names[..(width - 1)] + "…";

    private static double? Delivers(LinkPair pair) =>
        pair.Out.Odds is { } there && pair.Back.Odds is { } back ? (there.Works <= back.Works ? there : back).DeliversIfItWorks : null;

    private static string Margin(LinkOneWay way) => way.MarginDb is { } margin ? margin.Median.ToString("+0.0;-0.0;0.0", CultureInfo.InvariantCulture) : "?";

    private static int Count(LinkPair[] pairs, Verdict verdict) => pairs.Count(pair => pair.Verdict == verdict);
}
