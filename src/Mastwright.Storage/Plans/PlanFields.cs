using System.Collections.Immutable;
using System.Globalization;

namespace Mastwright.Storage.Plans;

/// <summary>The single values of a fit-out that can be changed where they stand, with what would be right there.</summary>
public static class PlanFields
{
    /// <summary>Lists the values of a fit-out, in the plan's order; names to speak of parts by are left out.</summary>
    /// <remarks>
    /// What an antenna or a radio takes from a part is listed too: a value given in the fit-out itself wins over the part's, and other fit-outs keep theirs.
    /// </remarks>
    /// <param name="document">The plan.</param>
    /// <param name="fitOutPath">Where the fit-out stands: "sites/ferry-house/fit-outs/net-loft".</param>
    public static ImmutableArray<PlanField> Of(PlanDocument document, string fitOutPath)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(fitOutPath);
        List<PlanField> fields = [];
        if (document.Sources.Node(fitOutPath) is { } node)
        {
            Walk(document.Sources, node, FitOutKeys.Shape, "", fields);
        }

        return [.. fields];
    }

    private static void Walk(PlanSources sources, PlanNode node, ValueShape shape, string path, List<PlanField> fields)
    {
        switch (shape)
        {
            case MappingShape mapping when node.Kind == PlanNodeKind.Mapping:
                Keys(sources, node, mapping, path, fields);
                break;
            case AlternativesShape alternatives when alternatives.Choices.FirstOrDefault(choice => node.Find(choice.Keys[0].Name) is not null) is { } chosen:
                Walk(sources, node, chosen, path, fields);
                break;
            case KeyedShape keyed:
                foreach (PlanEntry entry in node.Entries)
                {
                    Walk(sources, entry.Value, keyed.Item, Below(path, entry.Key), fields);
                }

                break;
            case ListShape list:
                for (int i = 0; i < node.Items.Count; i++)
                {
                    Walk(sources, node.Items[i], list.Item, Below(path, (i + 1).ToString(CultureInfo.InvariantCulture)), fields);
                }

                break;
        }
    }

    private static void Keys(PlanSources sources, PlanNode node, MappingShape mapping, string path, List<PlanField> fields)
    {
        foreach (PlanEntry entry in node.Entries)
        {
            if (mapping.IndexOf(entry.Key) is >= 0 and var index)
            {
                Key(sources, entry.Value, mapping.Keys[index], path, fields, partName: "");
            }
        }

        if (path is "antenna" or "radio" && node.Find("part")?.Text is { } name && sources.Parts(path).GetValueOrDefault(name) is { } part)
        {
            foreach (PlanEntry entry in part.Entries.Where(entry => node.Find(entry.Key) is null && mapping.IndexOf(entry.Key) >= 0))
            {
                Key(sources, entry.Value, mapping.Keys[mapping.IndexOf(entry.Key)], path, fields, name);
            }
        }
    }

    private static void Key(PlanSources sources, PlanNode node, KeyShape key, string path, List<PlanField> fields, string partName)
    {
        string place = Below(path, key.Name);
        if (node.Kind != PlanNodeKind.Scalar)
        {
            if (partName.Length == 0)
            {
                Walk(sources, node, key.Value, place, fields);
            }

            return;
        }

        if (key.Name == "name")
        {
            return;
        }

        fields.Add(new()
        {
            Path = place,
            Value = node.Text,
            Wanted = key.Value.Wanted,
            Meaning = key.Meaning,
            PartName = partName,
            Choices = key.Value switch
            {
                ChoiceShape choice => choice.Words,
                YesNoShape => ["yes", "no"],
                KeyNameShape when key.Name == "part" => [.. sources.Parts(path).Keys.Order(StringComparer.Ordinal)],
                _ => [],
            },
        });
    }

    private static string Below(string path, string key) => path.Length == 0 ? key : $"{path}/{key}";
}

/// <summary>A single value of a fit-out.</summary>
public sealed record PlanField
{
    /// <summary>Its path below the fit-out: "supply/3/length".</summary>
    public required string Path { get; init; }

    /// <summary>What stands there, as it is written.</summary>
    public required string Value { get; init; }

    /// <summary>What would be right: "a length from 0 m to 1 km, such as 14 m".</summary>
    public required string Wanted { get; init; }

    /// <summary>What it means.</summary>
    public required string Meaning { get; init; }

    /// <summary>The part that it is taken from; empty where it stands in the fit-out itself.</summary>
    public string PartName { get; init; } = "";

    /// <summary>The words that may stand there; empty where any value of its kind may.</summary>
    public ImmutableArray<string> Choices { get; init; } = [];

    /// <summary>Its key: the last step of the path.</summary>
    public string Key => Path[(Path.LastIndexOf('/') + 1)..];
}
