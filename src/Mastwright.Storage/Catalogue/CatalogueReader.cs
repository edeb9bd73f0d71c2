using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Feed;
using Mastwright.Station.Radio;
using Mastwright.Storage.Plans;

namespace Mastwright.Storage.Catalogue;

/// <summary>Binds the tree of a catalogue to its rows and collects every fault.</summary>
internal sealed partial class CatalogueReader(string file)
{
    private static readonly string[] RootKeys = ["format", "line-types", "feed-parts", "modems", .. LawSections, .. SupplySections, .. StructureSections, .. BoxSections];
    private static readonly string[] LineKeys = ["key", "name", "reference-temperature-celsius", "points", "source"];
    private static readonly string[] PartKeys = ["key", "loss-db", "source"];
    private static readonly string[] LimitKeys = ["db", "source"];

    private static readonly string[] ModemKeys =
        ["key", "modulation", "snr-limits", "bandwidths-khz", "frequency-tolerance-fraction", "bit-error-rate", "implementation-loss-db", "source"];

    internal List<CatalogueFault> Faults { get; } = [];

    internal StationCatalogue Read(string text)
    {
        PlanProblemList problems = new();
        PlanSource? source = PlanSource.FromBytes(file, "", Encoding.UTF8.GetBytes(text), out PlanProblem? unreadable);
        if (unreadable is not null)
        {
            problems.Add(unreadable);
        }

        PlanNode? root = source is null ? null : PlanTreeReader.Read(source, problems, TreeWords.Catalogue);
        StationCatalogue rows = root is null ? StationCatalogue.Empty : Bind(root);
        Faults.AddRange(problems.Sorted(file).Select(OfProblem));
        Faults.Sort((one, other) => one.Line.CompareTo(other.Line));
        return rows;
    }

    private StationCatalogue Bind(PlanNode root)
    {
        KnownKeys(root, "", RootKeys);

        // Without its format it is read as the one there is; of another format nothing is known.
        return Number(root, "", "format", 1, 1, required: true) is null && root.Find("format") is not null
            ? StationCatalogue.Empty
            : new(Rows(root, "line-types", LineType), Rows(root, "feed-parts", Part), Rows(root, "modems", Modem))
            {
                Law = Law(root),
                Supply = Supply(root),
                Structure = Structure(root),
                Earthing = Earthing(root),
                Box = Box(root),
            };
    }

    private CatalogueFault OfProblem(PlanProblem problem) =>
        new(file, problem.Line, "", problem.Message + (problem.Wanted.Length > 0 ? $" Wanted {problem.Wanted}." : ""));

    private List<T> Rows<T>(PlanNode root, string section, Func<PlanNode, string, string, T?> bind)
        where T : class
    {
        List<T> rows = [];
        if (root.Find(section) is not { } node)
        {
            return rows;
        }

        if (node.Kind != PlanNodeKind.Sequence)
        {
            Fault(node, section, "must be a list of rows");
            return rows;
        }

        HashSet<string> seen = new(StringComparer.OrdinalIgnoreCase);
        for (int i = 0; i < node.Items.Count; i++)
        {
            PlanNode row = node.Items[i];
            if (row.Kind != PlanNodeKind.Mapping)
            {
                Fault(row, section, "each row is a mapping");
                continue;
            }

            // A row without a key is called by its number, so that its other faults are told with it.
            string number = string.Create(CultureInfo.InvariantCulture, $"{section}/{i + 1}");
            string? key = Text(row, number, "key", required: true);
            string place = key is null ? number : section + "/" + key;
            if (key is not null && !seen.Add(key))
            {
                Fault(row, place, "the key stands twice in this file; give each row its own");
            }

            if (bind(row, place, key ?? "") is { } bound)
            {
                rows.Add(bound);
            }
        }

        return rows;
    }

    private LineTypeRow? LineType(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, LineKeys);
        string? name = Text(row, place, "name", required: true);
        string? source = Text(row, place, "source", required: true);
        double? temperature = Number(row, place, "reference-temperature-celsius", -60, 100, required: false) ?? 20;
        if (row.Find("points") is not { Kind: PlanNodeKind.Mapping } points)
        {
            Fault(row.Find("points") ?? row, place + "/points", "give the published points as { MHz: dB per 100 m, … }");
            return null;
        }

        ImmutableArray<AttenuationPoint>.Builder read = ImmutableArray.CreateBuilder<AttenuationPoint>();
        foreach (PlanEntry point in points.Entries)
        {
            double? megahertz = Number(point.Key, point.Line, place + "/points", 0.01, 100_000);
            double? db = Number(point.Value, place + "/points/" + point.Key, 0.001, 10_000);
            if (megahertz is { } frequency && db is { } attenuation)
            {
                read.Add(new(frequency * 1e6, attenuation));
            }
        }

        if (read.Count < points.Entries.Count)
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

    private PartLossRow? Part(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, PartKeys);
        string? source = Text(row, place, "source", required: true);
        return Rising(row, place, "loss-db", 0, 100, "give the loss in dB as [lowest, middle, highest]") is { } loss && source is not null
            ? new(key, loss, source)
            : null;
    }

    /// <summary>A list of lowest, middle and highest.</summary>
    private Estimate? Rising(PlanNode row, string place, string name, double least, double most, string wanted)
    {
        if (row.Find(name) is not { Kind: PlanNodeKind.Sequence, Items.Count: 3 } range)
        {
            Fault(row.Find(name) ?? row, $"{place}/{name}", wanted);
            return null;
        }

        double?[] numbers = [.. range.Items.Select(node => Number(node, $"{place}/{name}", least, most))];
        if (numbers is not [{ } low, { } middle, { } high])
        {
            return null;
        }

        if (!(low <= middle && middle <= high))
        {
            Fault(range, $"{place}/{name}", "lowest, middle and highest must rise");
            return null;
        }

        return Estimate.Of(low, middle, high);
    }

    private ModemRow? Modem(PlanNode row, string place, string key)
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
        if (row.Find("snr-limits") is { } given)
        {
            Limits(given, place + "/snr-limits", limits, sources);
        }

        double[] bandwidths = [];
        if (row.Find("bandwidths-khz") is { } list)
        {
            bandwidths = list.Kind == PlanNodeKind.Sequence
                ? [.. list.Items.Select(item => Number(item, place + "/bandwidths-khz", 1, 2000)).OfType<double>().Select(kilohertz => kilohertz * 1000)]
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
        PlanNode given, string place, ImmutableSortedDictionary<int, double>.Builder limits, ImmutableSortedDictionary<int, string>.Builder sources)
    {
        if (given.Kind != PlanNodeKind.Mapping)
        {
            Fault(given, place, "give the limits as { spreading factor: { db: …, source: … } }");
            return;
        }

        foreach (PlanEntry entry in given.Entries)
        {
            string at = place + "/" + entry.Key;
            double? factor = Number(entry.Key, entry.Line, at, 5, 12);
            if (entry.Value.Kind != PlanNodeKind.Mapping)
            {
                Fault(entry.Value, at, "give a spreading factor from 5 to 12 with { db: …, source: … }");
                continue;
            }

            KnownKeys(entry.Value, at, LimitKeys);
            double? db = Number(entry.Value, at, "db", -40, 40, required: true);
            string? source = Text(entry.Value, at, "source", required: true);
            if (factor is { } number && db is { } limit && source is not null)
            {
                limits[(int)number] = limit;
                sources[(int)number] = source;
            }
        }
    }

    private Modulation? NotModulation(PlanNode row, string place, string found)
    {
        Fault(row, place + "/modulation", $"'{found}' is not a modulation; chirp-spread-spectrum or frequency-shift-keying is");
        return null;
    }

    private double[] NotList(PlanNode node, string place)
    {
        Fault(node, place, "must be a list of numbers");
        return [];
    }

    private void KnownKeys(PlanNode map, string place, string[] known)
    {
        foreach (PlanEntry entry in map.Entries)
        {
            if (!known.Contains(entry.Key, StringComparer.Ordinal))
            {
                Faults.Add(new(file, entry.Line, place, $"'{PlanProblemList.Clip(entry.Key)}' is not a key here; known are {string.Join(", ", known)}"));
            }
        }
    }

    private string? Text(PlanNode map, string place, string key, bool required)
    {
        PlanNode? node = map.Find(key);
        if (node is { Kind: PlanNodeKind.Scalar, Text.Length: > 0 })
        {
            return node.Text;
        }

        if (node is not null)
        {
            Fault(node, place + "/" + key, "must be a text");
        }
        else if (required)
        {
            Missing(map, place + "/" + key, key);
        }

        return null;
    }

    private double? Number(PlanNode map, string place, string key, double least, double most, bool required)
    {
        PlanNode? node = map.Find(key);
        if (node is not null)
        {
            return Number(node, place.Length == 0 ? key : place + "/" + key, least, most);
        }

        if (required)
        {
            Missing(map, place, key);
        }

        return null;
    }

    private double? Number(PlanNode node, string place, double least, double most)
    {
        if (node.Kind == PlanNodeKind.Scalar)
        {
            return node.IsRefused ? null : Number(node.Text, node.Line, place, least, most);
        }

        string kind = node.Kind == PlanNodeKind.Mapping ? "keys and values stand" : "a list stands";
        Fault(node, place, string.Create(CultureInfo.InvariantCulture, $"{kind} where a number from {least} to {most} belongs"));
        return null;
    }

    private double? Number(string text, int line, string place, double least, double most)
    {
        const NumberStyles Style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;
        if (double.TryParse(text, Style, CultureInfo.InvariantCulture, out double value) && value >= least && value <= most)
        {
            return value;
        }

        Faults.Add(new(file, line, place, string.Create(CultureInfo.InvariantCulture, $"'{PlanProblemList.Clip(text)}' is not a number from {least} to {most}")));
        return null;
    }

    private void Missing(PlanNode map, string place, string key)
    {
        if (!map.LacksKeys)
        {
            Fault(map, place, $"the key '{key}' is missing");
        }
    }

    /// <summary>Adds a fault, unless what stands there was refused as it was read.</summary>
    private void Fault(PlanNode node, string place, string text)
    {
        if (!node.IsRefused)
        {
            Faults.Add(new(file, node.Line, place, text));
        }
    }
}
