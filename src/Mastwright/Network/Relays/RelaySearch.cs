using System.Collections.Immutable;

namespace Mastwright.Network.Relays;

/// <summary>Chooses relays: greedily with lazy evaluation, then by exchanging one for another; all choices are tried where they are few.</summary>
/// <remarks>
/// Lazy evaluation: M. Minoux, "Accelerated greedy algorithms for maximizing submodular set functions", Optimization Techniques, Lecture Notes in Control and
/// Information Sciences 7, 1978. Where the objective is not submodular, every gain is worked out anew, and a relay may come with those that it hangs on.
/// The same choice whatever the number of threads: of equals the one with the smaller number.
/// </remarks>
public static class RelaySearch
{
    /// <summary>Work, in words of memory, up to which all choices are tried: some seconds.</summary>
    private const double MostWork = 4e9;

    private const int MostRounds = 50;

    /// <summary>Gains that differ by less than this share are alike: sums of weights are not exact.</summary>
    private const double Alike = 1e-12;

    /// <summary>Chooses.</summary>
    /// <param name="objective">What for.</param>
    /// <param name="relays">Most relays, 1 or more.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static RelayChoice Find(RelayObjective objective, int relays, CancellationToken cancellation = default) => Find(objective, relays, MostWork, cancellation);

    /// <summary>Chooses, with all choices tried up to so much work.</summary>
    internal static RelayChoice Find(RelayObjective objective, int relays, double mostWork, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(objective);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(relays);
        List<int> chosen = RelayGreedy.Choose(objective, relays, out double bound, cancellation);
        double greedy = objective.Value([.. chosen]);
        int exchanges = Exchange(objective, chosen, cancellation);
        RelayBound kind = objective.IsSubmodular ? RelayBound.Gains : RelayBound.Relaxation;
        int[] possible = objective.WithinDepth(relays);
        if (Choices(possible.Length, relays) * objective.Work * relays <= mostWork)
        {
            double before = objective.Value([.. chosen]);
            (ImmutableArray<int> best, double most) = Best(objective, possible, relays, cancellation);
            chosen = More(most, before) ? [.. best] : chosen;
            kind = RelayBound.Exact;
        }

        Drop(objective, chosen);
        double value = objective.Value([.. chosen]);
        bound = kind == RelayBound.Exact ? value : Math.Max(value, Math.Min(bound, Math.Min(objective.Most(relays), RelaxedBound(objective, relays, cancellation))));
        (ImmutableArray<int> order, ImmutableArray<double> gains) = InOrder(objective, chosen);
        return new(order, gains, value, bound, kind, greedy, exchanges);
    }

    /// <summary>The best of all choices of at most so many relays; of equals the first one.</summary>
    /// <param name="objective">What for.</param>
    /// <param name="candidates">The candidates to choose from.</param>
    /// <param name="relays">Most relays.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static (ImmutableArray<int> Chosen, double Value) Best(RelayObjective objective, IReadOnlyList<int> candidates, int relays, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(objective);
        ArgumentNullException.ThrowIfNull(candidates);
        int size = Math.Min(relays, candidates.Count);
        int[] at = [.. Enumerable.Range(0, size)];
        int[] trial = new int[size];
        ImmutableArray<int> best = [];
        double most = 0;
        while (size > 0)
        {
            cancellation.ThrowIfCancellationRequested();
            for (int i = 0; i < size; i++)
            {
                trial[i] = candidates[at[i]];
            }

            // More relays never make it less, so that only choices of the full size count.
            if (objective.Value(trial) is double value && More(value, most))
            {
                (best, most) = ([.. trial], value);
            }

            int last = size - 1;
            while (last >= 0 && at[last] == candidates.Count - size + last)
            {
                last--;
            }

            if (last < 0)
            {
                break;
            }

            at[last]++;
            for (int i = last + 1; i < size; i++)
            {
                at[i] = at[i - 1] + 1;
            }
        }

        return (best, most);
    }

    internal static bool More(double one, double other) => one > other + (Alike * Math.Max(Math.Abs(one), Math.Abs(other)));

    private static double Choices(int candidates, int relays)
    {
        double choices = 1;
        for (int i = 0; i < Math.Min(relays, candidates); i++)
        {
            choices *= (candidates - i) / (i + 1.0);
        }

        return choices;
    }

    private static double RelaxedBound(RelayObjective objective, int relays, CancellationToken cancellation)
    {
        if (objective.IsSubmodular || objective.Relaxed(relays) is not { } easier)
        {
            return double.PositiveInfinity;
        }

        RelayGreedy.Choose(easier, relays, out double bound, cancellation);
        return bound;
    }

    /// <summary>Exchanges one relay at a time for the one that helps most, until none helps.</summary>
    private static int Exchange(RelayObjective objective, List<int> chosen, CancellationToken cancellation)
    {
        double value = objective.Value([.. chosen]);
        for (int round = 0; round < MostRounds; round++)
        {
            (int Place, int Candidate, double Value) best = (-1, -1, value);
            for (int place = 0; place < chosen.Count; place++)
            {
                int[] trial = [.. chosen];
                for (int candidate = 0; candidate < objective.Net.Candidates; candidate++)
                {
                    cancellation.ThrowIfCancellationRequested();
                    if (chosen.Contains(candidate))
                    {
                        continue;
                    }

                    trial[place] = candidate;
                    double tried = objective.Value(trial);
                    best = More(tried, best.Value) ? (place, candidate, tried) : best;
                }
            }

            if (best.Place < 0)
            {
                return round;
            }

            chosen[best.Place] = best.Candidate;
            value = best.Value;
        }

        return MostRounds;
    }

    /// <summary>Leaves out relays without which the choice is worth as much.</summary>
    private static void Drop(RelayObjective objective, List<int> chosen)
    {
        for (int i = chosen.Count - 1; i >= 0; i--)
        {
            int[] without = [.. chosen.Where((_, at) => at != i)];
            if (!More(objective.Value([.. chosen]), objective.Value(without)))
            {
                chosen.RemoveAt(i);
            }
        }
    }

    /// <summary>The relay that adds most first; of those that add nothing yet, one that counts.</summary>
    private static (ImmutableArray<int> Order, ImmutableArray<double> Gains) InOrder(RelayObjective objective, List<int> chosen)
    {
        List<int> left = [.. chosen.Order()];
        List<int> order = [];
        List<double> gains = [];
        double value = 0;
        while (left.Count > 0)
        {
            (int next, double with, bool counts) = left
                .Select(one => (one, objective.Value([.. order, one]), objective.Net.Joined([.. order, one])[objective.Net.Stations + one]))
                .OrderByDescending(one => one.Item3).ThenByDescending(one => one.Item2).First();
            order.Add(next);
            left.Remove(next);
            gains.Add(counts ? with - value : 0);
            value = with;
        }

        return ([.. order], [.. gains]);
    }
}
