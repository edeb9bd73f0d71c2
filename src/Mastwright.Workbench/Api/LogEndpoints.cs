using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json.Serialization;
using Mastwright.Evidence;
using Mastwright.Records;
using Mastwright.Records.Log;
using Mastwright.Records.Store;
using Mastwright.Reports.Documents;
using Mastwright.Workbench.Desk;
using Mastwright.Workbench.Work;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Mastwright.Workbench.Api;

/// <summary>The site log: reading it, adding to it, and what is attached.</summary>
internal static class LogEndpoints
{
    internal static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/log", Read).Document("log-1", "The site log with what changed from settings to settings.");
        api.MapGet("/log.csv", (RecordsDesk records, string? network) => Results.Text(Table(records, network).ToCsv(), "text/csv", Encoding.UTF8))
            .WithSummary("The site log as a table.").Produces(StatusCodes.Status200OK, contentType: "text/csv");
        api.MapGet("/log/attachments/{sha256}", Attachment).WithSummary("What is attached to an entry, by its hash.").Produces(StatusCodes.Status200OK).ProducesProblem(StatusCodes.Status404NotFound);
        api.MapGroup("").AddEndpointFilter<OwnPages>().MapPost("/log", Add).Document("log-1", "Adds an entry, with files that were sent before attached to it.");
    }

    private static IResult Read(RecordsDesk records, string? network) => Answer(records, network);

    private static IResult Attachment(RecordsDesk records, string sha256, [FromQuery(Name = "name")] string? name)
    {
        if (!records.IsThere || sha256.Length != 64 || !sha256.All(char.IsAsciiHexDigitLower))
        {
            return Nothing();
        }

        using RecordStore store = records.Open();
        // Always as a file to keep: what is attached is not shown as a page of this server.
        return store.ReadAttachment(sha256) is { } content ? Results.File(content, "application/octet-stream", name is { Length: > 0 and < 200 } ? Path.GetFileName(name) : sha256[..12]) : Nothing();
    }

    private static IResult Add(PlanDesk desk, SiteLog log, RecordsDesk records, EntrySent sent) => ApiAnswer.Of(desk, (_, session) =>
        log.Add(session.Plan, sent.Station, sent.Kind, sent.Text, sent.At, sent.Files, out string problem) is not null
            ? Answer(records, null)
            : ApiAnswer.Wrong(problem));

    private static IResult Answer(RecordsDesk records, string? asked)
    {
        if (!records.IsThere)
        {
            return ApiAnswer.Json(LogJson.Write(asked ?? "", new([]), ImmutableDictionary<long, ImmutableArray<SettingsChange>>.Empty));
        }

        using RecordStore store = records.Open();
        string network = asked ?? records.UsualNetwork(store);
        LogEntries log = store.ReadLog(network);
        return ApiAnswer.Json(LogJson.Write(network, log, SettingsHistory.Of(store, log)));
    }

    private static WorkTable Table(RecordsDesk records, string? asked)
    {
        ImmutableArray<SiteLogEntry> entries = [];
        if (records.IsThere)
        {
            using RecordStore store = records.Open();
            entries = store.ReadLog(asked ?? records.UsualNetwork(store)).All;
        }

        return new(
            "log",
            "The site log",
            [new("entry", true), new("time (UTC)"), new("kind"), new("site"), new("fit-out"), new("text"), new("attached")],
            [.. entries.Select(entry => new WorkRow(
            [
                entry.Number.ToString(CultureInfo.InvariantCulture), UtcTime.Text(entry.TimeMicroseconds), entry.Kind.Word(), entry.Site, entry.FitOut ?? "", entry.Text,
                string.Join("; ", entry.Attachments.Select(attachment => $"{attachment.Name} (SHA-256 {attachment.Sha256})")),
            ]))]);
    }

    private static IResult Nothing() => Results.Problem("Nothing is attached under this hash.", statusCode: StatusCodes.Status404NotFound, title: "Nothing there");
}

/// <summary>An entry to be added.</summary>
internal sealed record EntrySent
{
    /// <summary>A site, or one of its fit-outs: "ferry-house/net-loft".</summary>
    [JsonPropertyName("station")]
    public required string Station { get; init; }

    /// <summary>fit-out, firmware, settings, fault or weather.</summary>
    [JsonPropertyName("kind")]
    public required string Kind { get; init; }

    [JsonPropertyName("text")]
    public required string Text { get; init; }

    /// <summary>When, with its zone; null for now.</summary>
    [JsonPropertyName("at")]
    public string? At { get; init; }

    /// <summary>Ids of files that were sent.</summary>
    [JsonPropertyName("files")]
    public string[] Files { get; init; } = [];
}
