using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Feed;
using Mastwright.Station.Radio;
using YamlDotNet.RepresentationModel;

namespace Mastwright.Storage.Catalogue;

/// <summary>Binds the YAML nodes of a catalogue to its rows and collects every fault.</summary>
internal sealed class CatalogueReader(string file)
{
    private static readonly string[] RootKeys = ["format", "line-types", "feed-parts", "modems"];
    private static readonly string[] LineKeys = ["key", "name", "reference-temperature-celsius", "points", "source"];
    private static readonly string[] PartKeys = ["key", "loss-db", "source"];
    private static readonly string[] LimitKeys = ["db", "source"];

    private static readonly string[] ModemKeys =
        ["key", "modulation", "snr-limits", "bandwidths-khz", "frequency-tolerance-fraction", "bit-error-rate", "implementation-loss-db", "source"];

    internal List<CatalogueFault> Faults { get; } = [];

    internal StationCatalogue Read(string text)
    {
        YamlMappingNode? root = CatalogueText.Parse(text, (line, what) => Faults.Add(new(file, line, "", what)));
        if (root is null)
        {
            return StationCatalogue.Empty;
        }

        KnownKeys(root, "", RootKeys);
        if (Number(root, "", "format", 1, 1, required: true) is null)
        {
            return StationCatalogue.Empty;
        }

        return new(Rows(root, "line-types", LineType), Rows(root, "feed-parts", Part), Rows(root, "modems", Modem));
    }

    private List<T> Rows<T>(YamlMappingNode root, string section, Func<YamlMappingNode, string, string, T?> bind)
        where T : class
    {
        List<T> rows = [];
        if (Child(root, section) is not { } node)
        {
            return rows;
        }

        if (node is not YamlSequenceNode list)
        {
            Fault(node, section, "must be a list of rows");
            return rows;
        }

        HashSet<string> seen = new(StringComparer.OrdinalIgnoreCase);
        foreach (YamlNode item in list)
        {
            if (item is not YamlMappingNode row)
            {
                Fault(item, section, "each row is a mapping");
                continue;
            }

            string? key = Text(row, section, "key", required: true);
            if (key is null)
            {
                continue;
            }

            string place = section + "/" + key;
            if (!seen.Add(key))
            {
                Fault(row, place, "the key stands twice in this file; give each row its own");
                continue;
            }

            if (bind(row, place, key) is { } bound)
            {
                rows.Add(bound);
            }
        }

        return rows;
    }

    private LineTypeRow? LineType(YamlMappingNode row, string place, string key)
    {
        KnownKeys(row, place, LineKeys);
        string? name = Text(row, place, "name", required: true);
        string? source = Text(row, place, "source", required: true);
        double? temperature = Number(row, place, "reference-temperature-celsius", -60, 100, required: false) ?? 20;
        if (Child(row, "points") is not YamlMappingNode points)
        {
            Fault(row, place + "/points", "give the published points as { MHz: dB per 100 m, … }");
            return null;
        }

        ImmutableArray<AttenuationPoint>.Builder read = ImmutableArray.CreateBuilder<AttenuationPoint>();
        foreach ((YamlNode frequency, YamlNode attenuation) in points)
        {
            if (Number(frequency, place + "/points", 0.01, 100_000) is { } megahertz
                && Number(attenuation, place + "/points/" + frequency, 0.001, 10_000) is { } db)
            {
                read.Add(new(megahertz * 1e6, db));
            }
        }

        if (read.Count < points.Children.Count)
        {
            return null;
        }

        if (read.Select(point => point.FrequencyHz).Distinct().Count() < 2)
        {
            Fault(points, place + "/points", "a fit needs points at two or more frequencies");
            return null;
        }

        return name is null || source is null ? null : new(key, name, read.ToImmutable(), temperature.Value, source);
    }

    private PartLossRow? Part(YamlMappingNode row, string place, string key)
    {
        KnownKeys(row, place, PartKeys);
        string? source = Text(row, place, "source", required: true);
        if (Child(row, "loss-db") is not YamlSequenceNode { Children.Count: 3 } range)
        {
            Fault(row, place + "/loss-db", "give the loss in dB as [lowest, middle, highest]");
            return null;
        }

        double?[] numbers = [.. range.Select(node => Number(node, place + "/loss-db", 0, 100))];
        if (numbers is not [{ } low, { } middle, { } high] || source is null)
        {
            return null;
        }

        if (!(low <= middle && middle <= high))
        {
            Fault(range, place + "/loss-db", "lowest, middle and highest must rise");
            return null;
        }

        return new(key, Estimate.Of(low, middle, high), source);
    }

    private ModemRow? Modem(YamlMappingNode row, string place, string key)
    {
        KnownKeys(row, place, ModemKeys);
        string? source = Text(row, place, "source", required: true);
        Modulation? modulation = Text(row, place, "modulation", required: true) switch
        {
            "chirp-spread-spectrum" => Modulation.ChirpSpreadSpectrum,
            "frequency-shift-keying" => Modulation.FrequencyShiftKeying,
            null => null,
            { } other => NotModulation(row, place, other),
        };
        ImmutableSortedDictionary<int, double>.Builder limits = ImmutableSortedDictionary.CreateBuilder<int, double>();
        ImmutableSortedDictionary<int, string>.Builder sources = ImmutableSortedDictionary.CreateBuilder<int, string>();
        if (Child(row, "snr-limits") is { } given)
        {
            Limits(given, place + "/snr-limits", limits, sources);
        }

        double[] bandwidths = [];
        if (Child(row, "bandwidths-khz") is { } list)
        {
            bandwidths = list is YamlSequenceNode items
                ? [.. items.Select(item => Number(item, place + "/bandwidths-khz", 1, 2000)).OfType<double>().Select(kilohertz => kilohertz * 1000)]
                : NotList(list, place + "/bandwidths-khz");
        }

        double? tolerance = Number(row, place, "frequency-tolerance-fraction", 0.001, 1, required: false);
        double? errorRate = Number(row, place, "bit-error-rate", 1e-12, 0.4, required: false);
        double implementation = Number(row, place, "implementation-loss-db", 0, 30, required: false) ?? 0;
        return source is null || modulation is null ? null : new()
        {
            Key = key,
            Modulation = modulation.Value,
            SnrLimitDb = limits.ToImmutable(),
            SnrLimitSource = sources.ToImmutable(),
            BandwidthsHz = [.. bandwidths],
            FrequencyToleranceFraction = tolerance,
            BitErrorRate = errorRate,
            ImplementationLossDb = implementation,
            Source = source,
        };
    }

    private void Limits(
        YamlNode given, string place, ImmutableSortedDictionary<int, double>.Builder limits, ImmutableSortedDictionary<int, string>.Builder sources)
    {
        if (given is not YamlMappingNode map)
        {
            Fault(given, place, "give the limits as { spreading factor: { db: …, source: … } }");
            return;
        }

        foreach ((YamlNode factor, YamlNode value) in map)
        {
            string at = place + "/" + factor;
            if (Number(factor, at, 5, 12) is not { } number || value is not YamlMappingNode limit)
            {
                Fault(value, at, "give a spreading factor from 5 to 12 with { db: …, source: … }");
                continue;
            }

            KnownKeys(limit, at, LimitKeys);
            if (Number(limit, at, "db", -40, 40, required: true) is { } db && Text(limit, at, "source", required: true) is { } source)
            {
                limits[(int)number] = db;
                sources[(int)number] = source;
            }
        }
    }

    private Modulation? NotModulation(YamlMappingNode row, string place, string found)
    {
        Fault(row, place + "/modulation", $"'{found}' is not a modulation; chirp-spread-spectrum or frequency-shift-keying is");
        return null;
    }

    private double[] NotList(YamlNode node, string place)
    {
        Fault(node, place, "must be a list of numbers");
        return [];
    }

    private void KnownKeys(YamlMappingNode map, string place, string[] known)
    {
        foreach ((YamlNode key, _) in map)
        {
            if (!known.Contains(key.ToString(), StringComparer.Ordinal))
            {
                Fault(key, place, $"'{key}' is not a key here; known are {string.Join(", ", known)}");
            }
        }
    }

    private string? Text(YamlMappingNode map, string place, string key, bool required)
    {
        YamlNode? node = Child(map, key);
        if (node is YamlScalarNode { Value.Length: > 0 } scalar)
        {
            return scalar.Value;
        }

        if (node is not null || required)
        {
            Fault(node ?? map, place + "/" + key, node is null ? $"the key '{key}' is missing" : "must be a text");
        }

        return null;
    }

    private double? Number(YamlMappingNode map, string place, string key, double least, double most, bool required)
    {
        YamlNode? node = Child(map, key);
        if (node is not null)
        {
            return Number(node, place.Length == 0 ? key : place + "/" + key, least, most);
        }

        if (required)
        {
            Fault(map, place, $"the key '{key}' is missing");
        }

        return null;
    }

    private double? Number(YamlNode node, string place, double least, double most)
    {
        if (node is YamlScalarNode scalar
            && double.TryParse(scalar.Value, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out double value)
            && value >= least && value <= most)
        {
            return value;
        }

        Fault(node, place, string.Create(CultureInfo.InvariantCulture, $"'{Short(node)}' is not a number from {least} to {most}"));
        return null;
    }

    private void Fault(YamlNode node, string place, string text) => Faults.Add(new(file, node.Start.Line, place, text));

    private static YamlNode? Child(YamlMappingNode map, string key) =>
        map.Children.TryGetValue(new YamlScalarNode(key), out YamlNode? node) ? node : null;

    private static string Short(YamlNode node)
    {
        string text = node is YamlScalarNode scalar ? scalar.Value ?? "" : node.NodeType.ToString();
        return text.Length > 40 ? string.Concat(text.AsSpan(0, 40), "…") : text;
    }
}
