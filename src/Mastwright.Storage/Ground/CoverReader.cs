using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Ground;
using Mastwright.Storage.Catalogue;
using YamlDotNet.RepresentationModel;

namespace Mastwright.Storage.Ground;

/// <summary>Binds the YAML of a cover table and collects every fault.</summary>
internal sealed class CoverReader(string file)
{
    private static readonly string[] Keys = ["code", "name", "class", "height-metres", "reason", "source"];

    private static readonly Dictionary<string, CoverClass> Classes = new(StringComparer.Ordinal)
    {
        ["open"] = CoverClass.Open,
        ["water"] = CoverClass.Water,
        ["suburban"] = CoverClass.Suburban,
        ["urban-or-trees"] = CoverClass.UrbanOrTrees,
        ["dense-urban"] = CoverClass.DenseUrban,
    };

    internal List<CatalogueFault> Faults { get; } = [];

    internal ImmutableArray<CoverRow> Read(string text)
    {
        YamlMappingNode? root = CatalogueText.Parse(text, (line, what) => Faults.Add(new(file, line, "", what)));
        if (root is null)
        {
            return [];
        }

        foreach (YamlNode key in root.Children.Keys)
        {
            if (key is not YamlScalarNode { Value: "format" or "cover" })
            {
                Fault(key, "", $"'{key}' is not known; a cover table has the keys format and cover");
            }
        }

        if (!root.Children.TryGetValue("format", out YamlNode? format) || format is not YamlScalarNode { Value: "1" })
        {
            Fault(root, "format", "must be 1");
            return [];
        }

        if (!root.Children.TryGetValue("cover", out YamlNode? cover) || cover is not YamlSequenceNode list)
        {
            Fault(root, "cover", "must be a list of rows");
            return [];
        }

        Dictionary<byte, CoverRow> rows = [];
        foreach (YamlNode item in list)
        {
            if (Row(item) is { } row && !rows.TryAdd(row.Code, row))
            {
                Fault(item, $"cover/{row.Code}", "the code stands twice in this file");
            }
        }

        return [.. rows.Values];
    }

    private CoverRow? Row(YamlNode node)
    {
        if (node is not YamlMappingNode row)
        {
            Fault(node, "cover", "each row is a mapping");
            return null;
        }

        int before = Faults.Count;
        foreach (YamlNode key in row.Children.Keys)
        {
            if (key is not YamlScalarNode { Value: string name } || !Keys.Contains(name, StringComparer.Ordinal))
            {
                Fault(key, "cover", $"'{key}' is not known; a row has the keys {string.Join(", ", Keys)}");
            }
        }

        double code = Number(row, "code", 1, 255);
        double height = Number(row, "height-metres", 0, 100);
        string coverClass = Text(row, "class");
        if (coverClass.Length > 0 && !Classes.ContainsKey(coverClass))
        {
            Fault(row, "cover/class", $"'{coverClass}' is not a class; give one of {string.Join(", ", Classes.Keys)}");
        }

        if (code != Math.Floor(code))
        {
            Fault(row, "cover/code", "a code is a whole number");
        }

        (string name1, string reason, string source) = (Text(row, "name"), Text(row, "reason"), Text(row, "source"));
        return Faults.Count == before ? new((byte)code, name1, Classes[coverClass], height, reason, source) : null;
    }

    private double Number(YamlMappingNode row, string key, double least, double most)
    {
        string text = Text(row, key);
        if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && value >= least && value <= most)
        {
            return value;
        }

        if (text.Length > 0)
        {
            Fault(row, "cover/" + key, string.Create(CultureInfo.InvariantCulture, $"'{text}' is not a number from {least} to {most}"));
        }

        return least;
    }

    private string Text(YamlMappingNode row, string key)
    {
        if (row.Children.TryGetValue(key, out YamlNode? node) && node is YamlScalarNode { Value.Length: > 0 } scalar)
        {
            return scalar.Value;
        }

        Fault(row, "cover/" + key, "must be given");
        return "";
    }

    private void Fault(YamlNode node, string key, string text) => Faults.Add(new(file, node.Start.Line, key, text));
}
