using System.Collections.Immutable;

namespace Mastwright.Storage.Plans;

/// <summary>The known key that somebody most likely meant.</summary>
internal static class KeySuggestion
{
    /// <summary>The nearest of some words by edits; null when none is near.</summary>
    internal static string? Nearest(string found, IEnumerable<string> words)
    {
        if (found.Length > 2 * PlanLimits.KeyLength)
        {
            return null;
        }

        string folded = found.ToLowerInvariant().Replace('_', '-').Replace(' ', '-');
        string? nearest = null;
        int least = Math.Max(2, folded.Length / 3) + 1;
        foreach (string word in words)
        {
            int edits = Edits(folded, word);
            if (edits < least && edits < word.Length)
            {
                least = edits;
                nearest = word;
            }
        }

        return nearest;
    }

    /// <summary>The mappings of the format that know a key of this name.</summary>
    internal static ImmutableArray<string> Holders(string found) =>
        [.. ShapeWalk.Mappings(PlanKeys.Shape).Where(shape => shape.IndexOf(found) >= 0).Select(shape => shape.Name).Distinct()];

    /// <summary>
    /// Fewest single-character insertions, removals, replacements and swaps of neighbours that turn one word into another
    /// (the optimal-string-alignment distance).
    /// </summary>
    internal static int Edits(string from, string to)
    {
        int[] beforeLast = new int[to.Length + 1];
        int[] last = new int[to.Length + 1];
        int[] row = new int[to.Length + 1];
        for (int j = 0; j <= to.Length; j++)
        {
            last[j] = j;
        }

        for (int i = 1; i <= from.Length; i++)
        {
            row[0] = i;
            for (int j = 1; j <= to.Length; j++)
            {
                int replace = last[j - 1] + (from[i - 1] == to[j - 1] ? 0 : 1);
                row[j] = Math.Min(replace, Math.Min(last[j], row[j - 1]) + 1);
                if (i > 1 && j > 1 && from[i - 1] == to[j - 2] && from[i - 2] == to[j - 1])
                {
                    row[j] = Math.Min(row[j], beforeLast[j - 2] + 1);
                }
            }

            (beforeLast, last, row) = (last, row, beforeLast);
        }

        return last[to.Length];
    }
}
