using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.HoldUp;

namespace Mastwright.Station.Supply;

/// <summary>The supply of a fit-out from its source to its loads, and how long its batteries hold it up.</summary>
public static class SupplyChain
{
    /// <summary>Computes it.</summary>
    /// <param name="parts">The parts from the source to the loads; empty for a plan that does not speak of the supply.</param>
    /// <param name="context">What else it is computed from.</param>
    /// <exception cref="ArgumentException">The order of the parts means nothing; ask <see cref="SupplyOrder.Check"/> first.</exception>
    public static SupplyResult Compute(ImmutableArray<SupplyPart> parts, SupplyContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        if (parts.IsDefaultOrEmpty)
        {
            return SupplyResult.Nothing;
        }

        if (SupplyOrder.Check(parts) is { } fault)
        {
            throw new ArgumentException(fault.Message, nameof(parts));
        }

        SupplyTree usual = SupplyTree.Of(parts, context, length => length.Median);
        SupplyTree worst = SupplyTree.Of(parts, context, length => length.High);
        SupplyRun run = new(usual);
        if (usual.Root is { } root && worst.Root is { } longest)
        {
            SupplyNode first = usual.Feed is null ? ((BatteryNode)root).Next : root;
            SupplyNode firstLongest = worst.Feed is null ? ((BatteryNode)longest).Next : longest;
            double volts = usual.Feed?.Volts ?? ((BatteryNode)root).Battery.Pack.NominalVolts;
            SupplyDemand peak = usual.Feed is null ? SupplyDemand.RunningPeak : SupplyDemand.Peak;
            run.Mean = SupplySolver.Stages(first, volts, SupplyDemand.Mean);
            run.Peak = SupplySolver.Stages(firstLongest, volts, peak);
            ChargedBattery? start = usual.Feed is null ? ((BatteryNode)root).Battery : null;
            run.Judge(SupplySolver.Collapse(firstLongest, volts, peak), peak, usual.Feed?.MostVolts ?? start!.Pack.FullVolts, start?.EmptyVolts);
            foreach (BatteryNode battery in BatteryLoads.In(root))
            {
                run.HoldUp(battery, root);
            }
        }

        return run.Result();
    }

    /// <summary>One computation as it grows.</summary>
    private sealed class SupplyRun(SupplyTree tree)
    {
        private readonly List<Finding> findings = [.. tree.Findings];
        private readonly List<Ledger> ledgers = [];
        private readonly List<SupplyBatteryResult> batteries = [];
        private Ledger? drawn;
        private bool starts = true;

        internal ImmutableArray<SupplyStage> Mean { get; set; } = [];

        internal ImmutableArray<SupplyStage> Peak { get; set; } = [];

        internal void Judge(SupplyCollapse? collapse, SupplyDemand peak, double openVolts, double? emptyVolts)
        {
            drawn = Account(Mean, SupplyDemand.Mean.Name);
            Account(Peak, peak.Name);
            for (int i = 0; i < Peak.Length; i++)
            {
                if (Peak[i].Node is LoadNode)
                {
                    ledgers.Add(SupplyLedgers.Voltage(tree.Feed, Peak, i, peak.Name));
                }
            }

            if (collapse is not null)
            {
                starts = false;
                findings.Add(SupplyFindings.WillNotStart(collapse, peak.Name));
                return;
            }

            findings.AddRange(SupplyReview.Of(tree.Feed, openVolts, emptyVolts, Mean, Peak, tree.Classes));
        }

        internal void HoldUp(BatteryNode battery, SupplyNode root)
        {
            if (BatteryLoads.Of(battery, root) is not { } load || HoldUpTime.Of(battery.Battery, load) is not { } result)
            {
                return;
            }

            ImmutableArray<string> assumed = [.. tree.Assumptions.Where(one => one.PlanPath.StartsWith(battery.PlanPath, StringComparison.Ordinal) || one.Code == "box-temperature").Select(one => one.Code).Distinct(StringComparer.Ordinal)];
            findings.AddRange(HoldUpFindings.Of(battery.PlanPath, battery.Battery, load, result, assumed, starts));
            findings.Add(SupplyReview.BatteryFuse(battery, load));
            ledgers.Add(result.Ledger);
            batteries.Add(new(battery.PlanPath, battery.Battery, load, result));
        }

        internal SupplyResult Result() => new()
        {
            MeanWatts = Mean.IsEmpty ? null : Mean[0].InputWatts,
            Starts = starts,
            DrawnWatts = drawn?.Total,
            LostWatts = drawn is null ? null : SupplyLedgers.LostWatts(drawn),
            IsFromMains = tree.Feed?.MainsEfficiency is not null,
            PeakWatts = Peak.IsEmpty ? null : Peak[0].InputWatts,
            Mean = [.. Mean.Select(Point)],
            Peak = [.. Peak.Select(Point)],
            Batteries = [.. batteries],
            Ledgers = [.. ledgers],
            Findings = [.. findings],
            Assumptions = [.. tree.Assumptions],
        };

        private Ledger? Account(ImmutableArray<SupplyStage> stages, string moment)
        {
            if (stages.IsEmpty)
            {
                return null;
            }

            Ledger ledger = SupplyLedgers.Power(tree.Feed, stages, moment);
            ledgers.Add(ledger);
            return ledger;
        }

        private static SupplyPoint Point(SupplyStage stage) => new(
            stage.Node.PlanPath, stage.Node.Label, stage.InputVolts, stage.InputAmperes, stage.InputWatts,
            stage.Node is LoadNode ? stage.InputWatts : stage.LossWatts);
    }
}
