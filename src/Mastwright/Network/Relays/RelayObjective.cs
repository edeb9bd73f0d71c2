namespace Mastwright.Network.Relays;

/// <summary>What relays are chosen for. More relays never make it less.</summary>
public abstract class RelayObjective
{
    /// <summary>An objective over a net.</summary>
    protected RelayObjective(RelayNet net)
    {
        ArgumentNullException.ThrowIfNull(net);
        Net = net;
    }

    /// <summary>Who is linked with whom.</summary>
    public RelayNet Net { get; }

    /// <summary>
    /// Whether a relay never adds more to a larger choice than to a smaller one: then the greedy choice comes to at least 1 − 1/e of the best, and the
    /// gains that are left bound the best (Nemhauser, Wolsey, Fisher, "An analysis of approximations for maximizing submodular set functions I",
    /// Mathematical Programming 14, 1978).
    /// </summary>
    public abstract bool IsSubmodular { get; }

    /// <summary>What some relays are worth together: zero or more, and never less than a part of them is.</summary>
    public abstract double Value(ReadOnlySpan<int> chosen);

    /// <summary>
    /// An objective over the same candidates that is worth at least as much for every choice of so many relays, and submodular; null where none is known.
    /// </summary>
    /// <param name="relays">Most relays.</param>
    internal virtual RelayObjective? Relaxed(int relays) => null;

    /// <summary>What no choice of so many relays is worth more than, whatever it is; infinite where nothing is known.</summary>
    /// <param name="relays">Most relays.</param>
    internal virtual double Most(int relays) => Value(WithinDepth(relays));

    /// <summary>Work of one <see cref="Value"/> in words of memory, for telling whether all choices can be tried.</summary>
    internal abstract double Work { get; }

    /// <summary>Candidates that can count at all with so many relays.</summary>
    internal int[] WithinDepth(int relays)
    {
        int[] depths = Net.Depths([], out _);
        return [.. Enumerable.Range(0, Net.Candidates).Where(one => depths[one] >= 0 && depths[one] <= relays)];
    }
}
