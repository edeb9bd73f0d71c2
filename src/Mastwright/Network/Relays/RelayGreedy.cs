namespace Mastwright.Network.Relays;

/// <summary>The greedy choice, and what its gains say of the best one.</summary>
internal static class RelayGreedy
{
    /// <summary>Chooses.</summary>
    /// <param name="objective">What for.</param>
    /// <param name="relays">Most relays.</param>
    /// <param name="bound">What no choice is worth more than; infinite where the objective is not submodular.</param>
    /// <param name="cancellation">Stops the work.</param>
    internal static List<int> Choose(RelayObjective objective, int relays, out double bound, CancellationToken cancellation)
    {
        bound = double.PositiveInfinity;
        return objective.IsSubmodular ? Lazily(objective, relays, out bound, cancellation) : Step(objective, relays, cancellation);
    }

    /// <summary>A gain can only have fallen since it was worked out: one that is still the largest when it is worked out anew is the largest.</summary>
    private static List<int> Lazily(RelayObjective objective, int relays, out double bound, CancellationToken cancellation)
    {
        PriorityQueue<(int Candidate, int Round), (double Less, int Candidate)> queue = new();
        double[] singles = new double[objective.Net.Candidates];
        Parallel.For(0, singles.Length, new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = Environment.ProcessorCount }, candidate => singles[candidate] = objective.Value([candidate]));
        for (int candidate = 0; candidate < singles.Length; candidate++)
        {
            queue.Enqueue((candidate, 0), (-singles[candidate], candidate));
        }

        bound = Largest(singles, relays);
        List<int> chosen = [];
        double value = 0;
        while (chosen.Count < relays && queue.TryDequeue(out (int Candidate, int Round) next, out (double Less, int) gain))
        {
            cancellation.ThrowIfCancellationRequested();
            if (next.Round < chosen.Count)
            {
                queue.Enqueue((next.Candidate, chosen.Count), (value - objective.Value([.. chosen, next.Candidate]), next.Candidate));
                continue;
            }

            if (-gain.Less <= 0)
            {
                break;
            }

            chosen.Add(next.Candidate);
            value = objective.Value([.. chosen]);
        }

        // f(best) ≤ f(A) + the largest gains over A, for any A; here for the whole choice, with every gain worked out anew.
        int[] now = [.. chosen];
        double whole = value;
        double[] left = new double[singles.Length];
        Parallel.For(0, left.Length, candidate => left[candidate] = Array.IndexOf(now, candidate) >= 0 ? 0 : objective.Value([.. now, candidate]) - whole);
        bound = Math.Min(bound, value + Largest(left, relays));
        return chosen;
    }

    /// <summary>The candidate with the largest gain for each relay that it takes, with those that it hangs on.</summary>
    private static List<int> Step(RelayObjective objective, int relays, CancellationToken cancellation)
    {
        List<int> chosen = [];
        double value = 0;
        while (chosen.Count < relays)
        {
            int[] now = [.. chosen];
            int[] depths = objective.Net.Depths(now, out int[] before);
            double[] gains = new double[depths.Length];
            Parallel.For(0, gains.Length, new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = Environment.ProcessorCount }, candidate =>
            {
                bool fits = depths[candidate] > 0 && now.Length + depths[candidate] <= relays && Array.IndexOf(now, candidate) < 0;
                gains[candidate] = fits ? (objective.Value([.. now, .. With(candidate, before)]) - value) / depths[candidate] : double.NegativeInfinity;
            });
            int best = -1;
            for (int candidate = 0; candidate < gains.Length; candidate++)
            {
                best = gains[candidate] > 0 && (best < 0 || RelaySearch.More(gains[candidate], gains[best])) ? candidate : best;
            }

            if (best < 0)
            {
                break;
            }

            chosen.AddRange(With(best, before));
            value = objective.Value([.. chosen]);
        }

        return chosen;
    }

    /// <summary>A candidate after those that it hangs on.</summary>
    private static IEnumerable<int> With(int candidate, int[] before)
    {
        Stack<int> way = new();
        for (int at = candidate; at >= 0; at = before[at])
        {
            way.Push(at);
        }

        return way;
    }

    private static double Largest(double[] gains, int count) => gains.OrderDescending().Take(count).Where(gain => gain > 0).Sum();
}
