using System.Collections.Immutable;
using System.Globalization;

namespace Mastwright.Station.Antenna;

/// <summary>An elevation pattern as a table of angle and level, from a user's CSV text.</summary>
/// <remarks>
/// Between rows the level runs straight in dB. Below the first and above the last row the end's level holds; a table without
/// negative angles counts as the same above and below the horizon. An angle of 271 to 359 is read as -89 to -1.
/// </remarks>
public static class PatternTable
{
    /// <summary>The most rows that a table may hold.</summary>
    public const int MostRows = 20_000;

    /// <summary>Reads "angle,dB" rows: degrees above the horizon and dB relative to the main beam (zero or less).</summary>
    /// <param name="text">The text: one row a line, separated by comma, semicolon or tab; a heading, blank lines and lines that start with # are passed over.</param>
    /// <param name="points">The rows by rising angle; empty when there is a problem.</param>
    /// <param name="problem">Line, what was found and what would be right; empty when nothing is wrong.</param>
    public static bool TryParse(string text, out ImmutableArray<PatternPoint> points, out string problem)
    {
        bool isRead = TryParse(text, out points, out int line, out problem);
        problem = line > 0 ? Text($"line {line}: ") + problem : problem;
        return isRead;
    }

    /// <summary>Reads "angle,dB" rows, and tells the line apart from the problem.</summary>
    /// <param name="text">The text, as above.</param>
    /// <param name="points">The rows by rising angle; empty when there is a problem.</param>
    /// <param name="line">The line at fault, from 1; 0 when nothing is wrong or the whole table is meant.</param>
    /// <param name="problem">What was found and what would be right; empty when nothing is wrong.</param>
    public static bool TryParse(string text, out ImmutableArray<PatternPoint> points, out int line, out string problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        points = [];
        line = 0;
        problem = "";
        SortedDictionary<double, double> rows = [];
        int number = 0;
        bool headingAllowed = true;
        foreach (ReadOnlySpan<char> raw in text.AsSpan().TrimStart('\uFEFF').EnumerateLines())
        {
            number++;
            ReadOnlySpan<char> written = raw.Trim();
            if (written.IsEmpty || written[0] == '#')
            {
                continue;
            }

            bool isRow = TryRow(written, out double angle, out double level, out string wrong);
            if (!isRow && headingAllowed && !char.IsAsciiDigit(written[0]) && written[0] is not ('-' or '+' or '.' or '−'))
            {
                headingAllowed = false;
                continue;
            }

            headingAllowed = false;
            if (isRow && rows.Count >= MostRows)
            {
                wrong = Text($"more than {MostRows} rows; a pattern needs one a degree or so");
            }
            else if (isRow && !rows.TryAdd(angle, level))
            {
                wrong = Text($"the angle {angle} stands twice");
            }

            if (wrong.Length > 0)
            {
                line = number;
                problem = wrong;
                return false;
            }
        }

        if (rows.Count < 2)
        {
            problem = "a pattern needs two rows or more of angle,dB";
            return false;
        }

        if (rows.Values.Max() < -3)
        {
            problem = Text($"the highest level is {rows.Values.Max()} dB; levels are relative to the main beam, which is 0 dB");
            return false;
        }

        points = [.. rows.Select(row => new PatternPoint(row.Key, row.Value))];
        return true;
    }

    /// <summary>Level in dB relative to the main beam at an elevation in degrees.</summary>
    /// <param name="points">Rows by rising angle: one or more.</param>
    /// <param name="elevationDegrees">Angle above the horizon, -90 to 90.</param>
    public static double RelativeDb(ImmutableArray<PatternPoint> points, double elevationDegrees)
    {
        double angle = points[0].AngleDegrees >= 0 ? Math.Abs(elevationDegrees) : elevationDegrees;
        if (angle <= points[0].AngleDegrees)
        {
            return points[0].LevelDb;
        }

        int low = 0;
        int high = points.Length - 1;
        if (angle >= points[high].AngleDegrees)
        {
            return points[high].LevelDb;
        }

        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            (low, high) = points[middle].AngleDegrees <= angle ? (middle, high) : (low, middle);
        }

        double share = (angle - points[low].AngleDegrees) / (points[high].AngleDegrees - points[low].AngleDegrees);
        return points[low].LevelDb + (share * (points[high].LevelDb - points[low].LevelDb));
    }

    private static bool TryRow(ReadOnlySpan<char> line, out double angle, out double level, out string wrong)
    {
        angle = 0;
        level = 0;
        wrong = "";
        Span<Range> fields = stackalloc Range[4];
        int count = line.SplitAny(fields, ",;\t");
        if (count != 2)
        {
            wrong = Text($"'{Short(line)}' has {count} fields; a row is angle,dB with a decimal point");
            return false;
        }

        if (!Number(line[fields[0]], out angle) || !Number(line[fields[1]], out level))
        {
            wrong = $"'{Short(line)}' is not two numbers; a row is angle,dB, such as -5,-1.5";
            return false;
        }

        if (angle is > 270 and < 360)
        {
            angle -= 360;
        }

        if (!(angle is >= -90 and <= 90))
        {
            wrong = Text($"the angle {angle} lies outside -90 to 90 degrees above the horizon; give the front half of the cut");
            return false;
        }

        if (!(level is <= 0 and >= -200))
        {
            wrong = Text($"the level {level} dB is not between -200 and 0; levels are relative to the main beam, which is 0 dB");
            return false;
        }

        return true;
    }

    private static bool Number(ReadOnlySpan<char> text, out double value)
    {
        text = text.Trim();
        bool minus = text is ['−', ..];
        bool read = double.TryParse(minus ? text[1..] : text, NumberStyles.Float, CultureInfo.InvariantCulture, out value);
        value = minus ? -value : value;
        return read;
    }

    private static string Short(ReadOnlySpan<char> line)
    {
        string text = line.Length > 40 ? string.Concat(line[..40], "…") : line.ToString();
        return string.Concat(text.Select(letter => char.IsControl(letter) ? ' ' : letter));
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
