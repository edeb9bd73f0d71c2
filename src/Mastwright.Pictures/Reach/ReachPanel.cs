using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Network;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Reach;

/// <summary>What stands beside the map of one station: the answer in a sentence, the legend with areas and odds, the budget, what was assumed.</summary>
internal static class ReachPanel
{
    /// <summary>Draws it.</summary>
    public static ImmutableArray<Shape> Draw(ReachPictureModel model)
    {
        MapPanel panel = new(model.Theme);
        ImmutableArray<ReachClass> classes = ReachClasses.Of(model.Map, model.Direction);
        Answer(model, classes, panel);
        Legend(model, classes, panel);
        Budget(model, panel);
        panel.Assumptions(model.Assumptions);
        return panel.Shapes;
    }

    private static void Answer(ReachPictureModel model, ImmutableArray<ReachClass> classes, MapPanel panel)
    {
        string verb = model.Direction switch { ReachDirection.Hears => "Hears", ReachDirection.Both => "Links", _ => "Heard" };
        panel.Answer($"{verb} over {MapPanel.Area(classes.Skip(1).Sum(one => one.AreaSquareMetres))}");
        panel.Sentence($"of the {MapPanel.Area(classes.Sum(one => one.AreaSquareMetres))} that were worked out, sea included.");
        if (model.Direction != ReachDirection.Both)
        {
            panel.Sentence(OtherWay(model));
        }
    }

    private static string OtherWay(ReachPictureModel model)
    {
        double over = model.Map.Budget.HeardOverHearsDb * (model.Direction == ReachDirection.Heard ? 1 : -1);
        string way = model.Direction == ReachDirection.Heard ? $"{model.StationName} hears them" : $"They hear {model.StationName}";
        return Math.Abs(over) < 0.05
            ? $"{way} just as well."
            : string.Create(CultureInfo.InvariantCulture, $"{way} with {Math.Abs(over):0.0} dB {(over > 0 ? "less" : "more")} to spare.");
    }

    private static void Legend(ReachPictureModel model, ImmutableArray<ReachClass> classes, MapPanel panel)
    {
        ReachScale scale = ReachScale.For(model.Theme);
        panel.Heading("Margin to spare", "area", above: 16);
        panel.Gap(8);
        for (int i = classes.Length - 1; i > 0; i--)
        {
            panel.Tall(new(scale.Of(i - 1)), Margins(classes[i]), Odds(model, classes[i]), MapPanel.Area(classes[i].AreaSquareMetres));
        }

        panel.Below(Margins(classes[0]), Odds(model, classes[0]), MapPanel.Area(classes[0].AreaSquareMetres));
        panel.Missing(model.Map.Field.MissingSquareMetres);
        panel.Marks(model.StationName, !model.Marks.IsEmpty);
    }

    /// <summary>The budget without the path, whose total is the loss at which the margin is 0 dB.</summary>
    private static void Budget(ReachPictureModel model, MapPanel panel)
    {
        ReachBudget budget = model.Map.Budget;
        bool heard = model.Direction == ReachDirection.Heard || (model.Direction == ReachDirection.Both && budget.HeardOverHearsDb <= 0);
        double power = (heard ? budget.Station : budget.Receiver).PowerIntoAntennaDbm!.Value.Median;
        double required = (heard ? budget.Receiver : budget.Station).RequiredDbm!.Value.Median;
        double gain = budget.StationPattern.MainBeamDbi!.Value.Median;
        List<(string Label, double Value)> lines =
        [
            (heard ? $"Power into the antenna of {model.StationName}" : "Power into their antenna", power),
            ($"Gain of {model.StationName}, main beam", gain),
            ("Gain of the other antenna", budget.Receiver.GainDbi!.Value.Median),
            .. budget.EndLosses.Select(line => (line.Label, -line.Value)),
            ("Level wanted by whoever receives", -required),
        ];
        panel.Heading("What the path may lose", lines.Sum(line => line.Value).ToString("0.0 dB", CultureInfo.InvariantCulture), isTotal: true);
        panel.Gap(3);
        foreach ((string label, double value) in lines)
        {
            panel.Line(label, value.ToString("+0.0;−0.0;0.0", CultureInfo.InvariantCulture));
        }
    }

    private static string Margins(ReachClass one) => one switch
    {
        { FromDb: double.NegativeInfinity } => "below the limit",
        { ToDb: double.PositiveInfinity } => string.Create(CultureInfo.InvariantCulture, $"{one.FromDb:0.#} dB and more"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{one.FromDb:0.#} to {one.ToDb:0.#} dB"),
    };

    /// <summary>Confidence over the class, from its least margin to its most.</summary>
    private static string Odds(ReachPictureModel model, ReachClass one)
    {
        if (double.IsNegativeInfinity(one.FromDb))
        {
            return $"works with {LinkOdds.Percent(model.Map.OddsAt(0, model.Direction).Works)} confidence or less";
        }

        string from = LinkOdds.Percent(model.Map.OddsAt(one.FromDb, model.Direction).Works);
        string to = double.IsPositiveInfinity(one.ToDb) ? "" : LinkOdds.Percent(model.Map.OddsAt(one.ToDb, model.Direction).Works);
        return to.Length == 0 || to == from ? $"works with {from} confidence" : $"works with {from} to {to} confidence";
    }
}
