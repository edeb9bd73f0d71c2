using System.Collections.Immutable;
using Mastwright.Geodesy;

namespace Mastwright.Network.Links;

/// <summary>A station as a matrix sees it.</summary>
/// <param name="Key">Key in the plan.</param>
/// <param name="Subject">Key, and for a site the key of its fit-out.</param>
/// <param name="Name">Name to speak of it by.</param>
/// <param name="Place">Where it is.</param>
/// <param name="IsSite">Whether it is a site of the plan, else a neighbour.</param>
public sealed record MatrixStation(string Key, string Subject, string Name, GeoPoint Place, bool IsSite);

/// <summary>Every pair of some stations, both directions.</summary>
public sealed class LinkMatrix
{
    private readonly LinkPair[] pairs;

    /// <summary>A matrix of pairs in the order of <see cref="IndexOf"/>.</summary>
    /// <param name="stations">The stations.</param>
    /// <param name="pairs">One for each two of them: (0,1), (0,2), … (1,2), …</param>
    /// <exception cref="ArgumentException">There is not one pair for each two stations.</exception>
    public LinkMatrix(ImmutableArray<MatrixStation> stations, IEnumerable<LinkPair> pairs)
    {
        Stations = stations;
        this.pairs = [.. pairs];
        if (this.pairs.Length != PairCount(stations.Length))
        {
            throw new ArgumentException($"{stations.Length} stations make {PairCount(stations.Length)} pairs.", nameof(pairs));
        }
    }

    /// <summary>The stations.</summary>
    public ImmutableArray<MatrixStation> Stations { get; }

    /// <summary>The pairs: the first station's, then the second's with those after it, and so on.</summary>
    public ReadOnlySpan<LinkPair> Pairs => pairs;

    /// <summary>Number of pairs of some stations.</summary>
    public static int PairCount(int stations) => stations * (stations - 1) / 2;

    /// <summary>Place of the pair of two stations, the first index the smaller, among the pairs of so many stations.</summary>
    public static int IndexOf(int from, int to, int stations) => (from * ((2 * stations) - from - 1) / 2) + to - from - 1;

    /// <summary>The stations of the pair at a place among the pairs of so many stations.</summary>
    public static (int From, int To) StationsOf(int index, int stations)
    {
        // Row i begins at i(2n − i − 1)/2; the root is put right by at most one step.
        double twice = (2.0 * stations) - 1;
        int from = (int)((twice - Math.Sqrt((twice * twice) - (8.0 * index))) / 2);
        while (from > 0 && IndexOf(from, from + 1, stations) > index)
        {
            from--;
        }

        while (IndexOf(from + 1, from + 2, stations) <= index)
        {
            from++;
        }

        return (from, index - IndexOf(from, from + 1, stations) + from + 1);
    }

    /// <summary>The pair of two different stations, whichever comes first.</summary>
    public LinkPair Pair(int one, int other) => pairs[IndexOf(Math.Min(one, other), Math.Max(one, other), Stations.Length)];

    /// <summary>The direction from one station to another.</summary>
    public LinkOneWay Way(int from, int to)
    {
        LinkPair pair = Pair(from, to);
        return from < to ? pair.Out : pair.Back;
    }
}
