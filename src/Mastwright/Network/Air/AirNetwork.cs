using System.Collections.Immutable;
using Mastwright.Network.Graph;
using Mastwright.Network.Links;

namespace Mastwright.Network.Air;

/// <summary>Who hears whom on the channel, how strongly, and what each sends.</summary>
public sealed class AirNetwork
{
    /// <summary>Margin in dB below which a station neither receives another nor is much disturbed by it: at 6 dB of capture a packet that is just received bears it.</summary>
    public const double LeastMarginDb = -10;

    private readonly int[] starts;
    private readonly int[] hearers;
    private readonly double[] margins;

    /// <summary>A network.</summary>
    /// <param name="traffic">What each station sends.</param>
    /// <param name="ways">From, to and the margin in dB above what is just received; those below <see cref="LeastMarginDb"/> are left out.</param>
    public AirNetwork(ImmutableArray<AirTraffic> traffic, IEnumerable<(int From, int To, double MarginDb)> ways)
    {
        ArgumentNullException.ThrowIfNull(ways);
        Traffic = traffic;
        (int From, int To, double MarginDb)[] kept = [.. ways.Where(way => way.MarginDb >= LeastMarginDb && way.From != way.To).OrderBy(way => way.From).ThenBy(way => way.To)];
        starts = new int[traffic.Length + 1];
        hearers = [.. kept.Select(way => way.To)];
        margins = [.. kept.Select(way => way.MarginDb)];
        foreach ((int from, int _, double _) in kept)
        {
            starts[from + 1]++;
        }

        for (int i = 0; i < traffic.Length; i++)
        {
            starts[i + 1] += starts[i];
        }
    }

    /// <summary>What each station sends of its own.</summary>
    public ImmutableArray<AirTraffic> Traffic { get; }

    /// <summary>Number of stations.</summary>
    public int Count => Traffic.Length;

    /// <summary>The stations that a station's packets get to, or disturb.</summary>
    public ReadOnlySpan<int> HearersOf(int station) => hearers.AsSpan(starts[station], starts[station + 1] - starts[station]);

    /// <summary>The margins in dB of the same.</summary>
    public ReadOnlySpan<double> MarginsOf(int station) => margins.AsSpan(starts[station], starts[station + 1] - starts[station]);

    /// <summary>The network of a matrix at the best guess of every link.</summary>
    public static AirNetwork Of(LinkMatrix matrix, ImmutableArray<AirTraffic> traffic)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        return new(traffic, matrix.Pairs.ToArray().SelectMany(pair => ((int, int, double)[])
        [
            (pair.From, pair.To, pair.Out.MarginDb?.Median ?? double.NegativeInfinity),
            (pair.To, pair.From, pair.Back.MarginDb?.Median ?? double.NegativeInfinity),
        ]));
    }

    /// <summary>The same stations with other traffic.</summary>
    public AirNetwork With(ImmutableArray<AirTraffic> traffic) => new(traffic, Ways());

    /// <summary>Who receives whom without fading and without others on the air.</summary>
    public StationGraph Graph() => new(Count, Ways().Where(way => way.MarginDb >= 0).Select(way => (way.From, way.To)));

    private IEnumerable<(int From, int To, double MarginDb)> Ways() =>
        Enumerable.Range(0, Count).SelectMany(from => HearersOf(from).ToArray().Zip(MarginsOf(from).ToArray(), (to, margin) => (from, to, margin)));
}
