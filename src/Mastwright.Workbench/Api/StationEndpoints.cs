using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Station;
using Mastwright.Pictures.Writers;
using Mastwright.Plans;
using Mastwright.Reports.Documents;
using Mastwright.Reports.Sessions;
using Mastwright.Reports.Stations;
using Mastwright.Workbench.Desk;
using Mastwright.Workbench.Work;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Mastwright.Workbench.Api;

/// <summary>What stands at a site: its pictures, its tables, its fit-outs side by side; each with changes tried that stand in no file.</summary>
internal static class StationEndpoints
{
    internal static void Map(IEndpointRouteBuilder api)
    {
        foreach (string kind in StationPictures.Kinds)
        {
            api.MapGet($"/station/{kind}.svg", (PlanDesk desk, [AsParameters] StationQuestion question) => Picture(desk, question, kind, drawing => Results.Text(SvgWriter.Write(drawing), "image/svg+xml")))
                .Picture("image/svg+xml", $"A picture of a fit-out: {kind}, as 'draw' makes it.");
            api.MapGet($"/station/{kind}.png", (PlanDesk desk, [AsParameters] StationQuestion question) => Picture(desk, question, kind, drawing => Results.Bytes(PngWriter.Write(drawing), "image/png")))
                .Picture("image/png", $"The same as pixels: {kind}.");
        }

        Table(api, "findings", "Every finding of a fit-out, by element.", desk => FitOutTables.Findings(desk));
        Table(api, "ledgers", "Every budget of a fit-out, line by line.", FitOutTables.Ledgers);
        api.MapGet("/station/moved.csv", (PlanDesk desk, string station, [FromQuery(Name = "change")] string[]? changes) => ApiAnswer.Changed(desk, changes, (view, session) => Moved(desk.Current, view, session, station)))
            .Picture("text/csv", "The measures of a fit-out that move with the changes, before and after.");
        api.MapGet("/compare", (PlanDesk desk, string site, [FromQuery(Name = "change")] string[]? changes) => ApiAnswer.Changed(desk, changes, (view, session) =>
            Several(session, site, out string problem) ? ApiAnswer.Json(ComparisonJson.Write(session.Plan, [view.Compare(site, NoChoice)])) : ApiAnswer.Wrong(problem)))
            .Document("comparison-1", "The fit-outs of a site side by side.");
        api.MapGet("/station/comparison.csv", (PlanDesk desk, string site, [FromQuery(Name = "change")] string[]? changes) => ApiAnswer.Changed(desk, changes, (view, session) =>
            Several(session, site, out string problem)
                ? Results.Text(FitOutTables.Compared(view.Compare(site, NoChoice), [.. session.Plan.Sites.First(one => one.Key == site).FitOuts.Select(one => one.Key)]).ToCsv(), "text/csv")
                : ApiAnswer.Wrong(problem)))
            .Picture("text/csv", "The same as a table.");
    }

    private static Dictionary<string, string> NoChoice => new(StringComparer.Ordinal);

    private static void Table(IEndpointRouteBuilder api, string name, string summary, Func<FitOutDesk, WorkTable> table) => api.MapGet(
        $"/station/{name}.csv",
        (PlanDesk desk, string station, [FromQuery(Name = "change")] string[]? changes) => ApiAnswer.Changed(desk, changes, (view, session) =>
            FitOutDesk.Find(view, session, station, out string problem) is { } found ? Results.Text(table(found).ToCsv(), "text/csv") : ApiAnswer.Wrong(problem)))
        .Picture("text/csv", summary);

    private static IResult Moved(PlanView before, PlanView after, PlanSession session, string station)
    {
        if (FitOutDesk.Find(after, session, station, out string problem) is not { } tried || FitOutDesk.Find(before, before.Session!, station, out problem) is not { } stands)
        {
            return ApiAnswer.Wrong(problem);
        }

        return Results.Text(FitOutTables.Moved(ReportDifference.Of(tried.FitOut.Station.Key, stands.Report, tried.Report)).ToCsv(), "text/csv");
    }

    private static bool Several(PlanSession session, string site, out string problem)
    {
        problem = session.Plan.Sites.FirstOrDefault(one => one.Key == site) switch
        {
            null => $"site: '{site}' is not a site of the plan; its sites are {FitOutChoice.Listed(session.Plan.Sites.Select(one => one.Key))}",
            { FitOuts.Length: < 2 } => $"site: '{site}' has one fit-out or none; give it another under sites/{site}/fit-outs to compare with",
            _ => "",
        };
        return problem.Length == 0;
    }

    private static IResult Picture(PlanDesk desk, StationQuestion question, string kind, Func<Drawing, IResult> write)
    {
        int width = question.Width ?? StationSheet.UsualWidth;
        if (width is < StationSheet.LeastWidth or > StationSheet.MostWidth)
        {
            return ApiAnswer.Wrong($"width: a picture of a station is {StationSheet.LeastWidth} to {StationSheet.MostWidth} pixels wide");
        }

        return ApiAnswer.Changed(desk, question.Changes, (view, session) =>
            FitOutDesk.Find(view, session, question.Station, out string problem) is { } found
                && StationPictures.Draw(found.Report, found.FitOut, kind, width, question.Dark == true ? Theme.Dark : Theme.Light, out problem) is { } drawing
                ? write(drawing)
                : ApiAnswer.Wrong(problem));
    }
}

/// <summary>What is asked of a picture of a station.</summary>
internal sealed record StationQuestion
{
    /// <summary>SITE, or SITE/FIT-OUT.</summary>
    [FromQuery(Name = "station")]
    public required string Station { get; init; }

    /// <summary>Changes that are tried: "ferry-house/net-loft/supply/3/length:40 m".</summary>
    [FromQuery(Name = "change")]
    public string[]? Changes { get; init; }

    /// <summary>Pixels across.</summary>
    [FromQuery(Name = "width")]
    public int? Width { get; init; }

    /// <summary>For a dark page.</summary>
    [FromQuery(Name = "dark")]
    public bool? Dark { get; init; }
}
