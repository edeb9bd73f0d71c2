using System.Collections.Immutable;
using Mastwright.Quantities;
using Mastwright.Station.HoldUp;

namespace Mastwright.Station.Supply;

/// <summary>What hangs on a battery of a supply, as its terminals see it.</summary>
internal static class BatteryLoads
{
    /// <summary>The load of a battery; null when what hangs on it cannot work even at the battery's full voltage.</summary>
    internal static BatteryLoad? Of(BatteryNode battery, SupplyNode root)
    {
        BatteryPack pack = battery.Battery.Pack;
        double bus = pack.NominalVolts;
        if (SupplySolver.Amperes(battery.Next, bus, SupplyDemand.LowMean) is not { } low
            || SupplySolver.Amperes(battery.Next, bus, SupplyDemand.Mean) is not { } mean
            || SupplySolver.Amperes(battery.Next, bus, SupplyDemand.HighMean) is not { } high)
        {
            return null;
        }

        (double cutOff, string from) = CutOff(battery);
        double peak = (SupplySolver.Amperes(battery.Next, cutOff, SupplyDemand.RunningPeak) ?? SupplySolver.Amperes(battery.Next, bus, SupplyDemand.RunningPeak) ?? mean) * cutOff;
        ImmutableArray<string> held = [.. Names(battery.Next)];
        return new(Estimate.Of(low * bus, mean * bus, high * bus), Math.Max(peak, mean * bus), cutOff, from, held, [.. Names(root).Except(held)]);
    }

    /// <summary>The batteries of a supply.</summary>
    internal static IEnumerable<BatteryNode> In(SupplyNode node) =>
        node is BatteryNode battery ? [battery] : Behind(node).SelectMany(In);

    /// <summary>The parts that hang right behind a part.</summary>
    internal static IEnumerable<SupplyNode> Behind(SupplyNode node) => node switch
    {
        SeriesNode series => [series.Next],
        FuseNode fuse => [fuse.Next],
        ConverterNode converter => [converter.Next],
        BatteryNode battery => [battery.Next],
        ForkNode fork => fork.Branches,
        _ => [],
    };

    /// <summary>The least voltage that a part wants at its input; null when nobody said.</summary>
    internal static double? LeastVolts(SupplyNode node) => node switch
    {
        LoadNode load => load.Profile.LeastVolts,
        ConverterNode converter => converter.Input.Least,
        BatteryNode battery => battery.Input.Least,
        _ => null,
    };

    /// <summary>The voltage at which the battery is switched off or a load gives up, whichever comes first, and what sets it.</summary>
    private static (double Volts, string From) CutOff(BatteryNode battery)
    {
        BatteryPack pack = battery.Battery.Pack;
        double cells = pack.Cell.CutOffVolts * pack.Series;
        (double Volts, string From) found = battery.Battery.CutOffVolts is { } given && given > cells
            ? (given, battery.PlanPath + "/cut-off")
            : (cells, "catalogue " + pack.Cell.Key + ": " + pack.Cell.Source);
        if (Holds(battery, found.Volts))
        {
            return found;
        }

        double fails = found.Volts;
        double holds = pack.FullVolts;
        if (!Holds(battery, holds))
        {
            return (holds, "the least voltage of a load behind the battery");
        }

        while (holds - fails > 1e-9)
        {
            double middle = (fails + holds) / 2;
            (fails, holds) = Holds(battery, middle) ? (fails, middle) : (middle, holds);
        }

        return (holds, "the least voltage of a load behind the battery");
    }

    /// <summary>Whether everything up to the next converter has the voltage that it wants while all runs at its peak.</summary>
    private static bool Holds(BatteryNode battery, double volts)
    {
        ImmutableArray<SupplyStage> stages = SupplySolver.Stages(battery.Next, volts, SupplyDemand.RunningPeak);
        return !stages.IsEmpty && stages.Where((_, i) => IsOnBus(stages, i)).All(stage => LeastVolts(stage.Node) is not { } least || stage.InputVolts >= least);
    }

    private static bool IsOnBus(ImmutableArray<SupplyStage> stages, int index)
    {
        for (int before = stages[index].Before; before >= 0; before = stages[before].Before)
        {
            if (stages[before].Node is ConverterNode or BatteryNode)
            {
                return false;
            }
        }

        return true;
    }

    private static IEnumerable<string> Names(SupplyNode node) => node is LoadNode load ? [load.Label] : Behind(node).SelectMany(Names);
}
