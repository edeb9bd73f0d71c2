using System.Collections.Immutable;
using Mastwright.Quantities;
using Mastwright.Station.Supply;

namespace Mastwright.Storage.Plans;

/// <summary>Binds the supply of a fit-out.</summary>
internal sealed class SupplyBinder(PlanBinding binding)
{
    private const double SecondsPerYear = 31_557_600;

    private readonly Dictionary<string, PlanNode> nodes = new(StringComparer.Ordinal);
    private bool isWhole = true;

    /// <summary>The parts of a fit-out's supply; empty when it has none, or a fault in it.</summary>
    internal static ImmutableArray<SupplyPart> Bind(MappingReader fitOut, KeyShape key)
    {
        SupplyBinder binder = new(fitOut.Binding);
        ImmutableArray<SupplyPart> parts = binder.Items(fitOut.List(key), SupplyKeys.Item);
        if (!binder.isWhole)
        {
            return [];
        }

        if (SupplyOrder.Check(parts) is { } fault)
        {
            fitOut.Binding.Add(binder.nodes[fault.Part.PlanPath], fault.Part.PlanPath, "plan-contradiction", fault.Message, fault.Wanted);
            return [];
        }

        return parts;
    }

    /// <summary>Checks an item described as a part.</summary>
    internal static void CheckPart(PlanBinding binding, PlanNode node, string path) => new SupplyBinder(binding).Item(node, path, SupplyKeys.PartItem);

    private ImmutableArray<SupplyPart> Items(ImmutableArray<PlanItem> items, AlternativesShape alternatives)
    {
        List<SupplyPart> parts = [];
        foreach ((_, PlanNode node, string path) in items)
        {
            if (Item(node, path, alternatives) is { } part)
            {
                parts.Add(part);
            }
            else
            {
                isWhole = false;
            }
        }

        return [.. parts];
    }

    private SupplyPart? Item(PlanNode node, string path, AlternativesShape alternatives)
    {
        if (FeedBinder.Chosen(binding, node, path, alternatives, "a supply") is not { } shape || MappingReader.Open(binding, node, path, shape) is not { } reader)
        {
            return null;
        }

        int before = binding.Problems.Count;
        SupplyPart? part = Read(reader, shape);
        nodes[path] = node;
        reader.Done();

        // A value that was refused leaves a part that must not be reckoned with.
        return binding.Problems.Count == before ? part : null;
    }

    private SupplyPart? Read(MappingReader reader, MappingShape shape)
    {
        if (shape == SupplyKeys.Adapter)
        {
            return Source(reader, SupplySourceKind.MainsAdapter, SupplyKeys.AdapterVolts);
        }

        if (shape == SupplyKeys.Injector)
        {
            return Source(reader, SupplySourceKind.Injector, SupplyKeys.InjectorVolts);
        }

        if (shape == SupplyKeys.PowerOverCable)
        {
            return new SupplySource(reader.Path, SupplySourceKind.PowerOverCable)
            {
                ClassKey = reader.Key(SupplyKeys.ClassName),
                Volts = reader.Exact(SupplyKeys.ClassVolts),
                RatedWatts = reader.Exact(SupplyKeys.Power),
                Efficiency = Share(reader, SupplyKeys.Efficiency),
                Name = reader.Text(SupplyKeys.Name),
            };
        }

        if (shape == SupplyKeys.DataCable || shape == SupplyKeys.DcCable)
        {
            bool isData = shape == SupplyKeys.DataCable;
            int? pairs = isData ? reader.Whole(SupplyKeys.Pairs) : null;
            if (pairs == 3)
            {
                binding.Add(reader.Find(SupplyKeys.Pairs)!, reader.PathOf(SupplyKeys.Pairs), ScalarBinder.ValueCode, "Three pairs cannot carry power there and back.", "1, 2 or 4");
            }

            KeyShape typeKey = isData ? SupplyKeys.DataCableType : SupplyKeys.DcCableType;
            string type = reader.Find(typeKey) is { IsEmpty: true } ? "" : reader.Key(typeKey);
            return new SupplyCable(reader.Path, isData, type, reader.Quantity(SupplyKeys.Length) ?? default)
            {
                Conductor = Conductor(reader, typeKey, isData),
                Pairs = pairs,
                TemperatureCelsius = reader.Exact(SupplyKeys.CableTemperature),
                Name = reader.Text(SupplyKeys.Name),
            };
        }

        if (shape == SupplyKeys.Converter)
        {
            return new SupplyConverter(reader.Path, reader.Exact(SupplyKeys.ConverterVolts) ?? 1)
            {
                Kind = reader.Key(SupplyKeys.Kind),
                RatedWatts = reader.Exact(SupplyKeys.Rating),
                Efficiency = Share(reader, SupplyKeys.Efficiency),
                InputVolts = reader.Quantity(SupplyKeys.Input),
                Name = reader.Text(SupplyKeys.Name),
            };
        }

        if (shape == SupplyKeys.Fuse)
        {
            return new SupplyFuse(reader.Path, reader.Exact(SupplyKeys.FuseAmperes) ?? 1) { Name = reader.Text(SupplyKeys.Name) };
        }

        if (shape == SupplyKeys.Arrester)
        {
            double? ohms = reader.Find(SupplyKeys.ArresterOhms) is { IsEmpty: true } ? null : reader.Exact(SupplyKeys.ArresterOhms);
            return new SupplyArrester(reader.Path, ohms) { Name = reader.Text(SupplyKeys.Name) };
        }

        if (shape == SupplyKeys.Battery)
        {
            return Battery(reader);
        }

        if (shape == SupplyKeys.Board)
        {
            return Load(reader, isRadio: false);
        }

        if (shape == SupplyKeys.Radio)
        {
            return Load(reader, isRadio: true);
        }

        return shape == SupplyKeys.Part ? Part(reader) : Fork(reader, shape.Keys[0]);
    }

    /// <summary>The conductors of a cable that names no type; null where it names one.</summary>
    private CableConductor? Conductor(MappingReader reader, KeyShape type, bool isData)
    {
        // Every key is read, whichever of them counts.
        KeyShape[] own = [SupplyKeys.Gauge, SupplyKeys.Section, SupplyKeys.Metal, SupplyKeys.Strands, SupplyKeys.Carries, .. isData ? [SupplyKeys.CablePairs] : Array.Empty<KeyShape>()];
        KeyShape[] present = [.. own.Where(reader.Has)];
        CableConductor conductor = new()
        {
            Gauge = reader.Whole(SupplyKeys.Gauge),
            SquareMillimetres = reader.Exact(SupplyKeys.Section) * 1e6,
            Metal = reader.Has(SupplyKeys.Metal)
                ? reader.Choice(SupplyKeys.Metal) switch { 1 => ConductorMetal.Aluminium, 2 => ConductorMetal.CopperCladAluminium, _ => ConductorMetal.Copper }
                : null,
            Strands = reader.Has(SupplyKeys.Strands)
                ? reader.Choice(SupplyKeys.Strands) switch { 1 => ConductorStrands.Stranded, 2 => ConductorStrands.Flexible, _ => ConductorStrands.Solid }
                : null,
            MostAmperes = reader.Exact(SupplyKeys.Carries),
            CablePairs = isData ? reader.Whole(SupplyKeys.CablePairs) : null,
        };
        if (reader.Find(type) is { IsEmpty: false })
        {
            if (present.Length > 0)
            {
                binding.Add(
                    reader.Find(present[0])!, reader.PathOf(present[0]), "plan-contradiction", $"The cable names a type of the catalogue and its '{present[0].Name}' too.",
                    $"the type alone, or '{type.Name}' empty and its conductors");
            }

            return null;
        }

        if (reader.Has(SupplyKeys.Gauge) == reader.Has(SupplyKeys.Section))
        {
            KeyShape wrong = reader.Has(SupplyKeys.Section) ? SupplyKeys.Section : type;
            binding.Add(
                reader.Find(wrong)!, reader.PathOf(wrong), "plan-contradiction",
                wrong == type ? "The cable names no type of the catalogue, and nothing tells its conductors." : "The cable has a gauge and a section.",
                $"a type such as {((KeyNameShape)type.Value).Example}, or one of 'gauge' and 'section'");
        }

        if (conductor.CablePairs == 3)
        {
            binding.Add(reader.Find(SupplyKeys.CablePairs)!, reader.PathOf(SupplyKeys.CablePairs), ScalarBinder.ValueCode, "Data cables have two pairs or four.", "2 or 4");
        }

        return conductor;
    }

    private static SupplySource Source(MappingReader reader, SupplySourceKind kind, KeyShape volts) => new(reader.Path, kind)
    {
        Volts = reader.Exact(volts) ?? 1,
        RatedWatts = reader.Exact(SupplyKeys.Power),
        Efficiency = Share(reader, SupplyKeys.Efficiency),
        Name = reader.Text(SupplyKeys.Name),
    };

    private static SupplyBattery Battery(MappingReader reader) => new(reader.Path, reader.Key(SupplyKeys.CellType))
    {
        Series = reader.Whole(SupplyKeys.Series),
        Parallel = reader.Whole(SupplyKeys.Parallel),
        AmpereHours = reader.Exact(SupplyKeys.Capacity),
        AgeYears = reader.Quantity(SupplyKeys.Age)?.Map(seconds => seconds / SecondsPerYear),
        ChargeAtStart = reader.Quantity(SupplyKeys.Charge)?.Map(percent => percent / 100),
        CutOffVolts = reader.Exact(SupplyKeys.CutOff),
        ChargerAmperes = reader.Exact(SupplyKeys.ChargerAmperes),
        ChargerEfficiency = Share(reader, SupplyKeys.ChargerEfficiency),
        InputVolts = reader.Quantity(SupplyKeys.Input),
        StopsChargeInCold = reader.Has(SupplyKeys.StopsInCold) ? reader.YesNo(SupplyKeys.StopsInCold, fallback: false) : null,
        WantedHours = reader.Exact(SupplyKeys.Hold) / 3600,
        TemperatureCelsius = reader.Quantity(SupplyKeys.BatteryTemperature),
        Name = reader.Text(SupplyKeys.Name),
    };

    private SupplyLoad Load(MappingReader reader, bool isRadio)
    {
        KeyShape type = isRadio ? SupplyKeys.RadioType : SupplyKeys.BoardType;
        KeyShape share = isRadio ? SupplyKeys.TransmitShare : SupplyKeys.BusyShare;
        SupplyLoad load = new(reader.Path, isRadio, reader.Find(type) is { IsEmpty: true } ? "" : reader.Key(type))
        {
            SleepWatts = reader.Quantity(SupplyKeys.Sleep),
            SleepShare = Share(reader, SupplyKeys.SleepShare),
            AwakeWatts = reader.Quantity(isRadio ? SupplyKeys.Receive : SupplyKeys.Idle),
            PeakWatts = reader.Quantity(isRadio ? SupplyKeys.Transmit : SupplyKeys.Busy),
            PeakShare = Share(reader, share),
            BootWatts = reader.Exact(SupplyKeys.Boot),
            InputVolts = reader.Quantity(SupplyKeys.Input),
            Name = reader.Text(SupplyKeys.Name),
        };
        if (load.SleepShare + load.PeakShare > 1)
        {
            binding.Add(reader.Find(share)!, reader.PathOf(share), "plan-contradiction", "The shares of time come to more than 100 %.");
        }

        if (!isRadio)
        {
            Above(reader, SupplyKeys.Busy, load.PeakWatts, SupplyKeys.Idle, load.AwakeWatts);
        }

        Above(reader, isRadio ? SupplyKeys.Receive : SupplyKeys.Idle, load.AwakeWatts, SupplyKeys.Sleep, load.SleepWatts);
        return load;
    }

    /// <summary>Refuses a state that draws less than the one it is busier than.</summary>
    private void Above(MappingReader reader, KeyShape busier, Estimate? more, KeyShape calmer, Estimate? less)
    {
        if (more?.Median < less?.Median)
        {
            binding.Add(
                reader.Find(busier)!, reader.PathOf(busier), "plan-contradiction",
                FormattableString.Invariant($"It draws less '{busier.Name}' ({more?.Median:0.####} W) than '{calmer.Name}' ({less?.Median:0.####} W)."), $"as much as '{calmer.Name}' or more");
        }
    }

    private SupplyPart? Part(MappingReader reader)
    {
        reader.Has(SupplyKeys.PartName);
        return PartLookup.Find(binding, reader.Node, reader.Path, SupplyKeys.PartName, binding.SupplyParts, "supply", out PlanNode? part) && part is not null
            ? Item(part, reader.Path, SupplyKeys.PartItem)
            : null;
    }

    private SupplyBranches Fork(MappingReader reader, KeyShape key)
    {
        AlternativesShape below = SupplyKeys.Below(key);
        List<SupplyBranch> branches = [];
        foreach ((string name, PlanNode node, string path) in reader.Keyed(key))
        {
            if (node.Kind != PlanNodeKind.Sequence || node.Items.Count == 0)
            {
                binding.Add(node, path, ScalarBinder.ValueCode, "A branch is a list from the fork to its loads.", below.Wanted);
                continue;
            }

            branches.Add(new(name, Items(MappingReader.Items(node, path), below)));
        }

        if (branches.Count == 0 && reader.Find(key) is { } empty)
        {
            binding.Add(empty, reader.PathOf(key), ScalarBinder.ValueCode, "A fork has branches.", "branches by name, each a list that ends in a board or a radio");
        }

        return new(reader.Path, [.. branches]);
    }

    private static double? Share(MappingReader reader, KeyShape key) => reader.Exact(key) / 100;
}
