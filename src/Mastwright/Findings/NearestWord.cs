namespace Mastwright.Findings;

/// <summary>The known word that somebody most likely meant.</summary>
public static class NearestWord
{
    /// <summary>Longer texts are no slips of the pen.</summary>
    private const int LongestFound = 128;

    /// <summary>The nearest of some words by edits; null when none is near, or when several that differ in their number alone are equally near.</summary>
    /// <param name="found">What was written; case, and '_' or ' ' for '-', do not count.</param>
    /// <param name="words">The known words, in small letters.</param>
    public static string? Of(string found, IEnumerable<string> words)
    {
        ArgumentNullException.ThrowIfNull(found);
        ArgumentNullException.ThrowIfNull(words);
        if (found.Length > LongestFound)
        {
            return null;
        }

        string folded = found.ToLowerInvariant().Replace('_', '-').Replace(' ', '-');
        string? nearest = null;
        bool manyByNumber = false;
        int least = Math.Max(2, folded.Length / 3) + 1;
        foreach (string word in words)
        {
            int edits = Edits(folded, word);
            if (edits < least && edits < word.Length)
            {
                least = edits;
                nearest = word;
                manyByNumber = false;
            }
            else if (nearest is not null && edits == least && DifferInNumberOnly(nearest, word))
            {
                manyByNumber = true;
            }
        }

        return manyByNumber ? null : nearest;
    }

    /// <summary>Whether two words are one but for their digits: of class-0 to class-8 none is what class-9 was meant to be.</summary>
    private static bool DifferInNumberOnly(string one, string other) =>
        one.Length == other.Length && one.Zip(other).All(pair => pair.First == pair.Second || (char.IsAsciiDigit(pair.First) && char.IsAsciiDigit(pair.Second)));

    /// <summary>
    /// Fewest single-character insertions, removals, replacements and swaps of neighbours that turn one word into another
    /// (the optimal-string-alignment distance).
    /// </summary>
    public static int Edits(string from, string to)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
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
