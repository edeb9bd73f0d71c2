using System.Text.Json.Serialization;
using Mastwright.Reports.Documents;
using Mastwright.Reports.Evidence;
using Mastwright.Storage.Plans;
using Mastwright.Workbench.Desk;
using Mastwright.Workbench.Keeping;
using Mastwright.Workbench.Work;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Mastwright.Workbench.Api;

/// <summary>The plan's text: reading it, judging a draft, writing it. The plan file is all that can be written, and drafts in the workbench's own folder.</summary>
internal static class WriteEndpoints
{
    /// <summary>Most characters of a text that is sent: what fits the server's bound on a request, written as JSON.</summary>
    private const int MostCharacters = 1 << 20;

    internal static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/plan/text", Text).Document("plan-text-1", "The plan's text with the hash that a change of it names, the last change that can be undone, and drafts.");
        api.MapGet("/plan/schema", () => Results.Text(PlanSchema.ToJson(), "application/schema+json")).WithSummary("The JSON Schema of the plan format, as 'mastwright schema' writes it.");
        RouteGroupBuilder own = api.MapGroup("").AddEndpointFilter<OwnPages>();
        own.MapPost("/plan/check", Check).Document("plan-problems-1", "What is wrong with a text in the place of the plan's. Nothing is written.");
        own.MapPost("/plan/save", Save).Document("plan-text-1", "Writes the plan's text; 409 with both versions where the file was changed meanwhile.");
        own.MapPost("/plan/keep", Keep).Document("plan-text-1", "Writes one change from the pages, comments and order intact: a site's place, the height of its antenna, a new site, or values of fit-outs (changes: \"SITE/FIT-OUT/PATH:VALUE\").");
        own.MapPost("/plan/undo", Undo).Document("plan-text-1", "Puts back the plan as it was before the last saved change.");
        own.MapPost("/plan/adopt", Adopt).Document("plan-text-1", "Writes a correction that work of kind 'fit' came to into the plan under a name, and puts it to use; 422 where it does not beat its rivals.");
        own.MapPost("/plan/draft", KeepDraft).Produces(StatusCodes.Status204NoContent).WithSummary("Keeps an unsaved text beside the plan, in the workbench's own folder; without a text, drops it.");
    }

    private static IResult Text(PlanDesk desk, PlanKeeper keeper) =>
        keeper.Read(out PlanProblem? problem) is { } now ? Answer(desk, keeper, now, []) : Refused([problem!]);

    private static IResult Check(PlanDesk desk, PlanKeeper keeper, TextSent sent)
    {
        if (IsTooLong(sent.Text))
        {
            return TooLong();
        }

        DraftCheck check = keeper.Check(sent.Text);
        return ApiAnswer.Json(PlanTextJson.WriteProblems(desk.FileName, check.Problems, check.Notes));
    }

    private static IResult Save(PlanDesk desk, PlanKeeper keeper, TextSent sent)
    {
        if (IsTooLong(sent.Text))
        {
            return TooLong();
        }

        if (!sent.WithProblems && keeper.Check(sent.Text).Problems is { IsEmpty: false } problems)
        {
            return Refused(problems);
        }

        return Written(desk, keeper, keeper.Save(sent.BasedOn, sent.Text));
    }

    private static IResult Keep(PlanDesk desk, PlanKeeper keeper, ChangeSent sent)
    {
        if (sent.Changes.Length > 0)
        {
            return KeepValues(desk, keeper, sent);
        }

        if (sent.Site.Length == 0)
        {
            return ApiAnswer.Wrong("site: name the site that is changed, or the changes of its fit-outs");
        }

        bool hasPlace = sent.LatitudeDegrees is >= -85 and <= 85 && sent.LongitudeDegrees is >= -180 and <= 180;
        if (!hasPlace && (sent.LatitudeDegrees is not null || sent.LongitudeDegrees is not null || sent.NewKey is not null))
        {
            return ApiAnswer.Wrong("latitude and longitude: a place is -85 to 85 and -180 to 180 degrees");
        }

        if (sent.HeightMetres is not (null or (> 0 and <= KeptChange.MostHeightMetres)))
        {
            return ApiAnswer.Wrong("height-metres: an antenna is more than 0 and at most 200 m above the ground");
        }

        if (!hasPlace && sent.HeightMetres is null)
        {
            return ApiAnswer.Wrong("There is nothing to keep: name a place, a height, or both");
        }

        KeptChange change = new()
        {
            Site = sent.Site,
            FitOut = sent.FitOut,
            LatitudeDegrees = sent.LatitudeDegrees,
            LongitudeDegrees = sent.LongitudeDegrees,
            HeightMetres = sent.HeightMetres,
            NewKey = sent.NewKey,
            NewName = sent.NewName,
        };
        return Written(desk, keeper, keeper.Keep(sent.BasedOn, change));
    }

    /// <summary>Writes values of fit-outs; refused as a whole when the plan with them would not read.</summary>
    private static IResult KeepValues(PlanDesk desk, PlanKeeper keeper, ChangeSent sent)
    {
        PlanEdit?[] edits = [.. sent.Changes.Select(PlanEdit.Parse)];
        if (Array.IndexOf(edits, null) is >= 0 and var wrong)
        {
            return ApiAnswer.Wrong(PlanEdit.Refusal(sent.Changes[wrong]));
        }

        KeptChange change = new() { Edits = [.. edits.OfType<PlanEdit>()] };
        return desk.Current is { Session: not null } view && view.PlanHash == sent.BasedOn && view.Changing(change.Edits).Problems is { IsEmpty: false } problems
            ? Results.Problem(string.Join('\n', problems), statusCode: StatusCodes.Status422UnprocessableEntity, title: "Nothing was written")
            : Written(desk, keeper, keeper.Keep(sent.BasedOn, change));
    }

    private static IResult Undo(PlanDesk desk, PlanKeeper keeper, BaseSent sent) => Written(desk, keeper, keeper.Undo(sent.BasedOn));

    private static IResult Adopt(PlanDesk desk, PlanKeeper keeper, WorkDesk work, CorrectionSent sent) =>
        work.Find(sent.Work) is { Answer.Source: CorrectionAnswer answer }
            ? Written(desk, keeper, keeper.Adopt(sent.BasedOn, answer, sent.Name))
            : ApiAnswer.Wrong("work: there is no fit of this id, or it is not done");

    private static IResult KeepDraft(PlanKeeper keeper, DraftSent sent)
    {
        if (!Draft.IsId(sent.Id))
        {
            return ApiAnswer.Wrong("id: a draft is named by 8 to 40 letters, digits and dashes");
        }

        switch (sent.Text)
        {
            case null:
                keeper.DropDraft(sent.Id);
                return Results.NoContent();
            case var text when IsTooLong(text):
                return TooLong();
            default:
                keeper.WriteDraft(sent.Id, sent.BasedOn ?? "", sent.Text);
                return Results.NoContent();
        }
    }

    private static IResult Written(PlanDesk desk, PlanKeeper keeper, KeepResult result) => result switch
    {
        { Now: { } now } => Answer(desk, keeper, now, result.Notes),
        { Conflict: { } conflict } => Results.Problem(
            "The file was changed meanwhile, by another page or an editor. Nothing was written.",
            statusCode: StatusCodes.Status409Conflict,
            title: "The plan was changed meanwhile",
            extensions: new Dictionary<string, object?>(StringComparer.Ordinal)
            {
                ["what"] = conflict.What,
                ["yours"] = conflict.Yours,
                ["theirs"] = conflict.Theirs.Text,
                ["theirs-hash"] = conflict.Theirs.Hash,
                ["merged"] = conflict.Merged,
            }),
        _ => Refused([result.Problem!]),
    };

    private static IResult Answer(PlanDesk desk, PlanKeeper keeper, PlanRevision now, IEnumerable<string> notes)
    {
        HistoryStep? last = keeper.LastStep;
        return ApiAnswer.Json(PlanTextJson.Write(
            desk.FileName, now.Hash, now.Text, last is null ? null : (last.Time, last.What), notes, keeper.Drafts().Select(draft => (draft.Id, draft.Time, draft.BasedOn, draft.Text))));
    }

    private static IResult Refused(IEnumerable<PlanProblem> problems) =>
        Results.Problem(string.Join('\n', problems), statusCode: StatusCodes.Status422UnprocessableEntity, title: "Nothing was written");

    private static bool IsTooLong(string text) => text.Length > MostCharacters;

    private static IResult TooLong() => Results.Problem(
        "The page sends texts of at most 1,048,576 characters. Change a longer plan in an editor of your own; this page reads it again by itself.",
        statusCode: StatusCodes.Status413PayloadTooLarge, title: "The text is too long");
}

/// <summary>A text, and the hash of the state that it was made from.</summary>
internal sealed record TextSent
{
    [JsonPropertyName("text")]
    public required string Text { get; init; }

    [JsonPropertyName("based-on")]
    public string BasedOn { get; init; } = "";

    /// <summary>Write it though it has problems.</summary>
    [JsonPropertyName("with-problems")]
    public bool WithProblems { get; init; }
}

/// <summary>The hash of the state that something is based on.</summary>
internal sealed record BaseSent
{
    [JsonPropertyName("based-on")]
    public required string BasedOn { get; init; }
}

/// <summary>A fitted correction that the plan is to adopt.</summary>
internal sealed record CorrectionSent
{
    [JsonPropertyName("based-on")]
    public required string BasedOn { get; init; }

    /// <summary>Id of the work that fitted it.</summary>
    [JsonPropertyName("work")]
    public required string Work { get; init; }

    /// <summary>Its name in the plan.</summary>
    [JsonPropertyName("name")]
    public required string Name { get; init; }
}

/// <summary>An unsaved text of a page.</summary>
internal sealed record DraftSent
{
    [JsonPropertyName("id")]
    public required string Id { get; init; }

    [JsonPropertyName("based-on")]
    public string? BasedOn { get; init; }

    [JsonPropertyName("text")]
    public string? Text { get; init; }
}

/// <summary>A change that was made on the map.</summary>
internal sealed record ChangeSent
{
    [JsonPropertyName("based-on")]
    public required string BasedOn { get; init; }

    [JsonPropertyName("site")]
    public string Site { get; init; } = "";

    /// <summary>Values of fit-outs, "SITE/FIT-OUT/PATH:VALUE" each; with any, nothing else of the change counts.</summary>
    [JsonPropertyName("changes")]
    public string[] Changes { get; init; } = [];

    [JsonPropertyName("fit-out")]
    public string? FitOut { get; init; }

    [JsonPropertyName("latitude")]
    public double? LatitudeDegrees { get; init; }

    [JsonPropertyName("longitude")]
    public double? LongitudeDegrees { get; init; }

    [JsonPropertyName("height-metres")]
    public double? HeightMetres { get; init; }

    [JsonPropertyName("new-key")]
    public string? NewKey { get; init; }

    [JsonPropertyName("new-name")]
    public string? NewName { get; init; }
}
