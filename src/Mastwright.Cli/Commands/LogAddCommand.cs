using System.Collections.Immutable;
using System.CommandLine;
using Mastwright.Evidence;
using Mastwright.Plans;
using Mastwright.Records;
using Mastwright.Records.Log;
using Mastwright.Records.Store;

namespace Mastwright.Cli.Commands;

/// <summary>log add: one dated entry, with what is attached to it.</summary>
internal static class LogAddCommand
{
    private static readonly ImmutableArray<string> Kinds = SiteLogKinds.Words;

    internal static Command Create()
    {
        Argument<string> plan = Options.Plan();
        Argument<string> station = new("SITE") { Description = "A site, or one of its fit-outs as SITE/FIT-OUT." };
        Argument<string> text = new("TEXT") { Description = "What was done or seen." };
        Option<string> kind = new("--kind") { Description = "fit-out, firmware, settings, fault or weather.", HelpName = "KIND", Required = true };
        kind.AcceptOnlyFromAmong([.. Kinds]);
        Option<string?> at = new("--at") { Description = "When, with its zone, as 2026-07-01T12:00Z (default: now).", HelpName = "TIME" };
        Option<string[]> attach = new("--attach") { Description = "A file to keep with it; may be given several times.", HelpName = "FILE" };
        Option<string> store = StoreOptions.Store("The store: a file, made when it is not there, or 'Host=…'.");
        Option<string?> network = StoreOptions.Network();
        Option<bool> outside = Options.AllowOutside();
        Command command = new("add", "Add an entry.") { plan, station, text, kind, at, attach, store, network, outside };
        command.SetAction(parsed => StoreOptions.Guarded(() => Run(
            parsed.GetRequiredValue(plan),
            new(parsed.GetRequiredValue(station), parsed.GetRequiredValue(text), parsed.GetRequiredValue(kind), parsed.GetValue(at), parsed.GetValue(attach) ?? []),
            parsed.GetRequiredValue(store),
            parsed.GetValue(network),
            parsed.GetValue(outside))));
        return command;
    }

    private static int Run(string planPath, LogAddRequest request, string place, string? network, bool outside)
    {
        if (PlanSession.Read(planPath, outside) is not { } document || Entry(document.Plan, request) is not { } entry)
        {
            return ExitCode.BadInput;
        }

        List<AttachedFile> files = [];
        foreach (string path in request.Attach)
        {
            if (AttachedFile.Read(path, out string problem) is not { } file)
            {
                Console.Error.WriteLine(problem);
                return ExitCode.BadInput;
            }

            files.Add(file);
        }

        using RecordStore store = RecordStore.At(place);
        if (StoreOptions.NetworkOf(store, network, document.Plan.Name) is not { } name)
        {
            return ExitCode.BadInput;
        }

        SiteLogEntry written = store.AddLogEntry(name, entry with { Attachments = [.. files.Select(file => file.Attachment)] }, [.. files.Select(file => (ReadOnlyMemory<byte>)file.Content)]);
        Console.Out.WriteLine($"Entry {written.Number} of {UtcTime.Text(written.TimeMicroseconds)} is in the log of network '{name}' in {store.Place}");
        return ExitCode.Fine;
    }

    private static SiteLogEntry? Entry(Plan plan, LogAddRequest request)
    {
        string[] parts = request.Station.Split('/', 2);
        Site? site = plan.Sites.FirstOrDefault(one => string.Equals(one.Key, parts[0], StringComparison.Ordinal));
        string? fitOut = parts.Length > 1 ? parts[1] : null;
        SiteLogKind kind = (SiteLogKind)Kinds.IndexOf(request.Kind);
        long now = UtcTime.Of(TimeProvider.System.GetUtcNow());
        long time = now;
        string problem =
            site is null ? $"'{parts[0]}' is no site of the plan; there are {string.Join(", ", plan.Sites.Select(one => one.Key))}"
            : fitOut is not null && site.FitOuts.All(one => !string.Equals(one.Key, fitOut, StringComparison.Ordinal)) ? $"'{request.Station}' names no fit-out; there are {string.Join(", ", site.FitOuts.Select(one => $"{site.Key}/{one.Key}"))}"
            : kind == SiteLogKind.FitOut && fitOut is null ? $"an entry of kind fit-out names the one that is in use from then on: {string.Join(", ", site.FitOuts.Select(one => $"{site.Key}/{one.Key}"))}"
            : request.Text.Trim().Length == 0 ? "TEXT is empty; say what was done or seen"
            : request.At is not null && !UtcTime.TryParse(request.At, out time) ? $"--at: '{request.At}' is no time with its zone, such as 2026-07-01T12:00Z"
            : time > now ? $"--at: {request.At} is in the future"
            : "";
        if (problem.Length > 0)
        {
            Console.Error.WriteLine(problem);
            return null;
        }

        return new() { TimeMicroseconds = time, Site = site!.Key, Kind = kind, FitOut = fitOut, Text = request.Text.Trim() };
    }
}

/// <summary>What log add is asked for.</summary>
internal sealed record LogAddRequest(string Station, string Text, string Kind, string? At, string[] Attach);
