using System.Globalization;
using Mastwright.Propagation;
using Mastwright.Storage.Plans;

namespace Mastwright.Storage.Air;

/// <summary>Reads one digital map of ITU-R P.1812 from its text: 121 lines of 241 numbers, separated by blanks.</summary>
/// <remarks>The layout is from memory: lines from 90° N to 90° S, values from 0° to 360° E, both every 1.5°.</remarks>
internal static class RefractivityMapFile
{
    private const string Layout = "121 lines (90° N to 90° S) of 241 numbers (0° to 360° E), a grid of 1.5°";

    /// <summary>The map; null with the first problem when the text is none.</summary>
    /// <param name="text">The text of the file.</param>
    /// <param name="name">Name of the file, for the problem.</param>
    /// <param name="quantity">What the map holds: its least and its most, and its unit.</param>
    /// <param name="problem">What is wrong, where, and what would be right; null when nothing is.</param>
    internal static RefractivityMap? Parse(ReadOnlySpan<char> text, string name, RefractivityQuantity quantity, out PlanProblem? problem)
    {
        double[] values = new double[RefractivityMap.Rows * RefractivityMap.Columns];
        int rows = 0;
        int number = 0;
        foreach (ReadOnlySpan<char> line in text.EnumerateLines())
        {
            number++;
            if (line.IsWhiteSpace())
            {
                continue;
            }

            if (rows == RefractivityMap.Rows)
            {
                problem = Fault(name, number, 1, "", "The map has more lines than its 121 latitudes.", Layout);
                return null;
            }

            if (!Row(line, values.AsSpan(rows * RefractivityMap.Columns, RefractivityMap.Columns), name, number, quantity, out problem))
            {
                return null;
            }

            rows++;
        }

        problem = rows == RefractivityMap.Rows ? null
            : Fault(name, 0, 0, "", FormattableString.Invariant($"The map has {rows} lines of numbers."), Layout);
        return problem is null ? RefractivityMap.FromValues(values) : null;
    }

    private static bool Row(ReadOnlySpan<char> line, Span<double> row, string name, int number, RefractivityQuantity quantity, out PlanProblem? problem)
    {
        int count = 0;
        int at = 0;
        while (at < line.Length)
        {
            if (char.IsWhiteSpace(line[at]))
            {
                at++;
                continue;
            }

            int start = at;
            while (at < line.Length && !char.IsWhiteSpace(line[at]))
            {
                at++;
            }

            ReadOnlySpan<char> word = line[start..at];
            if (!double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out double value))
            {
                problem = Fault(name, number, start + 1, Clip(word), "This is not a number.", "numbers separated by blanks, such as 45.31 or 4.531e+01");
                return false;
            }

            if (!(value >= quantity.Least && value <= quantity.Most))
            {
                problem = Fault(name, number, start + 1, Clip(word), $"This is not {quantity.Name}.", quantity.Wanted);
                return false;
            }

            if (count < row.Length)
            {
                row[count] = value;
            }

            count++;
        }

        problem = count == row.Length ? null
            : Fault(name, number, 1, "", FormattableString.Invariant($"The line has {count} numbers."), Layout);
        return problem is null;
    }

    private static string Clip(ReadOnlySpan<char> word) => PlanProblemList.Clip(word[..Math.Min(word.Length, 2 * PlanLimits.FoundLength)].ToString());

    private static PlanProblem Fault(string name, int line, int column, string found, string message, string wanted) =>
        new() { Code = "air-map", File = name, Line = line, Column = column, Path = "air/maps", Found = found, Message = message, Wanted = wanted };
}
