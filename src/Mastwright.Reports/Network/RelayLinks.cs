using System.Collections.Immutable;
using Mastwright.Network.Links;
using Mastwright.Network.Relays;
using Mastwright.Plans;

namespace Mastwright.Reports.Network;

/// <summary>The links of candidates with stations and with one another that keep the wanted margin both ways.</summary>
internal sealed class RelayLinks
{
    private readonly Assessment assessment;
    private readonly PathMemory memory;
    private readonly IProgress<RelayProgress>? progress;
    private readonly double wantedDb;
    private readonly ImmutableArray<LinkStation> stations;

    internal RelayLinks(Assessment assessment, MatrixReport matrix, ImmutableArray<LinkStation> stations, int home, PathMemory memory, IProgress<RelayProgress>? progress)
    {
        this.assessment = assessment;
        this.memory = memory;
        this.progress = progress;
        this.stations = stations;
        wantedDb = matrix.Settings.Wanted.MarginDb;
        Home = home;
        BetweenStations = [.. matrix.Matrix.Pairs.ToArray().Where(Keeps).Select(pair => (pair.From, pair.To))];
        IsJoined = new RelayNet(stations.Length, 0, home, BetweenStations, [], [], throughRelays: false).IsJoined;
    }

    /// <summary>Place of the home station.</summary>
    internal int Home { get; }

    /// <summary>Links between stations.</summary>
    internal ImmutableArray<(int One, int Other)> BetweenStations { get; }

    /// <summary>Whether each station is in the network as it is.</summary>
    internal ImmutableArray<bool> IsJoined { get; }

    /// <summary>Least margin both ways of each link of a relay with a station that keeps what is wanted, in dB, by relay and station.</summary>
    /// <param name="relays">The relays.</param>
    /// <param name="withAll">Whether with all stations, else with those of the network alone.</param>
    /// <param name="cancellation">Stops the work.</param>
    internal Dictionary<(int Relay, int Station), double> WithStations(ImmutableArray<LinkStation> relays, bool withAll, CancellationToken cancellation)
    {
        (int From, int To)[] wanted =
        [
            .. Enumerable.Range(0, relays.Length).SelectMany(relay => Enumerable.Range(0, stations.Length)
                .Where(station => (withAll || IsJoined[station]) && stations[station].Subject != relays[relay].Subject)
                .Select(station => (stations.Length + relay, station))),
        ];
        return Worked([.. stations, .. relays], wanted, "links of candidates", cancellation).ToDictionary(pair => (pair.From - stations.Length, pair.To), pair => pair.LeastMarginDb!.Value);
    }

    /// <summary>The same between relays.</summary>
    internal Dictionary<(int One, int Other), double> BetweenRelays(ImmutableArray<LinkStation> relays, CancellationToken cancellation)
    {
        (int From, int To)[] wanted = [.. Enumerable.Range(0, relays.Length).SelectMany(one => Enumerable.Range(one + 1, relays.Length - one - 1).Select(other => (one, other)))];
        return Worked(relays, wanted, "links between candidates", cancellation).ToDictionary(pair => (pair.From, pair.To), pair => pair.LeastMarginDb!.Value);
    }

    /// <summary>The net of these links.</summary>
    internal RelayNet Net(int relays, IEnumerable<(int Relay, int Station)> own, IEnumerable<(int One, int Other)> chain, bool throughRelays) =>
        new(stations.Length, relays, Home, BetweenStations, own, chain, throughRelays);

    private IEnumerable<LinkPair> Worked(ImmutableArray<LinkStation> all, (int From, int To)[] wanted, string step, CancellationToken cancellation) =>
        assessment.Pairs(all, wanted, memory, progress is null ? null : new Step(progress, step), cancellation).Where(Keeps);

    private bool Keeps(LinkPair pair) => pair.LeastMarginDb >= wantedDb;

    /// <summary>Tells the number done as progress of a step.</summary>
    internal sealed class Step(IProgress<RelayProgress> to, string step) : IProgress<int>
    {
        public void Report(int value) => to.Report(new(step, value));
    }
}
