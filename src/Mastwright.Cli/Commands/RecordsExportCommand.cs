using System.CommandLine;
using Mastwright.Evidence;
using Mastwright.Geodesy;
using Mastwright.Plans;
using Mastwright.Records;
using Mastwright.Records.Export;
using Mastwright.Records.Store;
using Mastwright.Storage.Files;

namespace Mastwright.Cli.Commands;

/// <summary>records export: writes what a store holds for other programs.</summary>
internal static class RecordsExportCommand
{
    internal static Command Create()
    {
        Argument<string> file = new("FILE") { Description = "File to write; its ending names the form (.csv, .geojson, .parquet)." };
        Option<string> store = StoreOptions.Store();
        Option<string?> network = StoreOptions.Network();
        Option<string?> from = new("--from") { Description = "Only what was heard from this time on, as 2026-07-01T00:00Z.", HelpName = "TIME" };
        Option<string?> to = new("--to") { Description = "Only what was heard before this time.", HelpName = "TIME" };
        Option<string?> plan = new("--plan") { Description = "For .geojson: the plan that says where stations are.", HelpName = "PLAN" };
        Option<bool> hours = new("--hours") { Description = "The hours that 'records compact' has made, as .csv." };
        Option<bool> telemetry = new("--telemetry") { Description = "What stations told of themselves, as .csv." };
        Option<bool> overwrite = new("--overwrite") { Description = "Replace the file when it is there." };
        Option<bool> outside = Options.AllowOutside();
        Command command = new("export", "Write records as CSV, GeoJSON or Parquet.") { file, store, network, from, to, plan, hours, telemetry, overwrite, outside };
        command.SetAction((parsed, cancellation) => Task.FromResult(StoreOptions.Guarded(() => Run(
            new(
                parsed.GetRequiredValue(file),
                parsed.GetRequiredValue(store),
                parsed.GetValue(network),
                parsed.GetValue(from),
                parsed.GetValue(to),
                parsed.GetValue(plan),
                parsed.GetValue(hours),
                parsed.GetValue(overwrite),
                parsed.GetValue(outside)) { Telemetry = parsed.GetValue(telemetry) },
            cancellation))));
        return command;
    }

    private static int Run(RecordsExportRequest request, CancellationToken cancellation)
    {
        long from = long.MinValue;
        long to = long.MaxValue;
        ExportForm? form = RecordExport.ByEnding(request.File);
        string problem =
            form is null ? $"{request.File}: the ending names no form; use .csv, .geojson or .parquet"
            : request.From is not null && !UtcTime.TryParse(request.From, out from) ? $"--from: '{request.From}' is no time with its zone, such as 2026-07-01T00:00Z"
            : request.To is not null && !UtcTime.TryParse(request.To, out to) ? $"--to: '{request.To}' is no time with its zone, such as 2026-08-01T00:00Z"
            : request is { Hours: true, Telemetry: true } ? "--hours and --telemetry are two files"
            : (request.Hours || request.Telemetry) && form != ExportForm.Csv ? $"{request.File}: {(request.Hours ? "hours are" : "telemetry is")} written as .csv"
            : File.Exists(request.File) && !request.Overwrite ? $"{request.File}: is there already; --overwrite replaces it"
            : "";
        if (problem.Length > 0)
        {
            Console.Error.WriteLine(problem);
            return ExitCode.BadInput;
        }

        if (Places(request) is not { } places)
        {
            return ExitCode.BadInput;
        }

        using RecordStore? store = StoreOptions.There(request.Store);
        if (store is null || StoreOptions.NetworkOf(store, request.Network) is not { } network)
        {
            return ExitCode.BadInput;
        }

        if (request.Hours)
        {
            HourSummary[] hours = [.. store.ReadSummaries(network).Where(hour => hour.HourMicroseconds >= from && hour.HourMicroseconds < to)];
            WholeFile.Write(request.File, HourSummaryText.Of(hours));
            Console.Out.WriteLine($"{hours.Length} hours of network '{network}' are in {request.File}");
            return ExitCode.Fine;
        }

        if (request.Telemetry)
        {
            IReadOnlyList<TelemetryRecord> told = store.ReadTelemetry(network, from, to);
            WholeFile.Write(request.File, TelemetryText.Of(told));
            Console.Out.WriteLine($"{told.Count} reports of stations of network '{network}' are in {request.File}");
            return ExitCode.Fine;
        }

        long written = 0;
        WholeFile.Write(request.File, stream =>
        {
            using Progress progress = Progress.Start("records");
            written = RecordExport.Write(store, new(network, from, to), form!.Value, stream, places, progress, cancellation);
        });
        Console.Out.WriteLine($"{written} records of network '{network}' are in {request.File}");
        return ExitCode.Fine;
    }

    /// <summary>Where the plan's stations are, by the addresses that records call them; null, after it was told, where the plan cannot be used.</summary>
    private static Func<string, long, StationPlace?>? Places(RecordsExportRequest request)
    {
        if (request.Plan is null)
        {
            return (_, _) => null;
        }

        if (PlanSession.Read(request.Plan, request.AllowOutside) is not { } document)
        {
            return null;
        }

        Dictionary<string, StationPlace> places = new(StringComparer.Ordinal);
        foreach ((string key, GeoPoint point) in document.Plan.Sites.Select(site => (site.Key, site.Position.Point))
            .Concat(document.Plan.Neighbours.Select(neighbour => (neighbour.Key, neighbour.Position.Point))))
        {
            places[key] = new(point.LongitudeDegrees, point.LatitudeDegrees);
        }

        StationNames names = new(document.Plan);
        return (address, time) => names.KeyOf(address, time) is { } key && places.TryGetValue(key, out StationPlace place) ? place : null;
    }
}

/// <summary>What records export is asked for.</summary>
internal sealed record RecordsExportRequest(string File, string Store, string? Network, string? From, string? To, string? Plan, bool Hours, bool Overwrite, bool AllowOutside)
{
    /// <summary>Whether what stations told of themselves is wanted in place of receptions.</summary>
    internal bool Telemetry { get; init; }
}
