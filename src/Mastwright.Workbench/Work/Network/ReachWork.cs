using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;
using Mastwright.Plans;
using Mastwright.Reports.Documents;
using Mastwright.Reports.Reach;
using Mastwright.Storage.Jobs;
using Mastwright.Workbench.Components;
using Mastwright.Workbench.Desk;

namespace Mastwright.Workbench.Work.Network;

/// <summary>The reach of a station further than the map of the ground shows it, up to 200 km.</summary>
internal sealed class ReachWork : IWork
{
    /// <summary>A picture shows no more than some 1,300 cells across.</summary>
    private const double CellsAcross = 1300;

    public string Kind => "reach";

    public string Unit => "cells";

    public bool GoesOn => true;

    public bool HangsOnPlan => true;

    public string Title(WorkQuestion question) => string.Create(CultureInfo.InvariantCulture, $"Reach of {Stations.Name(question.View, question["site"])} over {Kilometres(question)} km");

    public WorkAnswer? Run(WorkItem item, Action<string> tell)
    {
        if (WorkStations.Session(item, tell) is not { } session
            || WorkStations.One(session, item.Question, WorkStations.Of(session, item.Question), tell) is not { } station)
        {
            return null;
        }

        double radiusMetres = 1000 * Kilometres(item.Question);
        ReachOptions options = new()
        {
            Stations = [station.Subject],
            Area = new(radiusMetres, Math.Max(ReachOptions.UsualCellMetres, 2 * radiusMetres / CellsAcross)),
            Receiver = item.Question["receiver"] ?? ReachReceiver.HandheldKey,
            Direction = ReachReport.DirectionOf(item.Question["direction"]),
            // The picture wants the ground at its corners too.
            Files = ["reach.svg"],
        };
        using LongWork work = new(CacheFolder.Usual, new(), _ => { }, new WorkSteps(item));
        if (ReachRun.Make(session, options, out ImmutableArray<string> problems, item, work, item.Cancellation) is not { } report)
        {
            problems.ToList().ForEach(tell);
            return null;
        }

        return Answer(report, options);
    }

    private static int Kilometres(WorkQuestion question) => Numbers.Whole(question["radius"], 1, 200) ?? 50;

    private static WorkAnswer Answer(ReachReport report, ReachOptions options) => new()
    {
        Json = ReachJson.Write(report, options),
        Sentences =
        [
            string.Create(CultureInfo.InvariantCulture, $"{report.RadioText()}; within {report.Map.Field.Input.RadiusMetres / 1000:0.##} km, {report.Totals.Cells} cells of {report.Frame.StepX:0.##} m."),
            report.MethodText(),
        ],
        Pictures = [new("reach", $"Where {report.Setup.Station.Name} is heard, by margin", theme => ReachFiles.Picture(report, options with { IsDark = theme == Theme.Dark }))],
        Tables =
        [
            new(
                "reach",
                "Area by margin",
                [new("margin from, dB", true), new("km²", true)],
                [.. report.Totals.ClassesOf(options.Direction).Select(one => new WorkRow([double.IsFinite(one.FromDb) ? one.FromDb.ToString("0.#", CultureInfo.InvariantCulture) : "below 0", (one.AreaSquareMetres / 1e6).ToString("0.0", CultureInfo.InvariantCulture)]))]),
        ],
        Files =
        [
            new("reach.tif", "image/tiff; application=geotiff", () => ReachFiles.Content(".tif", report, options)),
            new("reach.geojson", "application/geo+json", () => ReachFiles.Content(".geojson", report, options)),
            new("reach.kmz", "application/vnd.google-earth.kmz", () => ReachFiles.Content(".kmz", report, options)),
        ],
        Findings = report.Findings,
        Assumptions = report.Assumptions,
    };
}
