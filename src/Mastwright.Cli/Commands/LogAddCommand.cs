using System.CommandLine;
using Mastwright.Evidence;
using Mastwright.Records;
using Mastwright.Records.Log;
using Mastwright.Records.Store;

namespace Mastwright.Cli.Commands;

/// <summary>log add: one dated entry, with what is attached to it.</summary>
internal static class LogAddCommand
{
    internal static Command Create()
    {
        Argument<string> plan = Options.Plan();
        Argument<string> station = new("SITE") { Description = "A site, or one of its fit-outs as SITE/FIT-OUT." };
        Argument<string> text = new("TEXT") { Description = "What was done or seen." };
        Option<string> kind = new("--kind") { Description = "fit-out, firmware, settings, fault or weather.", HelpName = "KIND", Required = true };
        kind.AcceptOnlyFromAmong([.. SiteLogKinds.Words]);
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
        if (PlanSession.Read(planPath, outside) is not { } document)
        {
            return ExitCode.BadInput;
        }

        if (LogEntryText.Read(document.Plan, request.Station, request.Kind, request.Text, request.At, UtcTime.Of(TimeProvider.System.GetUtcNow()), out string wrong) is not { } entry)
        {
            Console.Error.WriteLine(wrong);
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
}

/// <summary>What log add is asked for.</summary>
internal sealed record LogAddRequest(string Station, string Text, string Kind, string? At, string[] Attach);
