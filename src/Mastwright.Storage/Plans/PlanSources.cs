using System.Globalization;

namespace Mastwright.Storage.Plans;

/// <summary>Where a value stands.</summary>
/// <param name="File">The file, by the name that problems use.</param>
/// <param name="Line">Line from 1.</param>
/// <param name="Column">Column from 1, in characters.</param>
public readonly record struct PlanPlace(string File, int Line, int Column)
{
    /// <summary>"plan.yaml:12:9".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{File}:{Line}:{Column}");
}

/// <summary>The place of every value of a plan, found by its path. Safe from many threads.</summary>
public sealed class PlanSources
{
    private readonly PlanNode root;
    private readonly Dictionary<string, PlanNode>[] parts;

    internal PlanSources(PlanNode root, Dictionary<string, PlanNode> antennas, Dictionary<string, PlanNode> radios, Dictionary<string, PlanNode> feed, Dictionary<string, PlanNode> supply)
    {
        this.root = root;
        parts = [antennas, radios, feed, supply];
    }

    /// <summary>What stands at a path in the plan itself; null when nothing does.</summary>
    internal PlanNode? Node(string path) => PlanPath.Find(root, path);

    /// <summary>The parts that may stand at a path below a fit-out, by name.</summary>
    internal Dictionary<string, PlanNode> Parts(string path) => parts[path.Split('/')[0] switch { "antenna" => 0, "radio" => 1, "supply" => 3, _ => 2 }];

    /// <summary>The place of the value at a path such as "sites/ferry-house/position"; null when the plan has none there.</summary>
    /// <remarks>A value that a fit-out takes from a part has the part's place. Items of a list count from 1.</remarks>
    public PlanPlace? Find(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return FindNode(path) is { } node ? new(node.Source.Name, node.Line, node.Column) : null;
    }

    /// <summary>The place of the value at a path or, when the plan leaves it out, of the nearest mapping that would hold it.</summary>
    public PlanPlace FindNearest(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        while (true)
        {
            if (Find(path) is { } place)
            {
                return place;
            }

            int slash = path.LastIndexOf('/');
            path = slash < 0 ? "" : path[..slash];
        }
    }

    private PlanNode? FindNode(string path)
    {
        PlanNode node = root;
        PlanNode? part = null;
        bool isSupply = false;
        foreach (string step in path.Split('/', StringSplitOptions.RemoveEmptyEntries))
        {
            PlanNode? next = PlanPath.Step(node, step) ?? (part is null ? null : PlanPath.Step(part, step));
            if (next is null)
            {
                return null;
            }

            node = next;
            isSupply |= step == "supply";
            part = PartOf(node, isSupply ? "supply" : step);
        }

        return node;
    }

    private PlanNode? PartOf(PlanNode node, string key)
    {
        if (node.Kind != PlanNodeKind.Mapping || node.Find("part") is not { Kind: PlanNodeKind.Scalar } name)
        {
            return null;
        }

        int kind = key switch { "antenna" => 0, "radio" => 1, "supply" => 3, _ => 2 };
        return parts[kind].GetValueOrDefault(name.Text);
    }
}

/// <summary>Steps along the path of a value.</summary>
internal static class PlanPath
{
    /// <summary>The value of a key, or the item of a list counted from 1.</summary>
    internal static PlanNode? Step(PlanNode node, string step) => node.Kind switch
    {
        PlanNodeKind.Mapping => node.Find(step),
        PlanNodeKind.Sequence when int.TryParse(step, NumberStyles.None, CultureInfo.InvariantCulture, out int item) && item >= 1 && item <= node.Items.Count => node.Items[item - 1],
        _ => null,
    };

    /// <summary>The value at a path below a node; null when there is none.</summary>
    internal static PlanNode? Find(PlanNode root, string path)
    {
        PlanNode? node = root;
        foreach (string step in path.Split('/', StringSplitOptions.RemoveEmptyEntries))
        {
            node = node is null ? null : Step(node, step);
        }

        return node;
    }
}
