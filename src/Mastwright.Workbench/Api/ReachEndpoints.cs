using System.Collections.Immutable;
using Mastwright.Network.Reach;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Reports.Documents;
using Mastwright.Reports.Reach;
using Mastwright.Workbench.Desk;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Mastwright.Workbench.Api;

/// <summary>Reach maps: their document, and the files that the command line writes.</summary>
internal static class ReachEndpoints
{
    /// <summary>A map takes seconds and all processors: one at a time, the others wait.</summary>
    private static readonly SemaphoreSlim OneAtATime = new(1);

    private static readonly ImmutableDictionary<string, string> Types = ImmutableDictionary.CreateRange(StringComparer.Ordinal, new KeyValuePair<string, string>[]
    {
        new(".png", "image/png"), new(".svg", "image/svg+xml"), new(".tif", "image/tiff; application=geotiff"),
        new(".geojson", "application/geo+json"), new(".kmz", "application/vnd.google-earth.kmz"),
    });

    internal static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/reach", (PlanDesk desk, [AsParameters] ReachQuestion question, CancellationToken cancellation) =>
            Answer(desk, question, (report, options) => ApiAnswer.Json(ReachJson.Write(report, options)), cancellation))
            .Document("reach-1", "Where a station is heard and what it hears: areas by margin, budget, findings.");
        foreach ((string ending, string type) in Types)
        {
            api.MapGet("/reach" + ending, (PlanDesk desk, [AsParameters] ReachQuestion question, CancellationToken cancellation) =>
                Answer(desk, question, (report, options) => Results.File(ReachFiles.Content(ending, report, options), type, $"{report.Setup.Station.Key}-{options.Layer}{ending}"), cancellation))
                .Picture(type, $"The same map as a {ending} file.");
        }
    }

    private static async Task<IResult> Answer(PlanDesk desk, ReachQuestion question, Func<ReachReport, ReachOptions, IResult> answer, CancellationToken cancellation)
    {
        if (question.Options(out string problem) is not { } options)
        {
            return ApiAnswer.Wrong(problem);
        }

        await OneAtATime.WaitAsync(cancellation).ConfigureAwait(false);
        try
        {
            return ApiAnswer.Of(desk, question.Trial, (_, session) => ReachRun.Make(session, options, out ImmutableArray<string> problems, cancellation: cancellation) is { } report
                ? answer(report, options)
                : ApiAnswer.Wrong(string.Join('\n', problems)));
        }
        finally
        {
            OneAtATime.Release();
        }
    }
}

/// <summary>What is asked of a reach map: the options of the command of that name, as a query.</summary>
internal sealed record ReachQuestion
{
    /// <summary>Station: KEY, or SITE/FIT-OUT.</summary>
    [FromQuery(Name = "station")]
    public required string Station { get; init; }

    /// <summary>A station tried elsewhere: "ferry-house/net-loft@46.40,-18.66".</summary>
    [FromQuery(Name = "trial")]
    public string? Trial { get; init; }

    /// <summary>Key of another fit-out of the site, to compare with.</summary>
    [FromQuery(Name = "compare-fit-out")]
    public string? CompareFitOut { get; init; }

    /// <summary>How far from the station: "10 km".</summary>
    [FromQuery(Name = "radius")]
    public string? Radius { get; init; }

    /// <summary>Side of a cell: "90 m".</summary>
    [FromQuery(Name = "cell")]
    public string? Cell { get; init; }

    /// <summary>Who hears: handheld, handheld-indoors, mast, or the key of a neighbour.</summary>
    [FromQuery(Name = "receiver")]
    public string? Receiver { get; init; }

    /// <summary>Height of the receiver: "1.5 m".</summary>
    [FromQuery(Name = "receiver-height")]
    public string? ReceiverHeight { get; init; }

    /// <summary>heard, hears or both.</summary>
    [FromQuery(Name = "direction")]
    public string? Direction { get; init; }

    /// <summary>margin, level, loss, confidence, delivery or difference.</summary>
    [FromQuery(Name = "layer")]
    public string? Layer { get; init; }

    /// <summary>The question as the reach run understands it; null with what is wrong.</summary>
    internal ReachOptions? Options(out string problem)
    {
        if (!Metres("radius", Radius, ReachOptions.UsualRadiusMetres, out double radiusMetres, out problem)
            || !Metres("cell", Cell, ReachOptions.UsualCellMetres, out double cellMetres, out problem)
            || !Metres("receiver-height", ReceiverHeight, double.NaN, out double heightMetres, out problem))
        {
            return null;
        }

        if (Direction is not (null or "heard" or "hears" or "both"))
        {
            problem = "direction: write heard, hears or both";
            return null;
        }

        ReachOptions options = new()
        {
            Stations = [Station],
            CompareFitOut = CompareFitOut,
            Area = new(radiusMetres, cellMetres),
            Receiver = Receiver ?? ReachReceiver.HandheldKey,
            ReceiverHeightMetres = double.IsNaN(heightMetres) ? null : heightMetres,
            Direction = ReachReport.DirectionOf(Direction),
            LayerAsked = Layer,
            Files = [],
        };
        problem = ReachLayers.Problem(options) ?? "";
        return problem.Length == 0 ? options : null;
    }

    private static bool Metres(string name, string? text, double usual, out double metres, out string problem)
    {
        problem = "";
        metres = usual;
        if (text is null)
        {
            return true;
        }

        if (!Quantity.TryParse(text, Dimension.Length, out Estimate value, out problem))
        {
            problem = $"{name}: {problem}";
            return false;
        }

        metres = value.Median;
        return true;
    }
}
