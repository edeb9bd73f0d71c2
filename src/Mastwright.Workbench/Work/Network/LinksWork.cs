using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Network.Links;
using Mastwright.Pictures.Network;
using Mastwright.Plans;
using Mastwright.Reports.Documents;
using Mastwright.Storage.Network;
using Mastwright.Workbench.Components;

namespace Mastwright.Workbench.Work.Network;

/// <summary>The links between all stations.</summary>
internal sealed class LinksWork : IWork
{
    public string Kind => "links";

    public string Unit => "pairs";

    public bool GoesOn => false;

    public bool HangsOnPlan => true;

    public string Title(WorkQuestion question) => "Links between all stations";

    public WorkAnswer? Run(WorkItem item, Action<string> tell)
    {
        if (WorkStations.Session(item, tell) is not { } session)
        {
            return null;
        }

        ImmutableArray<LinkStation> stations = WorkStations.Of(session, item.Question);
        item.Total = stations.Length * (stations.Length - 1) / 2;
        return WorkStations.Links(session, stations, item, tell, (double?)null) is [{ } report] ? Answer(report) : null;
    }

    private static WorkAnswer Answer(MatrixReport report)
    {
        LinkMatrix matrix = report.Matrix;
        LinkPair[] pairs = [.. matrix.Pairs.ToArray().OrderByDescending(pair => pair.LeastMarginDb ?? double.NegativeInfinity)];
        return new()
        {
            Json = LinksJson.Write(report),
            Sentences =
            [
                string.Create(CultureInfo.InvariantCulture, $"{pairs.Length} pairs of {matrix.Stations.Length} stations at {report.Settings.FrequencyHz / 1e6:0.###} MHz, {report.Settings.TimePercent:0.#} % of the time: {Count(pairs, Verdict.Ok)} ok, {Count(pairs, Verdict.Tight)} tight, {Count(pairs, Verdict.Fails)} fail, {Count(pairs, Verdict.Unknown)} unknown."),
            ],
            Pictures =
            [
                new("confidence", "Stations and the links between them, by the confidence that they work", theme => LinksPicture.DrawConfidence(report.Plan.Name, matrix, theme)),
                new("links", "Stations and the links between them, by margin", theme => LinksPicture.Draw(report.Plan.Name, matrix, report.Settings.Wanted.MarginDb, theme)),
            ],
            Tables =
            [
                new(
                    "links",
                    "Every pair, the best first. There, back: margin in dB at the best guess. Works: confidence that the weaker direction works. Gets: packets it delivers if it does.",
                    [new("pair"), new("km", true), new("there, dB", true), new("back, dB", true), new("works", true), new("gets", true)],
                    [.. pairs.Select(pair => Row(matrix, pair))]),
            ],
            Files = [new("links.geojson", "application/geo+json", () => Encoding.UTF8.GetBytes(LinksGeoJson.Write(matrix, all: true)))],
            Findings = report.Findings,
            Assumptions = report.Assumptions,
        };
    }

    private static WorkRow Row(LinkMatrix matrix, LinkPair pair)
    {
        (MatrixStation from, MatrixStation to) = (matrix.Stations[pair.From], matrix.Stations[pair.To]);
        double? delivers = pair.Out.Odds is { } there && pair.Back.Odds is { } back ? (there.Works <= back.Works ? there : back).DeliversIfItWorks : null;
        return new([$"{from.Name} – {to.Name}", Numbers.Kilometres(pair.DistanceMetres), Margin(pair.Out), Margin(pair.Back), LinkOdds.ShortPercent(pair.WorksBothWays), LinkOdds.ShortPercent(delivers)])
        {
            Verdict = pair.Verdict,
            Address = $"/?site={Uri.EscapeDataString(from.Key)}&to={Uri.EscapeDataString(to.Key)}",
        };
    }

    private static string Margin(LinkOneWay way) => way.MarginDb is { } margin ? margin.Median.ToString("+0.0;−0.0;0.0", CultureInfo.InvariantCulture) : "?";

    private static int Count(LinkPair[] pairs, Verdict verdict) => pairs.Count(pair => pair.Verdict == verdict);
}
