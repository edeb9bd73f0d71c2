namespace Mastwright.Workbench.Keeping;

/// <summary>Puts two changes of one text together, line by line, where they touch different places.</summary>
internal static class LineMerge
{
    /// <summary>Differences past this number are not looked for: two texts that far apart are for a reader to put together.</summary>
    private const int MostChanges = 2000;

    /// <summary>The text with both changes; null where they touch the same lines, or lines next to each other, in different ways.</summary>
    /// <param name="before">What both were made from.</param>
    /// <param name="yours">One change.</param>
    /// <param name="theirs">The other.</param>
    internal static string? Of(string before, string yours, string theirs)
    {
        string[] lines = Lines(before);
        string[] one = Lines(yours);
        string[] other = Lines(theirs);
        if (Changes(lines, one) is not { } first || Changes(lines, other) is not { } second)
        {
            return null;
        }

        List<string> merged = [];
        int at = 0;
        (int i, int j) = (0, 0);
        while (i < first.Count || j < second.Count)
        {
            Change? left = i < first.Count ? first[i] : null;
            Change? right = j < second.Count ? second[j] : null;
            if (left is not null && right is not null && left.Start <= right.End && right.Start <= left.End)
            {
                if (left.Start != right.Start || left.End != right.End || !one.AsSpan(left.NewStart, left.NewCount).SequenceEqual(other.AsSpan(right.NewStart, right.NewCount)))
                {
                    return null;
                }

                j++;
            }

            bool takesLeft = right is null || (left is not null && left.Start <= right.Start);
            Change next = takesLeft ? left! : right!;
            merged.AddRange(lines.AsSpan(at, next.Start - at));
            merged.AddRange((takesLeft ? one : other).AsSpan(next.NewStart, next.NewCount));
            at = next.End;
            (i, j) = takesLeft ? (i + 1, j) : (i, j + 1);
        }

        merged.AddRange(lines.AsSpan(at));
        return string.Concat(merged);
    }

    /// <summary>Lines with their ends, so that putting them together gives the text back byte for byte.</summary>
    private static string[] Lines(string text)
    {
        List<string> lines = [];
        int at = 0;
        while (at < text.Length)
        {
            int end = text.IndexOf('\n', at);
            end = end < 0 ? text.Length : end + 1;
            lines.Add(text[at..end]);
            at = end;
        }

        return [.. lines];
    }

    /// <summary>The fewest lines to take out and put in that make one text of the other; null past the bound.</summary>
    /// <remarks>Source: E. W. Myers, "An O(ND) Difference Algorithm and Its Variations", Algorithmica 1 (1986), the greedy algorithm of section 3.</remarks>
    private static List<Change>? Changes(string[] before, string[] after)
    {
        int same = 0;
        while (same < before.Length && same < after.Length && before[same] == after[same])
        {
            same++;
        }

        int tail = 0;
        while (tail < before.Length - same && tail < after.Length - same && before[^(tail + 1)] == after[^(tail + 1)])
        {
            tail++;
        }

        (int n, int m) = (before.Length - same - tail, after.Length - same - tail);
        List<int[]> trail = [];
        int most = Math.Min(n + m, MostChanges);
        int[] furthest = new int[(2 * most) + 3];
        for (int d = 0; d <= most; d++)
        {
            trail.Add(furthest[(most - d)..(most + d + 3)]);
            for (int k = -d; k <= d; k += 2)
            {
                int x = k == -d || (k != d && furthest[most + k] < furthest[most + k + 2]) ? furthest[most + k + 2] : furthest[most + k] + 1;
                while (x < n && x - k < m && before[same + x] == after[same + x - k])
                {
                    x++;
                }

                furthest[most + k + 1] = x;
                if (x >= n && x - k >= m)
                {
                    return Back(trail, same, n, m);
                }
            }
        }

        return null;
    }

    /// <summary>Walks the way of the search back and gathers single steps into changes.</summary>
    private static List<Change> Back(List<int[]> trail, int offset, int n, int m)
    {
        List<Change> changes = [];
        (int x, int y) = (n, m);
        for (int d = trail.Count - 1; d > 0; d--)
        {
            // In a kept row, diagonal k stands at k + d + 1.
            int[] row = trail[d];
            int k = x - y;
            bool down = k == -d || (k != d && row[k + d] < row[k + d + 2]);
            int from = down ? k + 1 : k - 1;
            int fromX = row[from + d + 1];
            int fromY = fromX - from;
            (int stepX, int stepY) = down ? (fromX, fromY + 1) : (fromX + 1, fromY);
            Change step = new(offset + fromX, offset + stepX, offset + fromY, stepY - fromY);
            if (changes is [.., var last] && last.Start == step.End && last.NewStart == step.NewStart + step.NewCount)
            {
                changes[^1] = new(step.Start, last.End, step.NewStart, step.NewCount + last.NewCount);
            }
            else
            {
                changes.Add(step);
            }

            (x, y) = (fromX, fromY);
        }

        changes.Reverse();
        return changes;
    }

    /// <summary>Lines of the old text, from the first to before the end, and what stands in their place in the new one.</summary>
    private sealed record Change(int Start, int End, int NewStart, int NewCount);
}
