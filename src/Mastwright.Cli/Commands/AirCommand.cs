using System.Collections.Immutable;
using System.CommandLine;
using Mastwright.Cli.Output;
using Mastwright.Findings;
using Mastwright.Network.Air;
using Mastwright.Plans;
using Mastwright.Quantities;

namespace Mastwright.Cli.Commands;

/// <summary>air: whether the shared channel carries what the stations of a plan send and pass on.</summary>
internal static class AirCommand
{
    private const double MostHours = 24 * 366;

    internal static Command Create()
    {
        NetworkOptions network = new();
        Given given = new();
        Command command = new("air", "Simulate the channel that all stations of a plan share.") { network.Plan };
        given.AddTo(command);
        network.AddTo(command);
        command.SetAction((parsed, cancellation) =>
        {
            if (given.Problem(parsed) is { } problem)
            {
                Console.Error.WriteLine(problem);
                return Task.FromResult(ExitCode.BadInput);
            }

            return Task.FromResult(Run(network, given, parsed, cancellation));
        });
        return command;
    }

    private static int Run(NetworkOptions network, Given given, ParseResult parsed, CancellationToken cancellation)
    {
        using NetworkSession? session = network.Open(parsed);
        if (session?.Links(cancellation, (double?)null) is not [{ } links])
        {
            return ExitCode.BadInput;
        }

        Assessment assessment = session.Plan.Assessment;
        (ImmutableArray<AirTraffic> traffic, ImmutableArray<Assumption> ofTraffic) = assessment.AirTrafficOf(session.Stations);
        (AirSettings settings, ImmutableArray<Assumption> ofSettings) = assessment.AirSettingsOf(session.Stations);
        if (given.Traffic(parsed) is { } every)
        {
            traffic = [.. traffic.Select(one => new AirTraffic(every.ReportsAnHour ?? one.ReportsAnHour, every.MessagesAnHour ?? 0))];
            ofTraffic = every.ReportsAnHour is null ? ofTraffic : [];
        }

        using Progress progress = Progress.Start("simulations");
        AirSettings applied = given.Apply(parsed, settings);
        if (applied.LeastDelaySeconds > applied.MostDelaySeconds)
        {
            Console.Error.WriteLine("--least-delay: it is longer than the most (--most-delay, or relaying/most-delay of the plan)");
            return ExitCode.BadInput;
        }

        AirReport report = AirExamination.Of(links, traffic, applied, [.. ofTraffic, .. given.Kept(parsed, ofSettings)], progress, cancellation);
        progress.Stop();
        if (parsed.GetValue(network.Json))
        {
            Console.Out.WriteLine(AirJson.Write(report));
        }
        else
        {
            AirText.Write(report);
        }

        return Options.Code(report.Findings, parsed.GetValue(network.FailOn));
    }

    /// <summary>The options that say how stations send and pass on.</summary>
    private sealed class Given
    {
        private readonly Option<double?> hours = Options.Plain("--hours", "Hours that are simulated (default 24).");
        private readonly Option<double?> reports = Options.Plain("--reports", "Reports an hour of every station (default: the plan's traffic).");
        private readonly Option<double?> messages = Options.Plain("--messages", "Messages an hour of every station at random moments besides (default 0).");
        private readonly Option<int?> limit = Options.Whole("--hop-limit", "Most links from the sender to a receiver (default 3).");
        private readonly Option<string?> delay = new("--delay") { HelpName = "RULE", Description = "How a station waits before passing on: fixed, random or by-level (default random)." };
        private readonly Option<double?> leastDelay = Options.Plain("--least-delay", "Least of that wait in seconds (default 0).");
        private readonly Option<double?> mostDelay = Options.Plain("--most-delay", "Most of that wait in seconds (default 2).");
        private readonly Option<int?> cancel = Options.Whole("--cancel-after", "Copies heard while waiting after which a packet is not passed on (default: never).");
        private readonly Option<double?> share = Options.Plain("--relay-share", "Share of packets, 0 to 1, that a station passes on (default 1).");
        private readonly Option<bool> listen = new("--listen") { Description = "Look for activity on the channel before sending." };
        private readonly Option<double?> backOff = Options.Plain("--back-off", "Most seconds until it looks again (default 1).");
        private readonly Option<double?> duty = Options.Plain("--duty", "Percent of any hour that a station may send (default: by the region's rules).");
        private readonly Option<double?> capture = Options.Plain("--capture", "Decibels above all others from which a packet is received (default: by spreading factor).");
        private readonly Option<int?> seed = Options.Whole("--seed", "What the draws hang on (default 1).");

        internal Given() => delay.AcceptOnlyFromAmong("fixed", "random", "by-level");

        internal void AddTo(Command command)
        {
            foreach (Option option in (Option[])[hours, reports, messages, limit, delay, leastDelay, mostDelay, cancel, share, listen, backOff, duty, capture, seed])
            {
                command.Add(option);
            }
        }

        internal string? Problem(ParseResult parsed)
        {
            foreach ((Option<double?> option, double least, double most) in new[]
            {
                (hours, 1.0 / 60, MostHours), (reports, 0, 36_000), (messages, 0, 36_000), (leastDelay, 0, 3600), (mostDelay, 0, 3600), (share, 0, 1), (backOff, 0.001, 3600), (duty, 0.001, 100), (capture, 0, 60),
            })
            {
                if (parsed.GetValue(option) is { } value && !(value >= least && value <= most))
                {
                    return FormattableString.Invariant($"{option.Name}: {value} is out of range; {least:0.###} to {most:0.###} is possible");
                }
            }

            foreach ((Option<int?> option, int least, int most) in new[] { (limit, 1, 32), (cancel, 1, 200), (seed, 0, int.MaxValue) })
            {
                if (parsed.GetValue(option) is { } value && (value < least || value > most))
                {
                    return FormattableString.Invariant($"{option.Name}: {value} is out of range; {least} to {most} is possible");
                }
            }

            return null;
        }

        internal (double? ReportsAnHour, double? MessagesAnHour)? Traffic(ParseResult parsed) =>
            parsed.GetValue(reports) is null && parsed.GetValue(messages) is null ? null : (parsed.GetValue(reports), parsed.GetValue(messages));

        internal AirSettings Apply(ParseResult parsed, AirSettings settings) => settings with
        {
            DurationSeconds = 3600 * (parsed.GetValue(hours) ?? 24),
            HopLimit = parsed.GetValue(limit) ?? settings.HopLimit,
            Delay = parsed.GetValue(delay) switch
            {
                "fixed" => RelayDelay.Fixed,
                "by-level" => RelayDelay.ByLevel,
                "random" => RelayDelay.Random,
                _ => settings.Delay,
            },
            LeastDelaySeconds = parsed.GetValue(leastDelay) ?? settings.LeastDelaySeconds,
            MostDelaySeconds = parsed.GetValue(mostDelay) ?? settings.MostDelaySeconds,
            CancelAfterCopies = parsed.GetValue(cancel) ?? settings.CancelAfterCopies,
            RelayProbability = parsed.GetValue(share) ?? settings.RelayProbability,
            ListensFirst = parsed.GetValue(listen) || settings.ListensFirst,
            BackOffSeconds = parsed.GetValue(backOff) ?? settings.BackOffSeconds,
            DutyShare = parsed.GetValue(duty) / 100 ?? settings.DutyShare,
            CaptureDb = parsed.GetValue(capture) ?? settings.CaptureDb,
            Seed = (ulong)(parsed.GetValue(seed) ?? 1),
        };

        /// <summary>The assumptions that no option takes the place of.</summary>
        internal IEnumerable<Assumption> Kept(ParseResult parsed, IEnumerable<Assumption> assumptions) =>
            assumptions.Where(one => one.Code switch
            {
                "air-duty" => parsed.GetValue(duty) is null,
                "air-capture" => parsed.GetValue(capture) is null,
                "hop-limit" => parsed.GetValue(limit) is null,
                "air-delay" => parsed.GetValue(delay) is null && parsed.GetValue(mostDelay) is null,
                _ => true,
            });
    }
}
