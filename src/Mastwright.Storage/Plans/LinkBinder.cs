using System.Collections.Immutable;
using Mastwright.Plans;

namespace Mastwright.Storage.Plans;

/// <summary>Binds the wanted links.</summary>
internal static class LinkBinder
{
    /// <summary>The links, each between two different stations that the plan has.</summary>
    internal static ImmutableArray<WantedLink> Bind(MappingReader plan)
    {
        ImmutableArray<PlanItem> items = plan.List(PlanKeys.Links);
        if (items.IsEmpty)
        {
            return [];
        }

        HashSet<string> keys = [.. plan.Keyed(PlanKeys.Sites).Select(site => site.Key), .. plan.Keyed(PlanKeys.Neighbours).Select(one => one.Key)];
        HashSet<string> seen = [];
        ImmutableArray<WantedLink>.Builder links = ImmutableArray.CreateBuilder<WantedLink>(items.Length);
        foreach ((_, PlanNode node, string path) in items)
        {
            if (Link(plan.Binding, node, path, keys) is { } link)
            {
                links.Add(link);
                if (!seen.Add($"{link.From} {link.To}") || seen.Contains($"{link.To} {link.From}"))
                {
                    plan.Binding.Add(node, path, "plan-duplicate-link", "This link is listed already: both directions are judged.", "each pair once");
                }
            }
        }

        return links.DrainToImmutable();
    }

    private static WantedLink? Link(PlanBinding binding, PlanNode node, string path, HashSet<string> keys)
    {
        ValueShape shape = ((ListShape)PlanKeys.Links.Value).Item;
        if (ScalarBinder.Text(binding, node, path, shape) is not { } text)
        {
            return null;
        }

        if (text.Split('~', StringSplitOptions.TrimEntries) is not [var from, var to] || !KeyNameShape.IsKey(from) || !KeyNameShape.IsKey(to))
        {
            binding.Add(node, path, ScalarBinder.ValueCode, "This is not a pair of keys.", shape.Wanted);
            return null;
        }

        foreach (string end in (string[])[from, to])
        {
            if (!keys.Contains(end))
            {
                binding.Add(node, path, "plan-unknown-name", $"No site or neighbour has the key '{end}'.{SiteBinder.Near(end, keys)}", shape.Wanted);
                return null;
            }
        }

        if (from == to)
        {
            binding.Add(node, path, ScalarBinder.ValueCode, "A link joins two different stations.", shape.Wanted);
            return null;
        }

        return new(from, to, path);
    }
}
