using System.CommandLine;
using Mastwright.Cli.Output;
using Mastwright.Evidence;
using Mastwright.Records.Log;
using Mastwright.Records.Store;
using Mastwright.Storage.Files;

namespace Mastwright.Cli.Commands;

/// <summary>log show: the entries in order of time, with what settings changed.</summary>
internal static class LogShowCommand
{
    internal static Command Create()
    {
        Argument<string> plan = Options.Plan();
        Argument<string?> site = new("SITE") { Description = "Only entries of this site.", Arity = ArgumentArity.ZeroOrOne };
        Option<string> store = StoreOptions.Store();
        Option<string?> network = StoreOptions.Network();
        Option<string?> files = new("--files") { Description = "Write what is attached into this folder.", HelpName = "FOLDER" };
        Option<bool> outside = Options.AllowOutside();
        Option<bool> json = Options.Json();
        Command command = new("show", "Show the log, and what changed from settings to settings.") { plan, site, store, network, files, outside, json };
        command.SetAction(parsed => StoreOptions.Guarded(() => Run(
            parsed.GetRequiredValue(plan),
            parsed.GetValue(site),
            new(parsed.GetRequiredValue(store), parsed.GetValue(network), parsed.GetValue(files)),
            parsed.GetValue(outside),
            parsed.GetValue(json))));
        return command;
    }

    private static int Run(string planPath, string? site, LogShowRequest request, bool outside, bool json)
    {
        if (PlanSession.Read(planPath, outside) is not { } document)
        {
            return ExitCode.BadInput;
        }

        if (site is not null && document.Plan.Sites.All(one => !string.Equals(one.Key, site, StringComparison.Ordinal)))
        {
            Console.Error.WriteLine($"'{site}' is no site of the plan; there are {string.Join(", ", document.Plan.Sites.Select(one => one.Key))}");
            return ExitCode.BadInput;
        }

        using RecordStore? store = StoreOptions.There(request.Store);
        if (store is null || StoreOptions.NetworkOf(store, request.Network) is not { } network)
        {
            return ExitCode.BadInput;
        }

        LogEntries log = store.ReadLog(network);
        if (site is not null)
        {
            log = new(log.Of(site));
        }

        if (request.Files is { } folder)
        {
            Write(store, log, folder);
        }

        LogReport report = new(network, log, SettingsHistory.Of(store, log));
        Console.Out.WriteLine(json ? report.Json() : report.Text());
        return ExitCode.Fine;
    }

    /// <summary>Each attachment as ENTRY-PLACE-NAME, so that two of one name do not meet.</summary>
    private static void Write(RecordStore store, LogEntries log, string folder)
    {
        Directory.CreateDirectory(folder);
        foreach (SiteLogEntry entry in log.All)
        {
            foreach ((int place, LogAttachment attachment) in entry.Attachments.Index())
            {
                WholeFile.Write(Path.Combine(folder, LogReport.FileName(entry, place)), store.ReadAttachment(attachment.Sha256) ?? []);
            }
        }
    }
}

/// <summary>What log show is asked for.</summary>
internal sealed record LogShowRequest(string Store, string? Network, string? Files);
