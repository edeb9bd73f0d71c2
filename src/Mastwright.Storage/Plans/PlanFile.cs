using System.Collections.Immutable;
using Mastwright.Plans;

namespace Mastwright.Storage.Plans;

/// <summary>Reads plan files.</summary>
public static class PlanFile
{
    /// <summary>Reads a plan and all it includes. Never throws for a bad plan: every problem is collected and told at once.</summary>
    /// <param name="path">The plan file.</param>
    /// <param name="options">How it is read; null for the usual way.</param>
    public static PlanReading Read(string path, PlanReadOptions? options = null)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        PlanSource? source = PlanSource.Read(path, Path.GetFullPath(path), out PlanProblem? problem);
        return source is null ? new(null, [problem!]) : Bind(source, options ?? new());
    }

    /// <summary>Reads a plan from text in memory, such as one that was changed and not yet saved.</summary>
    /// <param name="text">The changed plan.</param>
    /// <param name="options">How it is read; null for the usual way.</param>
    public static PlanReading Read(PlanText text, PlanReadOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Bind(text.Source, options ?? new());
    }

    internal static PlanReading Bind(PlanSource source, PlanReadOptions options)
    {
        PlanProblemList problems = new();
        string folder = source.FullPath.Length > 0 ? Path.GetDirectoryName(source.FullPath)! : Directory.GetCurrentDirectory();
        if (PlanTreeReader.Read(source, problems) is not { } root)
        {
            return new(null, problems.Sorted(source.Name));
        }

        PlanBinding binding = new(problems, new(folder, options.AllowOutside));
        PartCollector parts = new(binding);
        Plan? plan = PlanBinder.Bind(binding, root, parts);
        if (plan is not null)
        {
            StationCheck.Check(binding, root, plan);
        }

        if (!problems.IsEmpty || plan is null)
        {
            return new(null, problems.Sorted(source.Name));
        }

        ImmutableArray<PlanFileHash> files = [.. parts.Sources.Prepend(source).Select(file => new PlanFileHash(file.Name, file.Hash))];
        return new(new(plan, new(root, binding.AntennaParts, binding.RadioParts, binding.FeedParts, binding.SupplyParts), files, [.. binding.Notes], folder), []);
    }
}
