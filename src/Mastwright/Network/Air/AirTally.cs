using System.Collections.Immutable;

namespace Mastwright.Network.Air;

/// <summary>Counts of a running simulation.</summary>
internal sealed class AirTally(int stations, int hopLimit)
{
    private readonly int[] delivered = new int[stations * stations];
    private readonly double[] delays = new double[stations * stations];
    private readonly (long Count, double Sum, double Most)[] hops = new (long, double, double)[hopLimit];

    internal int[] Made { get; } = new int[stations];

    internal int[] Sent { get; } = new int[stations];

    internal double[] AirSeconds { get; } = new double[stations];

    internal double[] BusySeconds { get; } = new double[stations];

    internal int[] Deferred { get; } = new int[stations];

    internal int[] Stalled { get; } = new int[stations];

    internal double[] StalledSeconds { get; } = new double[stations];

    internal int[] Dropped { get; } = new int[stations];

    internal int[] Cancelled { get; } = new int[stations];

    internal long Strong { get; set; }

    internal long Received { get; set; }

    internal long LostToOverlap { get; set; }

    internal long LostToSending { get; set; }

    internal long Events { get; set; }

    internal void Deliver(int origin, int receiver, int hop, double delaySeconds)
    {
        delivered[(origin * stations) + receiver]++;
        delays[(origin * stations) + receiver] += delaySeconds;
        ref (long Count, double Sum, double Most) at = ref hops[hop - 1];
        at = (at.Count + 1, at.Sum + delaySeconds, Math.Max(at.Most, delaySeconds));
    }

    internal AirResult Result(AirNetwork network, AirSettings settings)
    {
        Graph.StationGraph graph = network.Graph();
        long wanted = 0;
        for (int station = 0; station < stations; station++)
        {
            wanted += (long)Made[station] * (graph.FewestHops(station, settings.HopLimit).Count(hop => hop > 0));
        }

        return new()
        {
            DurationSeconds = settings.DurationSeconds,
            Stations =
            [
                .. Enumerable.Range(0, stations).Select(i => new AirStation(
                    Made[i], Sent[i], AirSeconds[i], BusySeconds[i], Deferred[i], Stalled[i], StalledSeconds[i], Dropped[i], Cancelled[i])),
            ],
            Hops = [.. hops.Select(hop => new AirHop(hop.Count, hop.Count == 0 ? 0 : hop.Sum / hop.Count, hop.Most))],
            Delivered = ImmutableArray.Create(delivered),
            DelaySeconds = ImmutableArray.Create(delays),
            Wanted = wanted,
            Strong = Strong,
            Received = Received,
            LostToOverlap = LostToOverlap,
            LostToSending = LostToSending,
            Events = Events,
        };
    }
}
