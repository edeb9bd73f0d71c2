using System.Collections.Immutable;
using System.Text.Json.Serialization;
using Mastwright.Workbench.Desk;
using Mastwright.Workbench.Work;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Mastwright.Workbench.Api;

/// <summary>Work that takes long: asking for it, how far it is, stopping it, and what came of it.</summary>
internal static class WorkEndpoints
{
    private const int MostSettings = 24;
    private const int MostCharacters = 400;

    internal static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/work", (WorkDesk work) => ApiAnswer.Json(WorkJson.Write(work.All))).Document("work-1", "Work that was asked for, the newest first.");
        api.MapGet("/work/{id}", (WorkDesk work, string id) => Of(work, id, item => ApiAnswer.Json(WorkJson.Write([item])))).Document("work-1", "One piece of work: how far it is.");
        api.MapGet("/work/{id}/{file}", (WorkDesk work, string id, string file, bool? dark) => Of(work, id, item => File(item, file, dark == true)))
            .WithSummary("What came of work: its document in the shape of the command of that name, a picture, a table. The names stand in 'files'.")
            .Produces(StatusCodes.Status200OK).ProducesProblem(StatusCodes.Status404NotFound);
        RouteGroupBuilder own = api.MapGroup("").AddEndpointFilter<OwnPages>();
        own.MapPost("/work", Ask).Document("work-1", "Asks for work: links, hops, shadow, air, and what else a page offers. What is done already is not done again.");
        own.MapPost("/work/{id}/cancel", (WorkDesk work, string id) => Of(work, id, item =>
        {
            work.Cancel(item);
            return ApiAnswer.Json(WorkJson.Write([item]));
        })).Document("work-1", "Stops work that waits or runs.");
    }

    private static IResult Ask(PlanDesk desk, WorkDesk work, WorkSent sent)
    {
        if (!work.Has(sent.Kind))
        {
            return ApiAnswer.Wrong($"kind: there is no work '{sent.Kind}'");
        }

        if (sent.Settings.Count > MostSettings || sent.Settings.Any(one => one.Key.Length > MostCharacters || one.Value.Length > MostCharacters))
        {
            return ApiAnswer.Wrong($"settings: at most {MostSettings} of at most {MostCharacters} characters");
        }

        return ApiAnswer.Of(desk, sent.Trial, (view, _) => ApiAnswer.Json(WorkJson.Write([work.Ask(sent.Kind, new(view, sent.Settings.ToImmutableSortedDictionary(StringComparer.Ordinal)), sent.Anew)])));
    }

    private static IResult Of(WorkDesk work, string id, Func<WorkItem, IResult> answer) => work.Find(id) is { } item ? answer(item) : Nothing("There is no such work, or it is long over.");

    private static IResult File(WorkItem item, string name, bool isDark) =>
        WorkFiles.Of(item, name, isDark) is { } file ? Results.File(file.Content, file.MediaType) : Nothing("The work has no such file, or is not done.");

    private static IResult Nothing(string what) => Results.Problem(what, statusCode: StatusCodes.Status404NotFound, title: "Nothing there");
}

/// <summary>What work is asked for.</summary>
internal sealed record WorkSent
{
    /// <summary>links, hops, shadow, air, …</summary>
    [JsonPropertyName("kind")]
    public required string Kind { get; init; }

    /// <summary>What else is asked, by name: site, fit-outs, hop-limit, radius.</summary>
    [JsonPropertyName("settings")]
    public Dictionary<string, string> Settings { get; init; } = new(StringComparer.Ordinal);

    /// <summary>A station tried elsewhere: "ferry-house/net-loft@46.40,-18.66".</summary>
    [JsonPropertyName("trial")]
    public string? Trial { get; init; }

    /// <summary>Do it again though it is done.</summary>
    [JsonPropertyName("anew")]
    public bool Anew { get; init; }
}
