using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Network.Air;

namespace Mastwright.Plans;

/// <summary>Simulates the channel of a plan's stations, with more and more traffic, and with other rules where it collapses.</summary>
public static class AirExamination
{
    /// <summary>Share of the wanted deliveries below which a channel counts as collapsed. Our convention.</summary>
    public const double CollapseShare = 0.5;

    private const double MostFactor = 1024;

    /// <summary>What more and more traffic does shows in a few hours as well as in a day.</summary>
    private const double GrowthSeconds = 4 * 3600;

    /// <summary>Works it out.</summary>
    /// <param name="links">The links; each at its best guess.</param>
    /// <param name="traffic">What each station sends.</param>
    /// <param name="settings">What the simulation is run with.</param>
    /// <param name="assumptions">What was assumed for them.</param>
    /// <param name="progress">Told the number of simulations done so far; null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static AirReport Of(
        MatrixReport links,
        ImmutableArray<AirTraffic> traffic,
        AirSettings settings,
        ImmutableArray<Assumption> assumptions,
        IProgress<int>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(links);
        ArgumentNullException.ThrowIfNull(settings);
        AirNetwork network = AirNetwork.Of(links.Matrix, traffic);
        int done = 0;
        AirResult Run(AirNetwork stations, AirSettings with)
        {
            AirResult result = AirSimulation.Run(stations, with, cancellation);
            progress?.Report(Interlocked.Increment(ref done));
            return result;
        }

        AirResult day = Run(network, settings);
        AirSettings shorter = settings with { DurationSeconds = Math.Min(settings.DurationSeconds, GrowthSeconds) };
        List<AirGrowth> growth = [];
        for (double factor = 1; factor <= MostFactor && day.Wanted > 0; factor *= 2)
        {
            AirResult result = factor == 1 ? day : Run(network.With(Times(traffic, factor)), shorter);
            growth.Add(new(factor, result.DeliveredShare, MostBusy(result)));
            if (result.DeliveredShare < CollapseShare)
            {
                break;
            }
        }

        bool collapses = growth.Count > 0 && growth[^1].DeliveredShare < CollapseShare;
        AirReport report = new()
        {
            Links = links,
            Settings = settings,
            Traffic = traffic,
            Result = day,
            Growth = [.. growth],
            Remedies = collapses ? Remedies(network.With(Times(traffic, growth[^1].Factor)), shorter, Run) : [],
            Ledgers = AirLedgers.Of(links.Matrix, settings, day),
            Assumptions = [.. assumptions, .. links.Assumptions],
        };
        return report with { Findings = [.. links.Findings.Where(finding => finding.Code is not ("station-alone" or "link-one-way")), .. AirFindings.Of(report)] };
    }

    /// <summary>Share of time that the channel is busy where it is busiest.</summary>
    internal static double MostBusy(AirResult result) => result.Stations.IsEmpty ? 0 : result.Stations.Max(station => station.BusySeconds) / result.DurationSeconds;

    private static ImmutableArray<AirTraffic> Times(ImmutableArray<AirTraffic> traffic, double factor) => [.. traffic.Select(one => one.Times(factor))];

    private static ImmutableArray<AirRemedy> Remedies(AirNetwork network, AirSettings settings, Func<AirNetwork, AirSettings, AirResult> run)
    {
        double longer = 4 * Math.Max(settings.MostDelaySeconds, settings.AirtimeSeconds);
        (string Code, string Text, AirSettings Settings)[] tries =
        [
            ("listen-first", "looking for activity before sending", settings with { ListensFirst = true }),
            ("cancel-copies", "not passing on what was heard again while waiting", settings with { CancelAfterCopies = 1 }),
            ("longer-delay", string.Create(CultureInfo.InvariantCulture, $"random waits of up to {longer:0.#} s before passing on"), settings with { Delay = RelayDelay.Random, MostDelaySeconds = longer }),
            ("by-level", "waits by level, so that far stations pass on first", settings with { Delay = RelayDelay.ByLevel, CancelAfterCopies = Math.Max(1, settings.CancelAfterCopies) }),
            ("half-packets", "packets half as long on the air", settings with { AirtimeSeconds = settings.AirtimeSeconds / 2, PreambleSeconds = settings.PreambleSeconds / 2 }),
            .. settings.HopLimit > 1 ? [("fewer-hops", "a hop less", settings with { HopLimit = settings.HopLimit - 1 })] : Array.Empty<(string, string, AirSettings)>(),
        ];
        double wanted = run(network, settings).Wanted;
        return
        [
            .. tries.Select(one => new AirRemedy(one.Code, one.Text, wanted == 0 ? 0 : run(network, one.Settings).Hops.Sum(hop => hop.Count) / wanted))
                .OrderByDescending(one => one.DeliveredShare),
        ];
    }
}
