using System.Collections.Immutable;

namespace Mastwright.Storage.Plans;

/// <summary>Gathers the parts of a plan and of the files it includes, and checks each part where it stands.</summary>
internal sealed class PartCollector(PlanBinding binding)
{
    private readonly HashSet<string> open = new(StringComparer.Ordinal);
    private readonly HashSet<string> read = new(StringComparer.Ordinal);
    private readonly List<PlanSource> sources = [];
    private readonly List<PlanNode> roots = [];

    /// <summary>The included files that were read, in their order.</summary>
    internal ImmutableArray<PlanSource> Sources => [.. sources];

    /// <summary>The top mappings of the included files, in the same order.</summary>
    internal ImmutableArray<PlanNode> Roots => [.. roots];

    /// <summary>Takes the parts and the includes of the plan itself.</summary>
    internal void Collect(MappingReader plan)
    {
        open.Add(plan.Node.Source.FullPath);
        Follow(plan);
        Take(plan);
    }

    private void Follow(MappingReader file)
    {
        foreach ((_, PlanNode node, string path) in file.Many(PlanKeys.Include))
        {
            if (ScalarBinder.Text(binding, node, path, ((OneOrManyShape)PlanKeys.Include.Value).Item) is not { } name || !Include(node, path, name.Trim()))
            {
                binding.LacksIncludes = true;
            }
        }
    }

    /// <summary>Whether the file was taken, now or before.</summary>
    private bool Include(PlanNode node, string path, string name)
    {
        if (binding.Folder.Resolve(name, out string refusal) is not { } full)
        {
            binding.Add(node, path, "plan-outside", refusal, "a file inside the plan's folder");
            return false;
        }

        if (open.Contains(full))
        {
            binding.Add(node, path, "plan-include-cycle", "The file includes itself, straight or through another.", "includes that end");
            return false;
        }

        if (!read.Add(full))
        {
            return true;
        }

        if (read.Count > PlanLimits.Includes)
        {
            binding.Add(node, path, "plan-too-large", "The plan includes more files than any plan needs.", $"at most {PlanLimits.Includes} files");
            return false;
        }

        PlanSource? source = PlanSource.Read(name, full, out PlanProblem? problem);
        if (source is null)
        {
            // The fault is told where the plan names the file when the file is not there, else in the file.
            if (problem!.Code == "plan-file")
            {
                binding.Add(node, path, problem.Code, problem.Message, problem.Wanted);
            }
            else
            {
                binding.Problems.Add(problem);
            }

            return false;
        }

        sources.Add(source);
        if (PlanTreeReader.Read(source, binding.Problems) is not { } root || MappingReader.Open(binding, root, "", PlanKeys.IncludedShape) is not { } included)
        {
            return false;
        }

        roots.Add(root);
        PlanVersion.Check(included);
        open.Add(full);
        Follow(included);
        open.Remove(full);
        Take(included);
        included.Done();
        return true;
    }

    private void Take(MappingReader file)
    {
        if (file.Find(PlanKeys.Parts) is not { } node || MappingReader.Open(binding, node, PlanKeys.Parts.Name, PartKeys.Shape) is not { } parts)
        {
            return;
        }

        foreach ((string key, PlanNode part, string path) in parts.Keyed(PartKeys.Antennas))
        {
            Add(binding.AntennaParts, key, part, path);
            AntennaBinder.CheckPart(binding, part, path);
        }

        foreach ((string key, PlanNode part, string path) in parts.Keyed(PartKeys.Radios))
        {
            Add(binding.RadioParts, key, part, path);
            RadioBinder.CheckPart(binding, part, path);
        }

        foreach ((string key, PlanNode part, string path) in parts.Keyed(PartKeys.Feed))
        {
            Add(binding.FeedParts, key, part, path);
            FeedBinder.Bind(binding, part, path, FeedKeys.PartItem);
        }

        foreach ((string key, PlanNode part, string path) in parts.Keyed(PartKeys.Supply))
        {
            Add(binding.SupplyParts, key, part, path);
            SupplyBinder.CheckPart(binding, part, path);
        }

        parts.Done();
    }

    private void Add(Dictionary<string, PlanNode> parts, string key, PlanNode part, string path)
    {
        // Twice in one file is a key that stands twice, which was told as the file was read.
        if (!parts.TryAdd(key, part) && parts[key] is { } first && first.Source != part.Source)
        {
            binding.Add(part, path, "plan-duplicate-key", $"The part '{key}' is described a second time; first in {first.Source.Name}, line {first.Line}.", "one part of a kind and name");
        }
    }
}
