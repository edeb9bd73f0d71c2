using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Mastwright.Station.Antenna;

namespace Mastwright.Storage.Plans;

/// <summary>Reads the elevation pattern that a plan names: CSV rows of angle in degrees and level in dB below the main beam.</summary>
internal static class PatternFile
{
    private const int MostRows = 100_000;

    /// <summary>The rows by rising angle; empty when the plan names none or it cannot be read.</summary>
    internal static ImmutableArray<PatternPoint> Bind(MappingReader antenna)
    {
        KeyShape key = AntennaKeys.PatternFile;
        string path = antenna.PathOf(key);
        if (antenna.Find(key) is not { } node || ScalarBinder.Text(antenna.Binding, node, path, key.Value)?.Trim() is not { } name)
        {
            return [];
        }

        if (antenna.Binding.Patterns.TryGetValue(name, out PatternPoint[]? known))
        {
            return [.. known];
        }

        ImmutableArray<PatternPoint> rows = [];
        if (antenna.Binding.Folder.Resolve(name, out string refusal) is not { } full)
        {
            antenna.Binding.Add(node, path, "plan-outside", refusal, key.Value.Wanted);
        }
        else if (PlanSource.ReadBounded(name, full, out PlanProblem? problem) is not { } bytes)
        {
            antenna.Binding.Add(node, path, problem!.Code, problem.Message, problem.Wanted);
        }
        else
        {
            rows = Parse(antenna.Binding, name, Encoding.UTF8.GetString(bytes));
        }

        antenna.Binding.Patterns[name] = [.. rows];
        return rows;
    }

    private static ImmutableArray<PatternPoint> Parse(PlanBinding binding, string name, string text)
    {
        List<PatternPoint> rows = [];
        int line = 0;
        foreach (ReadOnlySpan<char> raw in text.AsSpan().EnumerateLines())
        {
            line++;
            ReadOnlySpan<char> row = raw.Trim().TrimStart('\uFEFF');
            if (row.IsEmpty || row[0] == '#')
            {
                continue;
            }

            int comma = row.IndexOf(',');
            if (comma > 0 && Number(row[..comma], out double angle) && Number(row[(comma + 1)..], out double level))
            {
                if (angle is >= -90 and <= 90 && level is <= 0.001 and >= -200)
                {
                    rows.Add(new(angle, Math.Min(level, 0)));
                    continue;
                }
            }
            else if (rows.Count == 0 && !char.IsAsciiDigit(row[^1]))
            {
                // A first row of words is the heading.
                continue;
            }

            Fault(binding, name, line, PlanProblemList.Clip(row.ToString()), "This row is not an angle and a level.", "angle,dB with the angle from -90 to 90 and the level 0 or less, such as 12.5,-3");
            return [];
        }

        rows.Sort((left, right) => left.AngleDegrees.CompareTo(right.AngleDegrees));
        if (rows.Count is < 2 or > MostRows)
        {
            Fault(binding, name, 0, "", "A pattern has from 2 to 100,000 rows.", "angle,dB rows");
            return [];
        }

        for (int i = 1; i < rows.Count; i++)
        {
            if (rows[i].AngleDegrees == rows[i - 1].AngleDegrees)
            {
                Fault(binding, name, 0, rows[i].AngleDegrees.ToString(CultureInfo.InvariantCulture), "An angle stands twice in the pattern.", "each angle once");
                return [];
            }
        }

        return [.. rows];
    }

    private static bool Number(ReadOnlySpan<char> text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);

    private static void Fault(PlanBinding binding, string name, int line, string found, string message, string wanted) =>
        binding.Problems.Add(new() { Code = "plan-pattern", File = name, Line = line, Column = line > 0 ? 1 : 0, Found = found, Message = message, Wanted = wanted });
}
