using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;

namespace Mastwright.Station.Supply;

/// <summary>The ledgers of a supply: where the watts go, and what becomes of the volts.</summary>
internal static class SupplyLedgers
{
    private static readonly string[] Losses = ["-source", "-loss", "-charger"];

    /// <summary>Where the power goes: every load and every loss, with voltage and current at its input.</summary>
    internal static Ledger Power(SupplyFeed? feed, ImmutableArray<SupplyStage> stages, string moment)
    {
        double given = stages[0].InputWatts;
        List<LedgerLine> lines = [];
        double total = given;
        string from = feed is null ? "the battery" : feed.Label;
        if (feed?.MainsEfficiency is { } efficiency)
        {
            double mains = given / efficiency.At(feed.RatedWatts is { } rated ? given / rated : 0.5);
            lines.Add(new("supply-0-source", "lost in " + feed.Label, mains - given, feed.Source, Text($"{100 * given / mains:0} % efficient")));
            total = mains;
            from = "the mains";
        }

        for (int i = 0; i < stages.Length; i++)
        {
            SupplyStage stage = stages[i];
            string point = Text($"{stage.InputVolts:0.00} V, {stage.InputAmperes:0.000} A, {stage.InputWatts:0.000} W in");
            switch (stage.Node)
            {
                case LoadNode load:
                    lines.Add(new(Code(i, "load"), load.Label, stage.InputWatts, load.Source, point));
                    break;
                case BatteryNode battery:
                    lines.Add(new(Code(i, "charger"), "lost in the charger of " + battery.Label, stage.LossWatts, battery.Source, point));
                    if (Math.Abs(stage.StoredWatts) > 1e-9)
                    {
                        lines.Add(new(Code(i, "battery"), stage.StoredWatts > 0 ? "into " + battery.Label : "helped out by " + battery.Label, stage.StoredWatts, battery.PlanPath));
                    }
                    else
                    {
                        lines.Add(new(Code(i, "battery"), battery.Label + " stays full", stage.StoredWatts, battery.PlanPath));
                    }

                    break;
                case SeriesNode or ConverterNode:
                    lines.Add(new(Code(i, "loss"), "lost in " + stage.Node.Label, stage.LossWatts, stage.Node.Source, point));
                    break;
            }
        }

        return Ledger.SummingTo(total, $"power from {from}, {moment}", "W", [.. lines]);
    }

    /// <summary>What of a ledger of power is lost, in watts: in the source, in cables, converters and chargers.</summary>
    internal static double LostWatts(Ledger power) => power.Lines.Where(line => Losses.Any(end => line.Code.EndsWith(end, StringComparison.Ordinal))).Sum(line => line.Value);

    /// <summary>What becomes of the voltage on the way to a load.</summary>
    internal static Ledger Voltage(SupplyFeed? feed, ImmutableArray<SupplyStage> stages, int load, string moment)
    {
        List<int> way = [];
        for (int i = load; i >= 0; i = stages[i].Before)
        {
            way.Insert(0, i);
        }

        List<LedgerLine> lines = [new("source", feed?.Label ?? "battery", stages[0].InputVolts, feed?.Source ?? stages[0].Node.PlanPath)];
        foreach (int i in way)
        {
            SupplyStage stage = stages[i];
            if (stage.Node is SeriesNode series)
            {
                lines.Add(new(Code(i, "drop"), "drop in " + series.Label, stage.OutputVolts - stage.InputVolts, series.Source, Text($"{stage.InputAmperes:0.000} A through {series.Ohms:0.000} ohm")));
            }
            else if (stage.Node is ConverterNode or BatteryNode)
            {
                lines.Add(new(Code(i, "change"), stage.Node.Label, stage.OutputVolts - stage.InputVolts, stage.Node.Source, Text($"to {stage.OutputVolts:0.00} V")));
            }
        }

        return Ledger.SummingTo(stages[load].InputVolts, $"voltage at {stages[load].Node.Label}, {moment}", "V", [.. lines]);
    }

    private static string Code(int index, string name) => Text($"supply-{index + 1}-{name}");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
