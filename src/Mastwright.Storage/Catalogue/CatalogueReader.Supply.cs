using Mastwright.Quantities;
using Mastwright.Station.HoldUp;
using Mastwright.Station.Supply;
using Mastwright.Storage.Plans;

namespace Mastwright.Storage.Catalogue;

/// <summary>The rows of the supply: cables, classes of power over data cable, converters, loads and cells.</summary>
internal sealed partial class CatalogueReader
{
    private static string[] SupplySections => ["cables", "power-classes", "converters", "loads", "cells"];

    private static readonly string[] CableKeys =
        ["key", "name", "pairs", "awg", "mm2", "ohm-per-km", "metal", "strands", "stranded", "most-ampere", "sheath-mm", "most-celsius", "source"];

    /// <summary>What a cable's resistance may come from: one of these.</summary>
    private static readonly string[] ConductorSizes = ["awg", "mm2", "ohm-per-km"];

    private static readonly string[] ClassKeys =
        ["key", "type", "pairs", "source-watt", "device-watt", "source-least-volt", "device-least-volt", "most-volt", "most-ampere", "source"];

    private static readonly string[] ConverterKeys = ["key", "name", "step", "efficiency", "source"];

    private static readonly string[] LoadKeys =
        ["key", "name", "kind", "sleep-watt", "awake-watt", "busy-watt", "transmit-watt", "boot-watt", "volt", "source"];

    private static readonly string[] CellKeys =
    [
        "key", "name", "ampere-hour", "volt", "full-volt", "cut-off-volt", "rest-volt", "capacity-by-celsius", "ohm-ampere-hour", "resistance-by-celsius",
        "aged-resistance", "rated-hours", "peukert", "charge-rate-by-celsius", "charge-least-celsius", "discharge-least-celsius", "most-celsius",
        "most-discharge-rate", "life-years", "charge-efficiency", "charge-taper", "source",
    ];

    private SupplyCatalogue Supply(PlanNode root) => new()
    {
        Cables = [.. Rows(root, "cables", Cable)],
        Classes = [.. Rows(root, "power-classes", PowerClass)],
        Converters = [.. Rows(root, "converters", Converter)],
        Loads = [.. Rows(root, "loads", Load)],
        Cells = [.. Rows(root, "cells", Cell)],
    };

    private CableRow? Cable(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, CableKeys);
        string? name = Text(row, place, "name", required: true);
        string? source = Text(row, place, "source", required: true);
        double? pairs = Number(row, place, "pairs", 0, 4, required: false) ?? 0;
        double? gauge = Number(row, place, "awg", 0, 40, required: false);
        double? section = Number(row, place, "mm2", 0.01, 1000, required: false);
        double? ohms = Number(row, place, "ohm-per-km", 0.001, 10_000, required: false);
        double stranded = Number(row, place, "stranded", 1, 1.2, required: false) ?? 1;
        double? amperes = Number(row, place, "most-ampere", 0.001, 1000, required: true);
        double? sheath = Number(row, place, "sheath-mm", 0.5, 100, required: true);
        double? celsius = Number(row, place, "most-celsius", 30, 300, required: true);
        ConductorMetal metal = Text(row, place, "metal", required: false) switch
        {
            null or "copper" => ConductorMetal.Copper,
            "aluminium" => ConductorMetal.Aluminium,
            "copper-clad-aluminium" => ConductorMetal.CopperCladAluminium,
            { } other => NotMetal(row, place, other),
        };
        ConductorStrands? strands = Text(row, place, "strands", required: false) switch
        {
            null => null,
            "solid" => ConductorStrands.Solid,
            "stranded" => ConductorStrands.Stranded,
            "flexible" => ConductorStrands.Flexible,
            { } other => NotStrands(row, place, other),
        };
        if (ConductorSizes.Count(key => row.Find(key) is not null) != 1)
        {
            Fault(row, place, "give one of 'awg', 'mm2' and 'ohm-per-km'");
            return null;
        }

        if (section is not null && row.Find("strands") is null)
        {
            Fault(row, place, "with 'mm2' give 'strands': solid, stranded or flexible");
            return null;
        }

        double? resistance = (ohms, gauge, section) switch
        {
            ({ } given, _, _) => given,
            (_, { } number, _) => Conductor.OhmsPerKilometre(Conductor.AreaSquareMillimetres((int)number), metal) * ConductorSections.LayFactor(strands ?? ConductorStrands.Solid),
            (_, _, { } nominal) => ConductorSections.OhmsPerKilometre(nominal, strands ?? ConductorStrands.Flexible, metal),
            _ => null,
        };
        return name is null || source is null || amperes is null || sheath is null || celsius is null || resistance is null ? null : new()
        {
            Key = key,
            Name = name,
            Pairs = (int)pairs.Value,
            OhmsPerKilometre = resistance.Value * stranded,
            Metal = metal,
            MostAmperes = amperes.Value,
            SheathMillimetres = sheath.Value,
            MostCelsius = celsius.Value,
            Source = source,
        };
    }

    private PowerClassRow? PowerClass(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, ClassKeys);
        string? source = Text(row, place, "source", required: true);
        double?[] numbers =
        [
            Number(row, place, "type", 1, 4, required: true), Number(row, place, "pairs", 2, 4, required: true),
            Number(row, place, "source-watt", 0.1, 200, required: true), Number(row, place, "device-watt", 0.1, 200, required: true),
            Number(row, place, "source-least-volt", 1, 60, required: true), Number(row, place, "device-least-volt", 1, 60, required: true),
            Number(row, place, "most-volt", 1, 60, required: true), Number(row, place, "most-ampere", 0.01, 10, required: true),
        ];
        return source is null || numbers is not [{ } type, { } pairs, { } sourceWatts, { } deviceWatts, { } sourceVolts, { } deviceVolts, { } most, { } amperes] ? null : new()
        {
            Key = key,
            Type = (int)type,
            Pairs = (int)pairs,
            SourceWatts = sourceWatts,
            DeviceWatts = deviceWatts,
            SourceLeastVolts = sourceVolts,
            DeviceLeastVolts = deviceVolts,
            MostVolts = most,
            MostAmperes = amperes,
            Source = source,
        };
    }

    private ConverterRow? Converter(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, ConverterKeys);
        string? name = Text(row, place, "name", required: true);
        string? source = Text(row, place, "source", required: true);
        LinearCurve? efficiency = Curve(row, place, "efficiency", 0, 10, 0.01, 1, "the share of the rated output: the efficiency");
        string? step = Text(row, place, "step", required: false);
        if (step is not (null or "down" or "up" or "either"))
        {
            Fault(row.Find("step")!, place + "/step", $"'{PlanProblemList.Clip(step)}' is no way to change a voltage; down, up or either is");
        }

        return name is null || source is null || efficiency is null ? null : new(key, name, efficiency, source)
        {
            Step = step switch { "down" => ConverterStep.Down, "up" => ConverterStep.Up, _ => ConverterStep.Either },
        };
    }

    private LoadRow? Load(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, LoadKeys);
        string? name = Text(row, place, "name", required: true);
        string? source = Text(row, place, "source", required: true);
        string? kind = Text(row, place, "kind", required: true);
        if (kind is not (null or "board" or "radio"))
        {
            Fault(row.Find("kind")!, place + "/kind", $"'{PlanProblemList.Clip(kind)}' is no kind of load; board or radio is");
            kind = null;
        }

        Estimate? sleep = Range(row, place, "sleep-watt", 0, 1000, required: true);
        Estimate? awake = Range(row, place, "awake-watt", 0, 1000, required: true);
        Estimate? busy = Range(row, place, "busy-watt", 0, 1000, required: kind == "board");
        LinearCurve? transmit = kind == "radio" ? Curve(row, place, "transmit-watt", -60, 60, 0, 1000, "the power setting in dBm: watts drawn") : null;
        foreach (CurvePoint point in transmit?.Points ?? [])
        {
            double sent = Math.Pow(10, (point.X - 30) / 10);
            if (point.Y < sent)
            {
                Fault(row.Find("transmit-watt")!, place + "/transmit-watt", FormattableString.Invariant($"at {point.X:0.#} dBm it sends {sent:0.###} W and draws {point.Y:0.###} W; no transmitter gives more than it takes"));
            }
        }

        double? boot = Number(row, place, "boot-watt", 0, 1000, required: true);
        Estimate? volts = Range(row, place, "volt", 0, 1000, required: true);
        return name is null || source is null || kind is null || sleep is null || awake is null || boot is null || volts is null || (kind == "board" ? busy is null : transmit is null) ? null : new()
        {
            Key = key,
            Name = name,
            IsRadio = kind == "radio",
            SleepWatts = sleep.Value,
            AwakeWatts = awake.Value,
            BusyWatts = busy,
            TransmitWatts = transmit,
            BootWatts = boot.Value,
            LeastVolts = volts.Value.Low,
            MostVolts = volts.Value.High,
            Source = source,
        };
    }

    private CellRow? Cell(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, CellKeys);
        string? name = Text(row, place, "name", required: true);
        string? source = Text(row, place, "source", required: true);
        double?[] numbers =
        [
            Number(row, place, "ampere-hour", 0.01, 10_000, required: true), Number(row, place, "volt", 0.5, 20, required: true),
            Number(row, place, "full-volt", 0.5, 20, required: true), Number(row, place, "cut-off-volt", 0.1, 20, required: true),
            Number(row, place, "ohm-ampere-hour", 1e-6, 100, required: true), Number(row, place, "aged-resistance", 1, 20, required: true),
            Number(row, place, "rated-hours", 0.1, 200, required: true), Number(row, place, "peukert", 1, 2, required: true),
            Number(row, place, "charge-least-celsius", -60, 60, required: true), Number(row, place, "discharge-least-celsius", -60, 60, required: true),
            Number(row, place, "most-celsius", 0, 120, required: true), Number(row, place, "most-discharge-rate", 0.01, 100, required: true),
            Number(row, place, "charge-efficiency", 0.1, 1, required: true),
        ];
        LinearCurve? rest = Curve(row, place, "rest-volt", 0, 1, 0.1, 20, "the state of charge: volts at rest");
        LinearCurve? resistance = Curve(row, place, "resistance-by-celsius", -60, 120, 0.1, 100, "°C: the factor on that at 25 °C");
        LinearCurve? charge = Curve(row, place, "charge-rate-by-celsius", -60, 120, 0, 20, "°C: the share of the capacity an hour");
        RangeCurve? capacity = RangeByPlace(row, place, "capacity-by-celsius", -60, 120, 0, 1.2);
        Estimate? life = Range(row, place, "life-years", 0.1, 100, required: true);
        Estimate? taper = Range(row, place, "charge-taper", 1, 10, required: true);
        return name is null || source is null || rest is null || resistance is null || charge is null || capacity is null || life is null || taper is null
            || numbers is not [{ } ampereHours, { } volts, { } full, { } cutOff, { } ohms, { } aged, { } hours, { } peukert, { } chargeLeast, { } dischargeLeast, { } most, { } rate, { } efficiency]
            ? null
            : new()
            {
                Key = key,
                Name = name,
                AmpereHours = ampereHours,
                NominalVolts = volts,
                FullVolts = full,
                CutOffVolts = cutOff,
                RestVolts = rest,
                CapacityByCelsius = capacity,
                OhmAmpereHours = ohms,
                ResistanceByCelsius = resistance,
                AgedResistanceFactor = aged,
                RatedHours = hours,
                PeukertExponent = peukert,
                ChargeRateByCelsius = charge,
                ChargeLeastCelsius = chargeLeast,
                DischargeLeastCelsius = dischargeLeast,
                MostCelsius = most,
                MostDischargeRate = rate,
                LifeYears = life.Value,
                ChargeEfficiency = efficiency,
                ChargeTaper = taper.Value,
                Source = source,
            };
    }

    private ConductorStrands? NotStrands(PlanNode row, string place, string found)
    {
        Fault(row.Find("strands")!, place + "/strands", $"'{PlanProblemList.Clip(found)}' is no make-up of a conductor; solid, stranded or flexible is");
        return null;
    }

    private ConductorMetal NotMetal(PlanNode row, string place, string found)
    {
        Fault(row.Find("metal")!, place + "/metal", $"'{PlanProblemList.Clip(found)}' is no metal known here; copper, aluminium or copper-clad-aluminium is");
        return ConductorMetal.Copper;
    }

    /// <summary>A curve as { place: value, … }.</summary>
    private LinearCurve? Curve(PlanNode map, string place, string key, double leastX, double mostX, double leastY, double mostY, string form)
    {
        if (Points(map, place, key, form) is not { } points)
        {
            return null;
        }

        List<CurvePoint> read = [];
        foreach (PlanEntry point in points.Entries)
        {
            double? x = Number(point.Key, point.Line, place + "/" + key, leastX, mostX);
            double? y = Number(point.Value, place + "/" + key + "/" + point.Key, leastY, mostY);
            if (x is { } at && y is { } value)
            {
                read.Add(new(at, value));
            }
        }

        return read.Count == points.Entries.Count ? new(read) : null;
    }

    /// <summary>A curve of ranges as { place: [lowest, middle, highest], … }.</summary>
    private RangeCurve? RangeByPlace(PlanNode map, string place, string key, double leastX, double mostX, double leastY, double mostY)
    {
        if (Points(map, place, key, "°C: [lowest, middle, highest]") is not { } points)
        {
            return null;
        }

        List<(double X, Estimate Y)> read = [];
        foreach (PlanEntry point in points.Entries)
        {
            double? x = Number(point.Key, point.Line, place + "/" + key, leastX, mostX);
            Estimate? y = Range(point.Value, place + "/" + key + "/" + point.Key, leastY, mostY);
            if (x is { } at && y is { } value)
            {
                read.Add((at, value));
            }
        }

        return read.Count == points.Entries.Count
            ? new(
                new(read.Select(point => new CurvePoint(point.X, point.Y.Low))),
                new(read.Select(point => new CurvePoint(point.X, point.Y.Median))),
                new(read.Select(point => new CurvePoint(point.X, point.Y.High))))
            : null;
    }

    private PlanNode? Points(PlanNode map, string place, string key, string form)
    {
        if (map.Find(key) is { Kind: PlanNodeKind.Mapping, Entries.Count: > 0 } points)
        {
            return points;
        }

        Fault(map.Find(key) ?? map, place + "/" + key, $"give the points as {{ {form}, … }}");
        return null;
    }

    private Estimate? Range(PlanNode map, string place, string key, double least, double most, bool required)
    {
        if (map.Find(key) is { } node)
        {
            return Range(node, place + "/" + key, least, most);
        }

        if (required)
        {
            Missing(map, place, key);
        }

        return null;
    }

    /// <summary>One number, or [lowest, middle, highest].</summary>
    private Estimate? Range(PlanNode node, string place, double least, double most)
    {
        if (node.Kind != PlanNodeKind.Sequence)
        {
            return Number(node, place, least, most) is { } one ? Estimate.Exactly(one) : null;
        }

        if (node.Items.Count != 3)
        {
            Fault(node, place, "give one number, or [lowest, middle, highest]");
            return null;
        }

        double?[] numbers = [.. node.Items.Select(item => Number(item, place, least, most))];
        if (numbers is not [{ } low, { } middle, { } high])
        {
            return null;
        }

        if (!(low <= middle && middle <= high))
        {
            Fault(node, place, "lowest, middle and highest must rise");
            return null;
        }

        return Estimate.Of(low, middle, high);
    }
}
