using System.Collections.Immutable;
using System.CommandLine;
using Mastwright.Cli.Output;
using Mastwright.Findings;
using Mastwright.Network.Hops;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Network;
using Mastwright.Plans;

namespace Mastwright.Cli.Commands;

/// <summary>hops: how the other stations are reached from one of them, over relays.</summary>
internal static class HopsCommand
{
    private const int MostHops = 32;
    private const int MostWorlds = 1_000_000;
    private const int MostPackets = 10_000;

    internal static Command Create()
    {
        NetworkOptions network = new();
        Argument<string> from = new("FROM") { Description = "The station that sends: KEY, or SITE/FIT-OUT." };
        Option<int?> limit = Options.Whole("--hop-limit", "Most links from the sender to a receiver (default 3).");
        Option<int?> worlds = Options.Whole("--worlds", "Number of worlds that are tried (default 1000).");
        Option<int?> packets = Options.Whole("--packets", "Packets flooded in each world (default 20).");
        Option<int?> seed = Options.Whole("--seed", "What the draws hang on (default 1).");
        Option<string?> picture = new("--picture") { HelpName = "FILE", Description = "Draw the most probable routes into this file (.svg or .png)." };
        Option<bool> dark = new("--dark") { Description = "Draw them light on dark." };
        Command command = new("hops", "Tell how the other stations are reached from one, over relays.") { network.Plan, from, limit, worlds, packets, seed, picture, dark };
        network.AddTo(command);
        command.SetAction((parsed, cancellation) =>
        {
            (int limit, int worlds, int packets, int seed) given = (parsed.GetValue(limit) ?? 3, parsed.GetValue(worlds) ?? 1000, parsed.GetValue(packets) ?? 20, parsed.GetValue(seed) ?? 1);
            PictureFile? file = PictureFile.Of(parsed.GetValue(picture), parsed.GetValue(dark));
            string? problem = file?.Problem ?? given switch
            {
                ( < 1 or > MostHops, _, _, _) => $"--hop-limit: {given.limit} is out of range; 1 to {MostHops} are possible",
                (_, < 1 or > MostWorlds, _, _) => $"--worlds: {given.worlds} is out of range; 1 to {MostWorlds} are possible",
                (_, _, < 1 or > MostPackets, _) => $"--packets: {given.packets} is out of range; 1 to {MostPackets} are possible",
                (_, _, _, < 0) => $"--seed: {given.seed} is less than nothing",
                _ => null,
            };
            if (problem is not null)
            {
                Console.Error.WriteLine(problem);
                return Task.FromResult(ExitCode.BadInput);
            }

            HopSettings settings = new() { HopLimit = given.limit, Worlds = given.worlds, Packets = given.packets, Seed = (ulong)given.seed };
            ImmutableArray<Assumption> assumed = parsed.GetValue(limit) is null ? [HopExamination.LimitAssumed("--hop-limit")] : [];
            return Task.FromResult(Run(network, parsed, parsed.GetRequiredValue(from), settings, assumed, file, cancellation));
        });
        return command;
    }

    private static int Run(NetworkOptions network, ParseResult parsed, string name, HopSettings settings, ImmutableArray<Assumption> assumed, PictureFile? picture, CancellationToken cancellation)
    {
        using NetworkSession? session = network.Open(parsed);
        if (session is null || StationChoice.Find(session.Plan.Plan, name) is not { } sender)
        {
            return ExitCode.BadInput;
        }

        NetworkSession with = session.With(sender);
        if (with.Links(cancellation, [.. HopExamination.TimePercents(session.Plan.Assessment.Settings.TimePercent)]) is not { } links)
        {
            return ExitCode.BadInput;
        }

        using Progress progress = Progress.Start("worlds");
        HopReport report = HopExamination.Of(links, sender.Key, settings, progress, cancellation);
        progress.Stop();
        report = report with { Assumptions = [.. assumed, .. report.Assumptions] };
        if (picture is not null && !picture.Write(HopsPicture.Draw(report, picture.IsDark ? Theme.Dark : Theme.Light)))
        {
            return ExitCode.BadInput;
        }

        if (parsed.GetValue(network.Json))
        {
            Console.Out.WriteLine(HopsJson.Write(report));
        }
        else
        {
            HopsText.Write(report, picture?.Path);
        }

        return Options.Code(report.Findings, parsed.GetValue(network.FailOn));
    }
}
