using System.Collections.Immutable;
using System.Text;
using Mastwright.Station.Antenna;

namespace Mastwright.Storage.Plans;

/// <summary>Reads the elevation pattern that a plan names: CSV rows of angle in degrees and level in dB below the main beam.</summary>
internal static class PatternFile
{
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
        else if (!PatternTable.TryParse(Encoding.UTF8.GetString(bytes), out rows, out int line, out string wrong))
        {
            antenna.Binding.Problems.Add(new()
            {
                Code = "plan-pattern",
                File = name,
                Line = line,
                Column = line > 0 ? 1 : 0,
                Message = ScalarBinder.Sentence(wrong),
            });
        }

        antenna.Binding.Patterns[name] = [.. rows];
        return rows;
    }
}
