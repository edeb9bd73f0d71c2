using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Station.HoldUp;

namespace Mastwright.Station.Supply;

/// <summary>Holds every part of a solved supply against what it bears and wants.</summary>
internal static class SupplyReview
{
    /// <summary>The judgements on a supply that starts.</summary>
    /// <param name="feed">Where the power comes from; null for a supply that begins with its battery.</param>
    /// <param name="openVolts">The most voltage at its beginning when nothing is drawn.</param>
    /// <param name="emptyVolts">The least voltage at its beginning where that is a battery; null where it is not.</param>
    /// <param name="mean">Its stages on average.</param>
    /// <param name="peak">Its stages at its peak.</param>
    /// <param name="classes">The classes of power over cable that the catalogue knows.</param>
    internal static IEnumerable<Finding> Of(
        SupplyFeed? feed, double openVolts, double? emptyVolts, ImmutableArray<SupplyStage> mean, ImmutableArray<SupplyStage> peak, ImmutableArray<PowerClassRow> classes)
    {
        if (peak.IsEmpty)
        {
            yield break;
        }

        if (feed is not null)
        {
            double lost = mean.IsEmpty ? 0 : mean.Sum(stage => stage.LossWatts);
            yield return SupplyFindings.Headroom(feed, peak[0].InputWatts, mean.IsEmpty ? 0 : mean[0].InputWatts, lost);
            foreach (Finding finding in OfFeed(feed, peak, classes))
            {
                yield return finding;
            }
        }

        for (int i = 0; i < peak.Length; i++)
        {
            foreach (Finding finding in OfStage(feed, openVolts, emptyVolts, peak, i))
            {
                yield return finding;
            }
        }
    }

    /// <summary>The fuse of a battery: cells can feed a fault with far more than any load draws.</summary>
    internal static Finding BatteryFuse(BatteryNode battery, BatteryLoad load)
    {
        (double? fuse, double? cable) = Protection(battery.Next);

        // It must outlast a start too, at the least voltage that there is.
        double start = SupplySolver.Amperes(battery.Next, load.CutOffVolts, SupplyDemand.Peak) ?? 0;
        return SupplyFindings.Fuse(battery.Label, battery.PlanPath, fuse, Math.Max(start, load.PeakWatts / load.CutOffVolts), cable);
    }

    private static IEnumerable<Finding> OfFeed(SupplyFeed feed, ImmutableArray<SupplyStage> peak, ImmutableArray<PowerClassRow> classes)
    {
        double amperes = peak[0].InputAmperes;
        (double? fuse, double? cable) = Protection(peak[0].Node);
        if (feed.Part.Kind == SupplySourceKind.MainsAdapter && cable is not null && (fuse is not null || !(feed.RatedWatts / feed.Volts <= cable)))
        {
            yield return SupplyFindings.Fuse(feed.Label, feed.Part.PlanPath, fuse, amperes, cable);
        }

        int device = 0;
        bool isData = false;
        int pairs = int.MaxValue;
        while (peak[device].Node is SeriesNode or FuseNode && device + 1 < peak.Length)
        {
            if (peak[device].Node is SeriesNode { Cable: { Row.IsData: true } run })
            {
                isData = true;
                pairs = Math.Min(pairs, run.ConductorsEachWay);
            }

            device++;
        }

        double watts = peak[device].InputWatts;
        PowerClassRow? needed = classes.OrderBy(row => row.DeviceWatts).ThenByDescending(row => row.Key, StringComparer.Ordinal).FirstOrDefault(row => row.DeviceWatts >= watts);
        if (feed.Class is { } given)
        {
            yield return SupplyFindings.Class(feed, given, watts, needed, pairs);
        }
        else if (isData)
        {
            bool isUnknown = peak.Where((stage, i) => IsBeforeDevice(peak, i) && stage.Node is LoadNode or ConverterNode or BatteryNode && Input(stage.Node).Most is null).Any();
            yield return SupplyFindings.Passive(feed, watts, needed, isUnknown);
        }
    }

    private static IEnumerable<Finding> OfStage(SupplyFeed? feed, double openVolts, double? emptyVolts, ImmutableArray<SupplyStage> peak, int index)
    {
        SupplyStage stage = peak[index];
        (double? least, double? most, string source) = Input(stage.Node);
        (double open, double? empty) = Open(openVolts, emptyVolts, peak, index);
        bool onBattery = empty is not null;

        // On a battery the voltage falls as it empties: that is what the cut-off is tested for.
        if (least is { } lowest && !onBattery)
        {
            yield return SupplyFindings.Voltage(stage.Node, stage.InputVolts, lowest, source);
        }

        if (most is { } highest)
        {
            yield return SupplyFindings.Overvoltage(stage.Node, open, highest, source);
        }
        else if (stage.Node is LoadNode or ConverterNode or BatteryNode)
        {
            yield return SupplyFindings.InputUnknown(stage.Node, open);
        }

        if (stage.Node is ConverterNode { Row: { Step: not ConverterStep.Either } row } changed)
        {
            // A battery may be used until it is empty, or until its voltage is the least that the converter takes.
            double lowestIn = empty is { } cutOff ? Math.Max(cutOff, least ?? 0) : stage.InputVolts;
            yield return SupplyFindings.Step(changed, row, row.Step == ConverterStep.Down ? lowestIn : open);
        }

        if (stage.Node is ConverterNode { RatedWatts: { } rated } one)
        {
            yield return SupplyFindings.ConverterHeadroom(one, stage.OutputWatts, rated);
        }

        if (stage.Node is SeriesNode { Cable: { LengthMetres: > 0 } run } series)
        {
            // Up to the powered device the class's own limit of current counts too.
            double? byClass = IsBeforeDevice(peak, index) && feed?.Class is { } power ? power.MostAmperes / run.ConductorsEachWay : null;
            double limit = Math.Min(run.Row.MostAmperes, byClass ?? double.PositiveInfinity);
            yield return SupplyFindings.CableCurrent(series, run, stage.InputAmperes, limit, limit < run.Row.MostAmperes ? feed!.Class!.Source : run.Row.Source);
            if (run.Row is { IsData: true, Metal: not ConductorMetal.Copper })
            {
                yield return SupplyFindings.Clad(series, run);
            }

            double rise = CableHeat.RiseKelvin(stage.LossWatts / run.LengthMetres, run.Row.SheathMillimetres);
            yield return SupplyFindings.CableTemperature(series, run, rise, stage.LossWatts);
        }
    }

    /// <summary>The voltage that a part takes at its input, and where that comes from.</summary>
    private static (double? Least, double? Most, string Source) Input(SupplyNode node) => node switch
    {
        LoadNode load => (load.Profile.LeastVolts, load.Profile.MostVolts, load.Source),
        ConverterNode converter => (converter.Input.Least, converter.Input.Most, converter.Input.From),
        BatteryNode battery => (battery.Input.Least, battery.Input.Most, battery.Input.From),
        _ => (null, null, ""),
    };

    /// <summary>The most voltage that a stage can meet when nothing is drawn; where a battery sets it, the voltage of the empty one too.</summary>
    private static (double Volts, double? EmptyVolts) Open(double openVolts, double? emptyVolts, ImmutableArray<SupplyStage> stages, int index)
    {
        for (int before = stages[index].Before; before >= 0; before = stages[before].Before)
        {
            switch (stages[before].Node)
            {
                case ConverterNode converter:
                    return (converter.OutputVolts, null);
                case BatteryNode battery:
                    return (battery.Battery.Pack.FullVolts, battery.Battery.EmptyVolts);
            }
        }

        return (openVolts, emptyVolts);
    }

    private static bool IsBeforeDevice(ImmutableArray<SupplyStage> stages, int index)
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

    /// <summary>The first fuse on the way, and what the thinnest cable with two cores up to the next converter carries.</summary>
    private static (double? Fuse, double? CableAmperes) Protection(SupplyNode node)
    {
        switch (node)
        {
            case FuseNode fuse:
                (_, double? behindFuse) = Protection(fuse.Next);
                return (fuse.Amperes, behindFuse);
            case SeriesNode series:
                (double? later, double? cable) = Protection(series.Next);
                double? own = series.Cable is { } run ? run.Row.MostAmperes * run.ConductorsEachWay : null;
                return (later, own is { } amperes && cable is { } other ? Math.Min(amperes, other) : own ?? cable);
            case ForkNode fork:
                (double? Fuse, double? Cable)[] branches = [.. fork.Branches.Select(Protection)];
                return (branches.All(branch => branch.Fuse is not null) ? branches.Max(branch => branch.Fuse) : null, branches.Min(branch => branch.Cable));
            default:
                return (null, null);
        }
    }
}
