using System.Numerics;

namespace Mastwright.Network.Relays;

/// <summary>What the chosen relays cover between them: cells, points with weights, or groups of stations, each counted once.</summary>
/// <remarks>
/// Where each relay needs a link of its own to the network as it is, this is the cover of sets, which is submodular. Where relays may hang on others it is
/// not: a relay that opens nothing may be what makes another one count.
/// </remarks>
public sealed class CoverageObjective : RelayObjective
{
    private const int BitsAWord = 64;

    private readonly ulong[][] covers;
    private readonly double[]? weights;
    private readonly double each;

    /// <summary>An objective over items.</summary>
    /// <param name="net">Who is linked with whom.</param>
    /// <param name="covers">The items that each candidate covers, one bit an item, lowest bit first; all of one length.</param>
    /// <param name="weights">Weight of each item, zero or more; null where all weigh the same.</param>
    /// <param name="each">That weight.</param>
    /// <exception cref="ArgumentException">There is not one cover for each candidate, or the lengths differ.</exception>
    public CoverageObjective(RelayNet net, ulong[][] covers, double[]? weights, double each = 1)
        : base(net)
    {
        ArgumentNullException.ThrowIfNull(covers);
        if (covers.Length != Net.Candidates || covers.Any(cover => cover.Length != covers[0].Length) || (weights is not null && covers.Length > 0 && weights.Length > BitsAWord * covers[0].Length))
        {
            throw new ArgumentException("There is one cover of the same length for each candidate, and no more weights than items.", nameof(covers));
        }

        this.covers = covers;
        this.weights = weights;
        this.each = each;
    }

    /// <inheritdoc/>
    public override bool IsSubmodular => !Net.ThroughRelays;

    internal override double Work => covers.Length == 0 ? 1 : (covers[0].Length * (weights is null ? 1 : 8.0)) + Net.Candidates;

    /// <summary>Number of words that so many items take.</summary>
    public static int Words(int items) => (items + BitsAWord - 1) / BitsAWord;

    /// <inheritdoc/>
    public override double Value(ReadOnlySpan<int> chosen) => Weigh(Union(chosen));

    /// <summary>The items that the chosen relays which count cover between them.</summary>
    public ulong[] Union(ReadOnlySpan<int> chosen)
    {
        ulong[] union = new ulong[covers.Length == 0 ? 0 : covers[0].Length];
        bool[]? joined = Net.ThroughRelays ? Net.Joined(chosen) : null;
        foreach (int candidate in chosen)
        {
            if (joined?[Net.Stations + candidate] ?? Net.HasParent[candidate])
            {
                ReadOnlySpan<ulong> cover = covers[candidate];
                for (int i = 0; i < union.Length; i++)
                {
                    union[i] |= cover[i];
                }
            }
        }

        return union;
    }

    /// <summary>Weight of some items.</summary>
    public double Weigh(ReadOnlySpan<ulong> items)
    {
        double sum = 0;
        long count = 0;
        for (int i = 0; i < items.Length; i++)
        {
            ulong left = items[i];
            count += BitOperations.PopCount(left);
            while (weights is not null && left != 0)
            {
                sum += weights[(i * BitsAWord) + BitOperations.TrailingZeroCount(left)];
                left &= left - 1;
            }
        }

        return weights is null ? count * each : sum;
    }

    /// <summary>The same with every candidate counting by itself that can count at all: worth at least as much, and the cover of sets.</summary>
    internal override RelayObjective? Relaxed(int relays)
    {
        HashSet<int> within = [.. WithinDepth(relays)];
        RelayNet free = new(1, Net.Candidates, 0, [], within.Select(candidate => (candidate, 0)), [], throughRelays: false);
        return new CoverageObjective(free, covers, weights, each);
    }
}
