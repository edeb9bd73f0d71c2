using System.Collections.Immutable;
using Mastwright.Network.Reach;
using Mastwright.Reports.Reach;

namespace Mastwright.Workbench.Drag;

/// <summary>What the colours of a layer mean: the values at which classes begin. Below the first is below the limit, and hatched.</summary>
/// <param name="Title">What is shown.</param>
/// <param name="Unit">Its unit: "dB", "dBm", "%".</param>
/// <param name="Below">What it means to be below the limit.</param>
/// <param name="Edges">Values at which classes begin, rising; the first is the limit.</param>
/// <param name="Scale">What a value is multiplied by to be shown in the unit.</param>
internal sealed record ReachLegend(string Title, string Unit, string Below, ImmutableArray<double> Edges, double Scale = 1)
{
    internal static ReachLegend Of(ReachReport report, ReachOptions options)
    {
        ReachBudget budget = report.Map.Budget;
        ImmutableArray<double> margins = ReachClasses.Edges(budget.Wanted.MarginDb);
        string way = options.Direction switch { ReachDirection.Hears => "hearing", ReachDirection.Both => "both ways", _ => "being heard" };
        return options.Layer switch
        {
            "level" => Level(budget, margins, options.Direction, way),
            "loss" => new("Loss between the antennas", "dB", "less", [80, 100, 120, 140]),
            "confidence" => new($"Confidence, {way}", "%", "less than even odds", [0.5, 0.8, 0.95, 0.99], 100),
            "delivery" => new($"Packets delivered, {way}", "%", "less than half", [0.5, 0.8, 0.95, 0.99], 100),
            ReachLayers.Difference => new($"{report.Setup.Station.FitOut?.Key} against {report.Compared?.Setup.Station.FitOut?.Key}, {way}", "dB", "worse", [0, 3, 6, 10]),
            _ => new($"Margin, {way}", "dB", "below the limit", margins),
        };
    }

    private static ReachLegend Level(ReachBudget budget, ImmutableArray<double> margins, ReachDirection direction, string way)
    {
        bool isHeard = direction == ReachDirection.Heard || (direction == ReachDirection.Both && budget.HeardOverHearsDb <= 0);
        double required = (isHeard ? budget.Receiver : budget.Station).RequiredDbm!.Value.Median;
        return new($"Level, {way}", "dBm", "below what is required", [.. margins.Select(margin => margin + required)]);
    }
}
