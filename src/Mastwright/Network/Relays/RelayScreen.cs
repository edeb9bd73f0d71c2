using System.Collections.Immutable;

namespace Mastwright.Network.Relays;

/// <summary>Picks the candidates that are worth a sweep, by what is in sight of them: a rule of thumb that may leave a good one out.</summary>
public static class RelayScreen
{
    private const int PicksAtATime = 12;

    /// <summary>Picks.</summary>
    /// <param name="inSight">Blocks of ground in sight of each candidate, one bit each.</param>
    /// <param name="weights">Weight of each block: what is to be opened there.</param>
    /// <param name="most">Most candidates to keep.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <remarks>
    /// Not simply those with most in sight: those would be neighbours on one ridge. Twelve are picked that see most between them, then twelve of the others, and so on.
    /// </remarks>
    public static ImmutableArray<int> Pick(ulong[][] inSight, double[] weights, int most, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(inSight);
        if (inSight.Length <= most)
        {
            return [.. Enumerable.Range(0, inSight.Length)];
        }

        List<int> left = [.. Enumerable.Range(0, inSight.Length)];
        List<int> picked = [];
        while (picked.Count < most && left.Count > 0)
        {
            RelayNet free = new(1, left.Count, 0, [], Enumerable.Range(0, left.Count).Select(one => (one, 0)), [], throughRelays: false);
            List<int> next = RelayGreedy.Choose(new CoverageObjective(free, [.. left.Select(one => inSight[one])], weights), Math.Min(PicksAtATime, most - picked.Count), out _, cancellation);
            if (next.Count == 0)
            {
                break;
            }

            int[] now = [.. next.Select(one => left[one])];
            picked.AddRange(now);
            left.RemoveAll(one => Array.IndexOf(now, one) >= 0);
        }

        // Those that see nothing wanted come last, in their own order.
        return [.. picked.Concat(left.Take(most - picked.Count)).Order()];
    }
}
