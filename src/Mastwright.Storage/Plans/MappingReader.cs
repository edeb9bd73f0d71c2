using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Quantities;

namespace Mastwright.Storage.Plans;

/// <summary>Reads the keys of one mapping by its shape, with a part behind it whose values stand in where it has none.</summary>
/// <remarks>It is asked for every key of its shape, or <see cref="Done"/> throws: binder and schema cannot drift apart.</remarks>
internal sealed class MappingReader
{
    private readonly MappingShape shape;
    private readonly PlanNode? part;
    private ulong asked;

    private MappingReader(PlanBinding binding, PlanNode node, string path, MappingShape shape, PlanNode? part)
    {
        Binding = binding;
        Node = node;
        Path = path;
        this.shape = shape;
        this.part = part;
    }

    /// <summary>What the whole plan shares.</summary>
    internal PlanBinding Binding { get; }

    /// <summary>The mapping.</summary>
    internal PlanNode Node { get; }

    /// <summary>Its path in the plan; empty for the top.</summary>
    internal string Path { get; }

    /// <summary>Opens a mapping: null with a problem when it is none. Unknown and missing keys are reported here.</summary>
    internal static MappingReader? Open(PlanBinding binding, PlanNode node, string path, MappingShape shape, PlanNode? part = null)
    {
        if (node.Kind != PlanNodeKind.Mapping && !node.IsEmpty)
        {
            binding.Add(node, path, ScalarBinder.ValueCode, $"'{shape.Name}' is not written as keys and values.", shape.Wanted);
            return null;
        }

        MappingReader reader = new(binding, node, path, shape, part?.Kind == PlanNodeKind.Mapping ? part : null);
        reader.ReportUnknown();
        reader.ReportMissing();
        return reader;
    }

    /// <summary>The path of a key.</summary>
    internal string PathOf(KeyShape key) => Path.Length == 0 ? key.Name : $"{Path}/{key.Name}";

    /// <summary>The value of a key, the part's when the mapping has none; null when neither has it.</summary>
    internal PlanNode? Find(KeyShape key)
    {
        int index = shape.IndexOf(key.Name);
        if (index < 0)
        {
            throw new InvalidOperationException($"'{key.Name}' is no key of '{shape.Name}'.");
        }

        asked |= 1UL << index;
        return Node.Find(key.Name) ?? part?.Find(key.Name);
    }

    /// <summary>Whether a key is there.</summary>
    internal bool Has(KeyShape key) => Find(key) is not null;

    internal string Text(KeyShape key, string fallback = "") =>
        Find(key) is { } node ? ScalarBinder.Text(Binding, node, PathOf(key), key.Value)?.Trim() ?? fallback : fallback;

    internal string Key(KeyShape key) =>
        Find(key) is { } node ? ScalarBinder.Key(Binding, node, PathOf(key), (KeyNameShape)key.Value) ?? "" : "";

    internal Estimate? Quantity(KeyShape key) =>
        Find(key) is { } node ? ScalarBinder.Quantity(Binding, node, PathOf(key), (QuantityShape)key.Value) : null;

    internal double? Exact(KeyShape key) => Quantity(key)?.Median;

    internal double? Number(KeyShape key) =>
        Find(key) is { } node ? ScalarBinder.Number(Binding, node, PathOf(key), (NumberShape)key.Value) : null;

    internal int? Whole(KeyShape key) =>
        Find(key) is { } node ? ScalarBinder.Whole(Binding, node, PathOf(key), (WholeShape)key.Value) : null;

    internal bool YesNo(KeyShape key, bool fallback) =>
        Find(key) is { } node ? ScalarBinder.YesNo(Binding, node, PathOf(key), (YesNoShape)key.Value) ?? fallback : fallback;

    internal bool? YesNo(KeyShape key) =>
        Find(key) is { } node ? ScalarBinder.YesNo(Binding, node, PathOf(key), (YesNoShape)key.Value) : null;

    /// <summary>The place of a word among the words of its shape; -1 when the key is absent or the word is unknown, which is then a problem.</summary>
    internal int Choice(KeyShape key) =>
        Find(key) is { } node ? ScalarBinder.Choice(Binding, node, PathOf(key), (ChoiceShape)key.Value) : -1;

    /// <summary>One of the words of its shape; empty when the key is absent or the word is unknown, which is then a problem.</summary>
    internal string Word(KeyShape key) => Choice(key) is >= 0 and int choice ? ((ChoiceShape)key.Value).Words[choice] : "";

    internal LocatedPoint? Position(KeyShape key) =>
        Find(key) is { } node ? ScalarBinder.Position(Binding, node, PathOf(key), (PositionShape)key.Value) : null;

    /// <summary>One value or a list of such: the nodes, with the path of each.</summary>
    internal ImmutableArray<PlanItem> Many(KeyShape key)
    {
        if (Find(key) is not { } node)
        {
            return [];
        }

        string path = PathOf(key);
        return node.Kind == PlanNodeKind.Sequence ? Items(node, path) : [new("", node, path)];
    }

    /// <summary>The items of a list, with the path of each, counted from 1.</summary>
    internal ImmutableArray<PlanItem> List(KeyShape key)
    {
        if (Find(key) is not { } node || node.IsEmpty)
        {
            return [];
        }

        string path = PathOf(key);
        if (node.Kind != PlanNodeKind.Sequence)
        {
            Binding.Add(node, path, ScalarBinder.ValueCode, "A list belongs here.", key.Value.Wanted);
            return [];
        }

        return Items(node, path);
    }

    /// <summary>The entries of a mapping whose keys the plan chooses; a key of the wrong form is a problem and is left out.</summary>
    internal ImmutableArray<PlanItem> Keyed(KeyShape key)
    {
        if (Find(key) is not { } node || node.IsEmpty)
        {
            return [];
        }

        string path = PathOf(key);
        if (node.Kind != PlanNodeKind.Mapping)
        {
            Binding.Add(node, path, ScalarBinder.ValueCode, "Named entries belong here.", key.Value.Wanted);
            return [];
        }

        ImmutableArray<PlanItem>.Builder entries = ImmutableArray.CreateBuilder<PlanItem>(node.Entries.Count);
        foreach (PlanEntry entry in node.Entries)
        {
            string place = $"{path}/{PlanProblemList.Clip(entry.Key)}";
            if (KeyNameShape.IsKey(entry.Key))
            {
                entries.Add(new(entry.Key, entry.Value, place));
            }
            else
            {
                Binding.AddAtKey(node, entry, place, "plan-key", "This key does not have the form of one.", "small letters, digits and hyphens, at most 64, such as ferry-house");
            }
        }

        return entries.DrainToImmutable();
    }

    /// <summary>Ends the reading: every key of the shape was asked for.</summary>
    /// <exception cref="InvalidOperationException">One was not: the schema promises a key that the binder does not read.</exception>
    internal void Done()
    {
        if (asked != (shape.Keys.Length == 64 ? ulong.MaxValue : (1UL << shape.Keys.Length) - 1))
        {
            throw new InvalidOperationException($"A key of '{shape.Name}' was not read.");
        }
    }

    /// <summary>The items of a list node, with the path of each, counted from 1.</summary>
    internal static ImmutableArray<PlanItem> Items(PlanNode node, string path)
    {
        ImmutableArray<PlanItem>.Builder items = ImmutableArray.CreateBuilder<PlanItem>(node.Items.Count);
        for (int i = 0; i < node.Items.Count; i++)
        {
            items.Add(new("", node.Items[i], string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{path}/{i + 1}")));
        }

        return items.MoveToImmutable();
    }

    private void ReportUnknown()
    {
        foreach (PlanEntry entry in Node.Entries)
        {
            if (shape.IndexOf(entry.Key) >= 0)
            {
                continue;
            }

            string place = Path.Length == 0 ? PlanProblemList.Clip(entry.Key) : $"{Path}/{PlanProblemList.Clip(entry.Key)}";
            Binding.AddAtKey(Node, entry, place, "plan-unknown-key", $"This is no key of '{shape.Name}'.{Hint(entry)}", "one of " + string.Join(", ", shape.Keys.Select(key => key.Name)));
        }
    }

    private string Hint(PlanEntry entry)
    {
        if (Binding.Problems.HasMany)
        {
            return "";
        }

        if (Node.Flow && entry.Value.IsEmpty && entry.Key.Length > 0 && !char.IsAsciiLetter(entry.Key[0]))
        {
            return " Inside { } a value that holds a comma needs quotes, and a decimal fraction a point.";
        }

        if (NearestWord.Of(entry.Key, shape.Keys.Select(key => key.Name)) is { } near)
        {
            return $" Did you mean '{near}'?";
        }

        ImmutableArray<string> holders = KeySuggestion.Holders(entry.Key);
        return holders.Length > 0 ? $" It is a key of: {string.Join(", ", holders)}." : "";
    }

    private void ReportMissing()
    {
        if (Node.LacksKeys)
        {
            return;
        }

        foreach (KeyShape key in shape.Keys)
        {
            if (key.Required && Node.Find(key.Name) is null && part?.Find(key.Name) is null)
            {
                Binding.Add(Node, Path, "plan-missing-key", $"'{shape.Name}' needs the key '{key.Name}'.", $"{key.Name}: {key.Value.Wanted}");
            }
        }
    }
}
