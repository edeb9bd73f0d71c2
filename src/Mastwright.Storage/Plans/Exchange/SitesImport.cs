using System.Collections.Immutable;
using System.Text;

namespace Mastwright.Storage.Plans.Exchange;

/// <summary>How places become stations of a plan.</summary>
public sealed record SitesImportOptions
{
    /// <summary>Whether the places become neighbours (true) or own sites (false); null to go by what the file says, and sites where it says nothing.</summary>
    public bool? AsNeighbours { get; init; }

    /// <summary>Whether an elevation in the file is the height of the bare ground there; otherwise it is kept as a remark.</summary>
    public bool ElevationIsGround { get; init; }
}

/// <summary>A plan with stations added, or why not.</summary>
/// <param name="Text">The changed text, not saved yet; null when there is a problem.</param>
/// <param name="Paths">Path of each added station, in the order of the places.</param>
/// <param name="Problem">The problem; null when there is a text.</param>
public sealed record SitesImportResult(PlanText? Text, ImmutableArray<string> Paths, PlanProblem? Problem);

/// <summary>Adds places to a plan as sites or neighbours; nothing that stands in the plan is changed.</summary>
public static class SitesImport
{
    /// <summary>Inserts the places. A key that is taken already gets a number; what has no key of its own in a plan is kept as a remark.</summary>
    public static SitesImportResult Insert(PlanText plan, ImmutableArray<ExchangedPlace> places, SitesImportOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        options ??= new();
        HashSet<string> taken = Taken(plan.Root);
        Dictionary<string, int> next = new(StringComparer.Ordinal);
        string newLine = plan.Text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        StringBuilder sites = new();
        StringBuilder neighbours = new();
        BlockPlace sitesAt = BlockPlace.Of(plan, "sites");
        BlockPlace neighboursAt = BlockPlace.Of(plan, "neighbours");
        ImmutableArray<string>.Builder paths = ImmutableArray.CreateBuilder<string>(places.Length);
        foreach (ExchangedPlace place in places)
        {
            bool neighbour = options.AsNeighbours ?? place.IsNeighbour ?? false;
            string key = KeyFromName.Free(KeyNameShape.IsKey(place.Key) ? place.Key : KeyFromName.Of(place.Name), taken, next);
            StationText.Append(neighbour ? neighbours : sites, place, key, neighbour ? neighboursAt : sitesAt, newLine, options);
            paths.Add((neighbour ? "neighbours/" : "sites/") + key);
        }

        if ((sites.Length > 0 && sitesAt.Refusal is not null) || (neighbours.Length > 0 && neighboursAt.Refusal is not null))
        {
            return new(null, [], sites.Length > 0 ? sitesAt.Refusal ?? neighboursAt.Refusal : neighboursAt.Refusal);
        }

        string text = Insert(plan.Text, newLine, (sitesAt, sites.ToString()), (neighboursAt, neighbours.ToString()));
        PlanTextResult changed = plan.Changed(text);
        return changed.Text is null ? new(null, [], changed.Problem) : new(changed.Text, paths.MoveToImmutable(), null);
    }

    private static string Insert(string text, string newLine, params (BlockPlace Place, string Block)[] blocks)
    {
        // From the back, so that the earlier places keep their index; at one index the later block goes in first.
        foreach ((BlockPlace place, string block) in blocks.Where(block => block.Block.Length > 0).OrderBy(block => block.Place.Index).Reverse())
        {
            string lead = place.Index > 0 && text[place.Index - 1] != '\n' ? newLine : "";
            text = text.Insert(place.Index, lead + place.Heading(newLine) + block);
        }

        return text;
    }

    private static HashSet<string> Taken(PlanNode root)
    {
        HashSet<string> taken = new(StringComparer.Ordinal);
        foreach (string kind in (string[])["sites", "neighbours"])
        {
            foreach (PlanEntry entry in root.Find(kind)?.Entries ?? [])
            {
                taken.Add(entry.Key);
                if (entry.Value.Find("formerly") is { } formerly)
                {
                    taken.UnionWith(formerly.Kind == PlanNodeKind.Sequence ? formerly.Items.Select(item => item.Text) : [formerly.Text]);
                }
            }
        }

        return taken;
    }
}
