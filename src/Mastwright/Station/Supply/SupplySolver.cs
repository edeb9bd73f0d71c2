using System.Collections.Immutable;

namespace Mastwright.Station.Supply;

/// <summary>Finds voltage and current at every part of a supply.</summary>
/// <remarks>
/// A converter draws the same power at any input voltage, so each stretch between two converters is solved by itself: in closed form where
/// one power hangs at the end of its resistances, else by raising the current from nothing until it fits, which finds the upper
/// root because what is drawn only rises as the voltage falls. Where no current fits there is no root: it will not start.
/// </remarks>
internal static class SupplySolver
{
    private const int MostSteps = 100_000;

    /// <summary>The current in amperes that a part draws from a voltage at its input; null when it cannot work.</summary>
    internal static double? Amperes(SupplyNode node, double volts, SupplyDemand demand)
    {
        if (!(volts > 0))
        {
            return null;
        }

        switch (node)
        {
            case SeriesNode series:
                return ThroughResistance(series, volts, demand);
            case FuseNode fuse:
                return Amperes(fuse.Next, volts, demand);
            case ForkNode fork:
                double sum = 0;
                foreach (SupplyNode branch in fork.Branches)
                {
                    if (Amperes(branch, volts, demand) is not { } one)
                    {
                        return null;
                    }

                    sum += one;
                }

                return sum;
            default:
                return FixedWatts(node, demand) / volts;
        }
    }

    /// <summary>The power in watts that a part draws at any voltage; null when it depends on the voltage, or when what is behind cannot work.</summary>
    internal static double? FixedWatts(SupplyNode node, SupplyDemand demand)
    {
        switch (node)
        {
            case LoadNode load:
                return demand.LoadWatts(load.Profile);
            case FuseNode fuse:
                return FixedWatts(fuse.Next, demand);
            case ConverterNode converter:
                return Amperes(converter.Next, converter.OutputVolts, demand) * converter.OutputVolts is { } output ? ConverterInput(converter, output) : null;
            case BatteryNode battery:
                return BatteryInput(battery, demand);
            case ForkNode fork:
                double sum = 0;
                foreach (SupplyNode branch in fork.Branches)
                {
                    if (FixedWatts(branch, demand) is not { } one)
                    {
                        return null;
                    }

                    sum += one;
                }

                return sum;
            case SeriesNode { Ohms: 0 } series:
                return FixedWatts(series.Next, demand);
            default:
                return null;
        }
    }

    /// <summary>What a battery's charger gives, in watts; null when what hangs on the battery cannot work.</summary>
    internal static double? ChargerOutput(BatteryNode battery, SupplyDemand demand)
    {
        if (Amperes(battery.Next, battery.Battery.Pack.NominalVolts, demand) is not { } amperes)
        {
            return null;
        }

        double most = battery.Battery.ChargerWatts;
        return demand.IsCharging ? most : Math.Min(most, amperes * battery.Battery.Pack.NominalVolts);
    }

    /// <summary>Where the current does not find its way: the resistance, what is wanted behind it and the most that can come through; null when it does.</summary>
    internal static SupplyCollapse? Collapse(SupplyNode node, double volts, SupplyDemand demand)
    {
        if (Amperes(node, volts, demand) is not null)
        {
            return null;
        }

        switch (node)
        {
            case FuseNode fuse:
                return Collapse(fuse.Next, volts, demand);
            case ForkNode fork:
                return fork.Branches.Select(branch => Collapse(branch, volts, demand)).FirstOrDefault(found => found is not null);
            case ConverterNode converter:
                return Collapse(converter.Next, converter.OutputVolts, demand);
            case BatteryNode battery:
                return Collapse(battery.Next, battery.Battery.Pack.NominalVolts, demand);
            case SeriesNode series:
                (double ohms, SupplyNode next) = Gather(series);
                if (Collapse(next, volts, demand) is { } within)
                {
                    return within;
                }

                double wanted = (Amperes(next, volts, demand) ?? 0) * volts;
                return new(series, volts, ohms, wanted, ConstantPowerFeed.MostWatts(volts, ohms));
            default:
                return null;
        }
    }

    /// <summary>The stages from a part on, for a voltage at its input; empty when it cannot work.</summary>
    internal static ImmutableArray<SupplyStage> Stages(SupplyNode node, double volts, SupplyDemand demand)
    {
        if (Amperes(node, volts, demand) is null)
        {
            return [];
        }

        List<SupplyStage> stages = [];
        Walk(node, volts, demand, -1, stages);
        return [.. stages];
    }

    private static void Walk(SupplyNode node, double volts, SupplyDemand demand, int before, List<SupplyStage> stages)
    {
        double amperes = Amperes(node, volts, demand) ?? 0;
        SupplyStage stage = new(node, before, volts, amperes, volts, 0);
        int here = stages.Count;
        switch (node)
        {
            case SeriesNode series:
                double after = volts - (amperes * series.Ohms);
                stages.Add(stage with { OutputVolts = after, LossWatts = (volts - after) * amperes });
                Walk(series.Next, after, demand, here, stages);
                break;
            case FuseNode fuse:
                stages.Add(stage);
                Walk(fuse.Next, volts, demand, here, stages);
                break;
            case ForkNode fork:
                stages.Add(stage);
                foreach (SupplyNode branch in fork.Branches)
                {
                    Walk(branch, volts, demand, here, stages);
                }

                break;
            case ConverterNode converter:
                double output = (Amperes(converter.Next, converter.OutputVolts, demand) ?? 0) * converter.OutputVolts;
                stages.Add(stage with { OutputVolts = converter.OutputVolts, OutputWatts = output, LossWatts = stage.InputWatts - output });
                Walk(converter.Next, converter.OutputVolts, demand, here, stages);
                break;
            case BatteryNode battery:
                double bus = battery.Battery.Pack.NominalVolts;
                double charger = ChargerOutput(battery, demand) ?? 0;
                double drawn = (Amperes(battery.Next, bus, demand) ?? 0) * bus;
                stages.Add(stage with { OutputVolts = bus, OutputWatts = drawn, LossWatts = stage.InputWatts - charger, StoredWatts = charger - drawn });
                Walk(battery.Next, bus, demand, here, stages);
                break;
            default:
                stages.Add(stage);
                break;
        }
    }

    private static double ConverterInput(ConverterNode converter, double outputWatts)
    {
        // Of a converter without a rating nothing says how hard it works: half of its rating is where curves are flat.
        double share = converter.RatedWatts is { } rated ? outputWatts / rated : 0.5;
        return outputWatts / converter.Efficiency.At(share);
    }

    private static double? BatteryInput(BatteryNode battery, SupplyDemand demand) =>
        ChargerOutput(battery, demand) / battery.Battery.ChargerEfficiency;

    private static double? ThroughResistance(SeriesNode series, double volts, SupplyDemand demand)
    {
        (double ohms, SupplyNode next) = Gather(series);
        if (ohms == 0)
        {
            return Amperes(next, volts, demand);
        }

        if (FixedWatts(next, demand) is { } watts)
        {
            return ConstantPowerFeed.Solve(volts, ohms, watts)?.Amperes;
        }

        double amperes = 0;
        for (int step = 0; step < MostSteps; step++)
        {
            if (Amperes(next, volts - (amperes * ohms), demand) is not { } wanted)
            {
                return null;
            }

            if (wanted - amperes <= 1e-14 * wanted)
            {
                return wanted;
            }

            amperes = wanted;
        }

        // So slow only at the very edge of what the resistance carries.
        return null;
    }

    private static (double Ohms, SupplyNode Next) Gather(SeriesNode series)
    {
        double ohms = 0;
        SupplyNode node = series;
        while (true)
        {
            switch (node)
            {
                case SeriesNode one:
                    ohms += one.Ohms;
                    node = one.Next;
                    break;
                case FuseNode fuse:
                    node = fuse.Next;
                    break;
                default:
                    return (ohms, node);
            }
        }
    }
}

/// <summary>A part of a supply at work.</summary>
/// <param name="Node">The part.</param>
/// <param name="Before">Index of the stage before it; -1 for the first.</param>
/// <param name="InputVolts">Voltage at its input.</param>
/// <param name="InputAmperes">Current into it.</param>
/// <param name="OutputVolts">Voltage behind it.</param>
/// <param name="LossWatts">What it turns into heat, in watts.</param>
internal sealed record SupplyStage(SupplyNode Node, int Before, double InputVolts, double InputAmperes, double OutputVolts, double LossWatts)
{
    /// <summary>What goes into it, in watts.</summary>
    internal double InputWatts => InputVolts * InputAmperes;

    /// <summary>What comes out of a converter or battery, in watts.</summary>
    internal double OutputWatts { get; init; }

    /// <summary>What a battery takes in, in watts; negative where it helps.</summary>
    internal double StoredWatts { get; init; }
}

/// <summary>A resistance that cannot carry what is wanted behind it.</summary>
/// <param name="Node">The resistance.</param>
/// <param name="Volts">Voltage before it.</param>
/// <param name="Ohms">Its resistance with those that follow.</param>
/// <param name="WantedWatts">What is wanted behind it, in watts.</param>
/// <param name="MostWatts">The most that can come through, in watts.</param>
internal sealed record SupplyCollapse(SeriesNode Node, double Volts, double Ohms, double WantedWatts, double MostWatts);
