using System.CommandLine;
using Mastwright.Records;
using Mastwright.Records.Store;

namespace Mastwright.Cli.Commands;

/// <summary>records compact: old records become hours, only when that is confirmed.</summary>
internal static class RecordsCompactCommand
{
    internal static Command Create()
    {
        Option<string> store = StoreOptions.Store();
        Option<string> before = new("--before") { Description = "Records before this time, with its zone: 2026-01-01T00:00Z.", HelpName = "TIME", Required = true };
        Option<string?> network = StoreOptions.Network();
        Option<bool> yes = new("--yes") { Description = "Do it; without this it is only told what would be done." };
        Command command = new("compact", "Turn old records into one line an hour; told first, done with --yes.") { store, before, network, yes };
        command.SetAction((parsed, cancellation) => Task.FromResult(StoreOptions.Guarded(() => Run(
            parsed.GetRequiredValue(store), parsed.GetRequiredValue(before), parsed.GetValue(network), parsed.GetValue(yes), cancellation))));
        return command;
    }

    private static int Run(string place, string text, string? asked, bool yes, CancellationToken cancellation)
    {
        if (!UtcTime.TryParse(text, out long before))
        {
            Console.Error.WriteLine($"--before: '{text}' is no time with its zone, such as 2026-01-01T00:00Z");
            return ExitCode.BadInput;
        }

        using RecordStore? store = StoreOptions.There(place);
        if (store is null || StoreOptions.NetworkOf(store, asked) is not { } network)
        {
            return ExitCode.BadInput;
        }

        long records = store.CountBefore(network, before);
        string kept = "Kept for each hour and each receiver, originator, last sender, frequency, bandwidth, spreading factor and number of hops: how many records, the first and last time,"
            + " the means of level, ratio and signal power, the least and the greatest level.";
        if (!yes)
        {
            Console.Out.WriteLine($"{records} records of network '{network}' before {UtcTime.Text(before)} would become hours. {kept}");
            Console.Out.WriteLine("Gone for good: each record's own time, level and packet number, and its other fields. No proof can use these records any more.");
            Console.Out.WriteLine("Nothing is changed. To keep them elsewhere: 'records export'; to go on: --yes.");
            return ExitCode.Fine;
        }

        long done = 0;
        using (Progress progress = Progress.Start("records"))
        {
            while (store.Compact(network, before) is > 0 and int piece)
            {
                done += piece;
                ((IProgress<int>)progress).Report((int)Math.Min(done, int.MaxValue));
                cancellation.ThrowIfCancellationRequested();
            }
        }

        Console.Out.WriteLine($"{done} records of network '{network}' before {UtcTime.Text(before)} have become hours. {kept}");
        return ExitCode.Fine;
    }
}
