using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Writers;
using Mastwright.Plans;
using Mastwright.Reports.Documents;
using Mastwright.Reports.Paths;
using Mastwright.Reports.Sessions;
using Mastwright.Storage.Ground;
using Mastwright.Workbench.Desk;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Mastwright.Workbench.Api;

/// <summary>The HTTP API: everything that the pages show, in the shapes of the command line's JSON documents.</summary>
internal static class ApiEndpoints
{
    private const double MostProfileMetres = 1_000_000;

    /// <summary>Maps everything below /api/v1.</summary>
    internal static void Map(IEndpointRouteBuilder routes)
    {
        RouteGroupBuilder api = routes.MapGroup("/api/v1");
        api.MapGet("/plan", Plan).Document("plan-1", "What the plan holds: stations, fit-outs and ground. It answers for an unreadable plan too, with its problems.");
        api.MapGet("/check", Check).Document("check-1", "A verdict on every link of the plan.");
        api.MapGet("/path", Path).Document("path-1", "Everything about one path.");
        api.MapGet("/path.svg", PathPictureOf).Picture("image/svg+xml", "The picture of one path.");
        api.MapGet("/ground", GroundFiles).Document("ground-info-1", "The plan's ground files, each read from end to end.");
        api.MapGet("/profile", Profile).Document("profile-1", "The ground between two places.");
        StationEndpoints.Map(api);
        ReachEndpoints.Map(api);
        DragEndpoints.Map(api);
        WriteEndpoints.Map(api);
        WorkEndpoints.Map(api);
        FileEndpoints.Map(api);
        LogEndpoints.Map(api);
        TileEndpoints.Map(api);
    }

    private static IResult Plan(PlanDesk desk, string? trial)
    {
        PlanView view = desk.Current;
        if (trial is not null && view.Session is { } session && Trial.Parse(trial, session.Plan, out _) is { } tried)
        {
            view = view.Trying(tried);
        }

        return ApiAnswer.Json(PlanJson.Write(desk.FileName, view.Number, view.Session, view.Problems, view.Notes));
    }

    private static IResult Check(PlanDesk desk, [FromQuery(Name = "fit-out")] string[]? fitOuts, string? trial, [FromQuery(Name = "change")] string[]? changes)
    {
        if (changes is { Length: > 0 } && trial is not null)
        {
            return ApiAnswer.Wrong("trial and change: try one or the other");
        }

        return changes is { Length: > 0 } ? ApiAnswer.Changed(desk, changes, Judged) : ApiAnswer.Of(desk, trial, Judged);

        IResult Judged(PlanView view, PlanSession session) => FitOutChoice.Read(session.Plan, fitOuts ?? [], out string problem) is { } chosen
            ? ApiAnswer.Json(CheckJson.Write(view.Report(chosen)))
            : ApiAnswer.Wrong(problem);
    }

    private static IResult Path(PlanDesk desk, string from, string to, string? trial) => Link(desk, from, to, trial, (session, link) =>
        ApiAnswer.Json(PathJson.Write(session.Assessment, link, MastHeights.Of(session.Assessment, link))));

    private static IResult PathPictureOf(PlanDesk desk, string from, string to, bool? dark, int? width, int? height, string? trial) => Link(desk, from, to, trial, (session, link) =>
        link.Path.Terrain is null
            ? ApiAnswer.Wrong("There is no picture: there is no path between the two.")
            : width is < 640 or > 4000 || height is < 360 or > 4000
                ? ApiAnswer.Wrong("width and height: a picture is 640 to 4000 pixels wide and 360 to 4000 high")
                : Results.Text(SvgWriter.Write(LinkPicture.Draw(session.Assessment, link, dark == true, Size(width, height))), "image/svg+xml"));

    private static PictureSize Size(int? width, int? height) => new(width ?? PictureSize.Wide.WidthPixels, height ?? PictureSize.Wide.HeightPixels);

    private static IResult GroundFiles(PlanDesk desk, CancellationToken cancellation) => ApiAnswer.Of(desk, (_, session) =>
    {
        ImmutableArray<GroundFileInfo> files = session.Ground.Info(cancellation);
        ImmutableArray<GroundTile> missing = PlanArea.Of(session.Plan) is { } area ? session.Ground.MissingTiles(area) : [];
        return ApiAnswer.Json(GroundInfoJson.Write(session.Document.Folder, files, missing));
    });

    private static IResult Profile(PlanDesk desk, string from, string to) => ApiAnswer.Of(desk, (_, session) =>
    {
        if (!PositionText.TryParse(from, out LocatedPoint start, out string problem) || !PositionText.TryParse(to, out LocatedPoint end, out problem))
        {
            return ApiAnswer.Wrong(problem);
        }

        double metres = Geodesic.Inverse(start.Point, end.Point).DistanceMetres;
        return metres is < 1 or > MostProfileMetres
            ? ApiAnswer.Wrong("from and to: a profile is 1 m to 1000 km long")
            : ApiAnswer.Json(ProfileJson.Write(TerrainProfile.Extract(session.Ground.MosaicFor(start.Point, end.Point), start.Point, end.Point)));
    });

    private static IResult Link(PlanDesk desk, string from, string to, string? trial, Func<PlanSession, LinkReport, IResult> answer) => ApiAnswer.Of(desk, trial, (view, session) =>
    {
        if (StationChoice.Find(session.Plan, from, out string problem) is not { } start || StationChoice.Find(session.Plan, to, out problem) is not { } end)
        {
            return ApiAnswer.Wrong(problem);
        }

        return start.Key == end.Key
            ? ApiAnswer.Wrong($"'{from}' and '{to}' are one station; a path has two ends")
            : answer(session, view.Link(start, end));
    });
}
