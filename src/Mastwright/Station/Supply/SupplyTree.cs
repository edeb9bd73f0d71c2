using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.HoldUp;

namespace Mastwright.Station.Supply;

/// <summary>Finds the numbers of each part of a supply in the plan and the catalogue.</summary>
internal sealed class SupplyTree
{
    private readonly SupplyContext context;
    private readonly Func<Estimate, double> length;
    private readonly LoadProfiles profiles;
    private bool isWhole = true;

    private SupplyTree(SupplyContext context, Func<Estimate, double> length)
    {
        this.context = context;
        this.length = length;
        profiles = new(context, Assumptions, Findings);
    }

    /// <summary>Where the power comes from; null for a supply that begins with its battery.</summary>
    internal SupplyFeed? Feed { get; private set; }

    /// <summary>The first part behind the source; null when a part's numbers are not known.</summary>
    internal SupplyNode? Root { get; private set; }

    /// <summary>The classes of power over cable that the catalogue knows.</summary>
    internal ImmutableArray<PowerClassRow> Classes => context.Catalogue.Classes;

    internal List<Assumption> Assumptions { get; } = [];

    internal List<Finding> Findings { get; } = [];

    /// <summary>Resolves the parts of a supply.</summary>
    /// <param name="parts">The parts, in an order that <see cref="SupplyOrder"/> passes.</param>
    /// <param name="context">What they are resolved with.</param>
    /// <param name="length">Which of a length's numbers counts.</param>
    internal static SupplyTree Of(ImmutableArray<SupplyPart> parts, SupplyContext context, Func<Estimate, double> length)
    {
        SupplyTree tree = new(context, length);
        ReadOnlySpan<SupplyPart> rest = parts.AsSpan();
        if (parts[0] is SupplySource source)
        {
            tree.Feed = tree.Source(source);
            rest = rest[1..];
        }

        SupplyNode? root = tree.Chain(rest, new(tree.Feed?.Class));
        tree.Root = tree.isWhole ? root : null;
        return tree;
    }

    private SupplyFeed? Source(SupplySource source)
    {
        SupplyCatalogue catalogue = context.Catalogue;
        ConverterRow? row = catalogue.Converter(ConverterRow.MainsAdapter);
        LinearCurve? efficiency = source.Efficiency is { } given ? LinearCurve.Level(given) : row?.Efficiency;
        if (source.Efficiency is null && row is not null)
        {
            Assumptions.Add(new("adapter-efficiency", $"{row.Name}: efficiency by its load", row.Source, source.PlanPath + "/efficiency"));
        }

        if (source.Kind != SupplySourceKind.PowerOverCable)
        {
            string label = source.Name.Length > 0 ? source.Name : source.Kind == SupplySourceKind.Injector ? "injector" : "mains adapter";
            double volts = source.Volts ?? throw new ArgumentException("A source that is of no class has a voltage.", nameof(source));
            return new(source, label, source.PlanPath, volts, volts, source.RatedWatts, null, efficiency);
        }

        if (catalogue.Class(source.ClassKey) is not { } power)
        {
            Unknown(source, "class of power over cable", source.ClassKey, catalogue.Classes.Select(one => one.Key));
            return null;
        }

        if (source.Volts is null)
        {
            Assumptions.Add(SupplyDefaults.SourceVolts(source.PlanPath, power));
        }

        return new(
            source, source.Name.Length > 0 ? source.Name : "power-over-cable source, " + power.Key, "catalogue " + power.Key + ": " + power.Source,
            source.Volts ?? power.SourceLeastVolts, source.Volts ?? power.MostVolts, source.RatedWatts ?? power.SourceWatts, power, efficiency);
    }

    private SupplyNode? Chain(ReadOnlySpan<SupplyPart> parts, Stretch stretch)
    {
        if (parts.IsEmpty)
        {
            return null;
        }

        ReadOnlySpan<SupplyPart> rest = parts[1..];
        switch (parts[0])
        {
            case SupplyCable cable:
                return Cable(cable, stretch, Chain(rest, stretch));
            case SupplyArrester arrester:
                if (arrester.Ohms is null)
                {
                    Assumptions.Add(SupplyDefaults.Arrester(arrester.PlanPath));
                }

                return Chain(rest, stretch) is { } behind
                    ? new SeriesNode(arrester.PlanPath, Label(arrester, "surge arrester"), arrester.PlanPath, arrester.Ohms ?? 0, null, behind)
                    : null;
            case SupplyFuse fuse:
                return Chain(rest, stretch) is { } fused
                    ? new FuseNode(fuse.PlanPath, Label(fuse, Text($"fuse {fuse.Amperes:0.###} A")), fuse.PlanPath, fuse.Amperes, fused)
                    : null;
            case SupplyConverter converter:
                return Converter(converter, stretch, Chain(rest, Stretch.Own));
            case SupplyBattery battery:
                return Battery(battery, stretch, Chain(rest, Stretch.Own));
            case SupplyBranches fork:
                // Not by a query: a missing number in one branch must not hide those of the next.
                List<SupplyNode> branches = [];
                foreach (SupplyBranch branch in fork.Branches)
                {
                    if (Chain(branch.Parts.AsSpan(), stretch) is { } found)
                    {
                        branches.Add(found);
                    }
                }

                return new ForkNode(fork.PlanPath, Label(fork, "fork"), fork.PlanPath, [.. branches]);
            case SupplyLoad load:
                if (profiles.Of(load) is { } profile)
                {
                    return new LoadNode(load.PlanPath, profile.Name, profiles.SourceOf(load), profile);
                }

                isWhole = false;
                return null;
            default:
                throw new ArgumentException($"A supply part of type {parts[0].GetType().Name} cannot stand here.", nameof(parts));
        }
    }

    private SeriesNode? Cable(SupplyCable cable, Stretch stretch, SupplyNode? next)
    {
        SupplyCatalogue catalogue = context.Catalogue;
        CableRow? known = cable.Conductor?.Row(cable.IsData, cable.PlanPath, Assumptions) ?? catalogue.Cable(cable.CableType);
        if (known is not { } row || row.IsData != cable.IsData)
        {
            string what = cable.IsData ? "data cable" : "cable with two cores";
            Unknown(cable, what, cable.CableType, catalogue.Cables.Where(one => one.IsData == cable.IsData).Select(one => one.Key));
            return null;
        }

        if (cable.TemperatureCelsius is null)
        {
            Assumptions.Add(SupplyDefaults.Cable(cable.PlanPath));
        }

        int pairs = cable.Pairs ?? stretch.Class?.Pairs ?? SupplyDefaults.InjectorPairs;
        if (row.IsData && cable.Pairs is null && stretch.Class is null)
        {
            Assumptions.Add(SupplyDefaults.Pairs(cable.PlanPath));
        }

        int each = row.IsData ? Math.Min(pairs, row.Pairs) : 1;
        double celsius = cable.TemperatureCelsius ?? SupplyDefaults.CableCelsius;
        double metres = length(cable.LengthMetres);
        double ohms = 2 * row.OhmsPerKilometre * metres / 1000 / each * Conductor.TemperatureFactor(celsius, row.Metal);
        return next is null
            ? null
            : new(cable.PlanPath, Label(cable, Text($"{metres:0.#} m of {row.Name}")), (cable.Conductor is null ? "catalogue " + row.Key : cable.PlanPath) + ": " + row.Source, ohms, new(row, metres, each, celsius), next);
    }

    private ConverterNode? Converter(SupplyConverter converter, Stretch stretch, SupplyNode? next)
    {
        string kind = converter.Kind.Length > 0 ? converter.Kind : ConverterRow.Buck;
        ConverterRow? row = context.Catalogue.Converter(kind);
        if (row is null && (converter.Efficiency is null || converter.Kind.Length > 0))
        {
            Unknown(converter, "kind of converter", kind, context.Catalogue.Converters.Select(one => one.Key));
            return null;
        }

        if (converter.Kind.Length == 0)
        {
            Assumptions.Add(SupplyDefaults.Kind(converter.PlanPath, row));
        }

        if (converter.Efficiency is null)
        {
            Assumptions.Add(new("converter-efficiency", $"{row!.Name}: efficiency by its load{(converter.RatedWatts is null ? ", at half of its rating" : "")}", row.Source, converter.PlanPath + "/efficiency"));
        }

        string label = Label(converter, Text($"converter to {converter.OutputVolts:0.##} V"));
        return next is null
            ? null
            : new(
                converter.PlanPath, label, row is not null && converter.Efficiency is null ? "catalogue " + row.Key + ": " + row.Source : converter.PlanPath + "/efficiency",
                converter.OutputVolts, converter.Efficiency is { } given ? LinearCurve.Level(given) : row!.Efficiency, converter.RatedWatts,
                Limits(converter.InputVolts, converter.PlanPath, stretch), next) { Row = row };
    }

    private BatteryNode? Battery(SupplyBattery battery, Stretch stretch, SupplyNode? next)
    {
        if (context.Catalogue.Cell(battery.CellType) is not { } cell)
        {
            Unknown(battery, "type of cell", battery.CellType, context.Catalogue.Cells.Select(one => one.Key));
            return null;
        }

        if (next is null)
        {
            return null;
        }

        string path = battery.PlanPath;
        BatteryPack pack = new() { Cell = cell, Series = battery.Series ?? 1, Parallel = battery.Parallel ?? 1, CellAmpereHours = battery.AmpereHours ?? cell.AmpereHours };
        if (battery.Series is null)
        {
            Assumptions.Add(SupplyDefaults.Series(path));
        }

        if (battery.Parallel is null)
        {
            Assumptions.Add(SupplyDefaults.Parallel(path));
        }

        if (battery.AmpereHours is null)
        {
            Assumptions.Add(new("cell-capacity", Text($"{cell.Name}: {cell.AmpereHours:0.##} Ah a cell"), cell.Source, path + "/capacity"));
        }

        bool isFed = Feed is not null;
        ConverterRow? charger = context.Catalogue.Converter(ConverterRow.Charger);
        double efficiency = battery.ChargerEfficiency ?? charger?.Efficiency.At(0.5) ?? 1;
        if (isFed && battery.ChargerEfficiency is null && charger is not null)
        {
            Assumptions.Add(new("charger-efficiency", Text($"efficiency of the charger {100 * efficiency:0} %"), charger.Source, path + "/charger-efficiency"));
        }

        double loads = SupplySolver.Amperes(next, pack.NominalVolts, SupplyDemand.Mean) ?? 0;
        double amperes = battery.ChargerAmperes ?? ((SupplyDefaults.ChargeRate * pack.AmpereHours) + loads);
        if (isFed && battery.ChargerAmperes is null)
        {
            Assumptions.Add(SupplyDefaults.Charger(path, amperes));
        }

        ChargedBattery charged = new()
        {
            Pack = pack,
            AgeYears = Given(battery.AgeYears, SupplyDefaults.BatteryYears, SupplyDefaults.Age(path)),
            ChargeAtStart = Given(battery.ChargeAtStart, SupplyDefaults.ChargeAtStart, SupplyDefaults.Charge(path)),
            Celsius = battery.TemperatureCelsius ?? context.BoxCelsius ?? Given(null, SupplyDefaults.BoxCelsius, SupplyDefaults.Box(context.PlanPath)),
            IsCelsiusAssumed = battery.TemperatureCelsius is null && context.BoxCelsius is null,
            ChargerAmperes = amperes,
            ChargerEfficiency = efficiency,
            CutOffVolts = battery.CutOffVolts,
            StopsChargeInCold = battery.StopsChargeInCold,
            WantedHours = battery.WantedHours ?? Given(null, Estimate.Exactly(SupplyDefaults.WantedHours), SupplyDefaults.Wanted(path)).Median,
            IsFed = isFed,
        };
        string label = Label(battery, Text($"battery of {pack.Series * pack.Parallel} × {cell.Name}"));
        return new(path, label, "catalogue " + cell.Key + ": " + cell.Source, charged, Limits(battery.InputVolts, path, stretch), next);
    }

    private Estimate Given(Estimate? given, Estimate fallback, Assumption assumption)
    {
        if (given is { } value)
        {
            return value;
        }

        Assumptions.Add(assumption);
        return fallback;
    }

    private static VoltageLimits Limits(Estimate? given, string path, Stretch stretch)
    {
        if (given is { } limits)
        {
            return new(limits.Low, limits.High, path + "/input");
        }

        return stretch.Class is { } row ? new(row.DeviceLeastVolts, row.MostVolts, row.Source) : VoltageLimits.Unknown;
    }

    private void Unknown(SupplyPart part, string what, string key, IEnumerable<string> known)
    {
        isWhole = false;
        Findings.Add(SupplyFindings.RowUnknown(part.PlanPath, what, key, [.. known]));
    }

    private static string Label(SupplyPart part, string usual) => part.Name.Length > 0 ? part.Name : usual;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    /// <summary>What feeds the stretch up to the next converter or battery.</summary>
    private sealed record Stretch(PowerClassRow? Class)
    {
        internal static Stretch Own { get; } = new((PowerClassRow?)null);
    }
}
