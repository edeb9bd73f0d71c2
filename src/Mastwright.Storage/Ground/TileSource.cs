using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Mastwright.Ground;
using Mastwright.Storage.Catalogue;
using YamlDotNet.RepresentationModel;

namespace Mastwright.Storage.Ground;

/// <summary>A place to download ground tiles from.</summary>
/// <param name="Key">Key of the row.</param>
/// <param name="Name">Name for a person.</param>
/// <param name="AddressPattern">Address with places {ns}, {lat}, {ew}, {lon}, {name}.</param>
/// <param name="File">File name with the same places.</param>
/// <param name="Kind">What the heights are of.</param>
/// <param name="Datum">Vertical datum.</param>
/// <param name="AbsentIsSea">Whether the source leaves out tiles only where there is nothing but sea.</param>
/// <param name="Licence">Terms, in short.</param>
/// <param name="Source">Where the row comes from.</param>
public sealed record TileSource(string Key, string Name, string AddressPattern, string File, HeightKind Kind, string Datum, bool AbsentIsSea, string Licence, string Source)
{
    private static readonly string[] Keys = ["key", "name", "url", "file", "kind", "datum", "absent-is-sea", "licence", "source"];

    private static readonly Lazy<ImmutableArray<TileSource>> Shipped = new(ReadShipped);

    /// <summary>The rows that come with the program.</summary>
    public static ImmutableArray<TileSource> BuiltIn => Shipped.Value;

    /// <summary>Reads rows from text.</summary>
    /// <param name="text">The YAML text: format: 1 and a list tile-sources.</param>
    /// <param name="name">Name of the file, for the faults.</param>
    /// <param name="sources">The rows; empty when there is a fault.</param>
    /// <param name="faults">Everything that is wrong; empty when nothing is.</param>
    public static bool TryParse(string text, string name, out ImmutableArray<TileSource> sources, out ImmutableArray<CatalogueFault> faults)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(name);
        List<CatalogueFault> found = [];
        ImmutableArray<TileSource>.Builder rows = ImmutableArray.CreateBuilder<TileSource>();
        YamlMappingNode? root = CatalogueText.Parse(text, (line, what) => found.Add(new(name, line, "", what)));
        if (root is not null && root.Children.TryGetValue("tile-sources", out YamlNode? node) && node is YamlSequenceNode list)
        {
            foreach (YamlNode item in list)
            {
                if (Row(item, (at, what) => found.Add(new(name, at.Start.Line, "tile-sources", what))) is { } row)
                {
                    rows.Add(row);
                }
            }
        }
        else if (root is not null)
        {
            found.Add(new(name, 1, "tile-sources", "must be a list of rows"));
        }

        faults = [.. found];
        sources = faults.IsEmpty ? rows.ToImmutable() : [];
        return faults.IsEmpty;
    }

    /// <summary>The address of a tile.</summary>
    public Uri AddressOf(GroundTile tile) => new(Fill(AddressPattern, tile), UriKind.Absolute);

    /// <summary>The file name of a tile.</summary>
    public string FileNameOf(GroundTile tile) => Fill(File, tile);

    /// <summary>Whether an address, filled in, is one that can be fetched from.</summary>
    public static bool IsFetchable(string addressPattern)
    {
        ArgumentNullException.ThrowIfNull(addressPattern);
        return Uri.TryCreate(Fill(addressPattern, GroundTile.OneDegree(46, -19)), UriKind.Absolute, out Uri? address) && address.Scheme is "http" or "https";
    }

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    private static string Fill(string pattern, GroundTile tile) => pattern
        .Replace("{name}", tile.Name, StringComparison.Ordinal)
        .Replace("{ns}", tile.Name[..1], StringComparison.Ordinal)
        .Replace("{lat}", tile.Name[1..3], StringComparison.Ordinal)
        .Replace("{ew}", tile.Name[3..4], StringComparison.Ordinal)
        .Replace("{lon}", tile.Name[4..], StringComparison.Ordinal);

    private static TileSource? Row(YamlNode node, Action<YamlNode, string> fault)
    {
        if (node is not YamlMappingNode row)
        {
            fault(node, "each row is a mapping");
            return null;
        }

        bool isSound = true;
        foreach (YamlNode key in row.Children.Keys)
        {
            if (key is not YamlScalarNode { Value: string known } || !Keys.Contains(known, StringComparer.Ordinal))
            {
                fault(key, $"'{key}' is not known; a row has the keys {string.Join(", ", Keys)}");
                isSound = false;
            }
        }

        string Text(string key)
        {
            if (row.Children.TryGetValue(key, out YamlNode? value) && value is YamlScalarNode { Value.Length: > 0 } scalar)
            {
                return scalar.Value;
            }

            fault(row, $"'{key}' must be given");
            isSound = false;
            return "";
        }

        string kind = Text("kind");
        string absent = Text("absent-is-sea");
        string url = Text("url");
        string file = Text("file");
        if (isSound && (!IsFetchable(url) || kind is not ("surface" or "bare-earth") || absent is not ("true" or "false")))
        {
            fault(row, "'url' is an http or https address, 'kind' is surface or bare-earth, 'absent-is-sea' is true or false");
            isSound = false;
        }

        if (isSound && (file != Path.GetFileName(file) || GroundFileFormat.Of(file) is null))
        {
            fault(row, "'file' is a plain file name in a format that is read");
            isSound = false;
        }

        HeightKind heightKind = kind == "surface" ? HeightKind.Surface : HeightKind.BareEarth;
        TileSource source = new(Text("key"), Text("name"), url, file, heightKind, Text("datum"), absent == "true", Text("licence"), Text("source"));
        return isSound ? source : null;
    }

    private static ImmutableArray<TileSource> ReadShipped()
    {
        const string name = "catalogue/tile-sources.yaml";
        using Stream stream = typeof(TileSource).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The program was built without {name}.");
        using StreamReader reader = new(stream, Encoding.UTF8);
        return TryParse(reader.ReadToEnd(), name, out ImmutableArray<TileSource> sources, out ImmutableArray<CatalogueFault> faults)
            ? sources
            : throw new InvalidOperationException(string.Join(Environment.NewLine, faults));
    }
}
