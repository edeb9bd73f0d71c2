using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Network;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;

namespace Mastwright.Pictures.Reach;

/// <summary>What stands beside the map: the answer in a sentence, the legend with areas and odds, what was assumed.</summary>
internal static class ReachPanel
{
    private const double Text = 12.5;
    private const double Small = 11;
    private const double Swatch = 34;

    /// <summary>Draws it into a box.</summary>
    public static GroupShape Draw(ReachPictureModel model, Palette palette, Box box)
    {
        List<Shape> shapes = [];
        ImmutableArray<ReachClass> classes = ReachClasses.Of(model.Map, model.Direction);
        double y = Answer(model, classes, palette, box, shapes);
        y = Legend(model, classes, palette, box, y + 16, shapes);
        y = Budget(model, palette, box, y + 14, shapes);
        Assumptions(model, palette, box, y + 14, shapes);
        return new("panel", [.. shapes]);
    }

    private static double Answer(ReachPictureModel model, ImmutableArray<ReachClass> classes, Palette palette, Box box, List<Shape> shapes)
    {
        double y = box.Top;
        double heard = classes.Skip(1).Sum(one => one.AreaSquareMetres);
        double all = classes.Sum(one => one.AreaSquareMetres);
        string verb = model.Direction switch { ReachDirection.Hears => "Hears", ReachDirection.Both => "Links", _ => "Heard" };
        y += 17;
        shapes.Add(new TextShape(new(box.Left, y), $"{verb} over {Area(heard)}", 18, palette.Ink) { Weight = TextWeight.SemiBold });
        List<string> lines = [string.Create(CultureInfo.InvariantCulture, $"of the {Area(all)} that were worked out, sea included.")];
        if (model.Direction != ReachDirection.Both)
        {
            lines.Add(OtherWay(model));
        }

        foreach (string words in lines.SelectMany(line => TextRuler.Wrap(line, box.Width, 3, Text)))
        {
            y += Text * 1.4;
            shapes.Add(new TextShape(new(box.Left, y), words, Text, palette.Ink));
        }

        return y;
    }

    private static string OtherWay(ReachPictureModel model)
    {
        double over = model.Map.Budget.HeardOverHearsDb * (model.Direction == ReachDirection.Heard ? 1 : -1);
        string way = model.Direction == ReachDirection.Heard ? $"{model.StationName} hears them" : $"They hear {model.StationName}";
        return Math.Abs(over) < 0.05
            ? $"{way} just as well."
            : string.Create(CultureInfo.InvariantCulture, $"{way} with {Math.Abs(over):0.0} dB {(over > 0 ? "less" : "more")} to spare.");
    }

    private static double Legend(ReachPictureModel model, ImmutableArray<ReachClass> classes, Palette palette, Box box, double top, List<Shape> shapes)
    {
        double y = top;
        Rule(box, y, palette, shapes);
        y += 20;
        shapes.Add(new TextShape(new(box.Left, y), "Margin to spare", Text, palette.Ink) { Weight = TextWeight.SemiBold });
        shapes.Add(new TextShape(new(box.Right, y), "area", Small, palette.Muted) { Anchor = TextAnchor.End });
        y += 8;
        for (int i = classes.Length - 1; i >= 0; i--)
        {
            ReachClass one = classes[i];
            Fill fill = i == 0 ? new(ReachScale.Land, new(HatchKind.Rising, ReachScale.Hatch.Veil(0.55))) : new(ReachScale.Of(i - 1));
            shapes.Add(AreaShape.Of(new(box.Left, y, box.Left + Swatch, y + 30), fill, new(palette.Muted, 0.8)));
            shapes.Add(new TextShape(new(box.Left + Swatch + 10, y + 13), Margins(one), Text, palette.Ink) { Weight = TextWeight.SemiBold });
            shapes.Add(new TextShape(new(box.Right, y + 13), Area(one.AreaSquareMetres), Text, palette.Ink) { Anchor = TextAnchor.End });
            shapes.Add(new TextShape(new(box.Left + Swatch + 10, y + 27), Odds(model, one), Small, palette.Muted));
            y += 34;
        }

        int missing = model.Map.Field.Flags.ToArray().Count(flag => (flag & ReachFlags.GroundMissing) != ReachFlags.None);
        if (missing > 0)
        {
            shapes.Add(AreaShape.Of(new(box.Left, y, box.Left + Swatch, y + 22), new(ReachScale.Unknown, new(HatchKind.Crossed, ReachScale.Hatch)), new(palette.Muted, 0.8)));
            shapes.Add(new TextShape(new(box.Left + Swatch + 10, y + 15), "no ground data on the way", Text, palette.Ink));
            shapes.Add(new TextShape(new(box.Right, y + 15), Area(missing * model.Map.Field.CellAreaSquareMetres), Text, palette.Ink) { Anchor = TextAnchor.End });
            y += 28;
        }

        y += 10;
        shapes.Add(new AreaShape(VerdictMark.Disc(new(box.Left + (Swatch / 2), y + 6), 7), new(palette.Paper), new(palette.Ink, 1)));
        shapes.Add(new AreaShape(VerdictMark.Disc(new(box.Left + (Swatch / 2), y + 6), 4.2), new(palette.Blocked)));
        shapes.Add(new TextShape(new(box.Left + Swatch + 10, y + 10), model.StationName, Small + 0.5, palette.Ink));
        if (!model.Marks.IsEmpty)
        {
            double x = box.Left + Swatch + 10 + TextRuler.WidthPixels(model.StationName, Small + 0.5) + 22;
            shapes.Add(new AreaShape([new(x, y + 1), new(x + 5, y + 6), new(x, y + 11), new(x - 5, y + 6)], new(palette.Paper), new(palette.Ink, 1.4)));
            shapes.Add(new TextShape(new(x + 11, y + 10), "other places of the plan", Small + 0.5, palette.Ink));
        }

        return y + 14;
    }

    /// <summary>The budget without the path, whose total is the loss at which the margin is 0 dB.</summary>
    private static double Budget(ReachPictureModel model, Palette palette, Box box, double top, List<Shape> shapes)
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
        Rule(box, top, palette, shapes);
        double y = top + 20;
        shapes.Add(new TextShape(new(box.Left, y), "What the path may lose", Text, palette.Ink) { Weight = TextWeight.SemiBold });
        shapes.Add(new TextShape(new(box.Right, y), lines.Sum(line => line.Value).ToString("0.0 dB", CultureInfo.InvariantCulture), Text, palette.Ink) { Weight = TextWeight.SemiBold, Anchor = TextAnchor.End });
        y += 3;
        foreach ((string label, double value) in lines)
        {
            y += Small * 1.36;
            shapes.Add(new TextShape(new(box.Left, y), TextRuler.Fit(label, box.Width - 60, Small), Small, palette.Muted));
            shapes.Add(new TextShape(new(box.Right, y), Signed(value), Small, palette.Muted) { Anchor = TextAnchor.End });
        }

        return y;
    }

    private static string Signed(double value) => value.ToString("+0.0;−0.0;0.0", CultureInfo.InvariantCulture);

    private static void Assumptions(ReachPictureModel model, Palette palette, Box box, double top, List<Shape> shapes)
    {
        Rule(box, top, palette, shapes);
        double y = top + 20;
        shapes.Add(new TextShape(new(box.Left, y), "What was assumed", Text, palette.Ink) { Weight = TextWeight.SemiBold });
        y += 3;
        double line = Small * 1.32;
        for (int i = 0; i < model.Assumptions.Length; i++)
        {
            ImmutableArray<string> words = TextRuler.Wrap(model.Assumptions[i], box.Width - 10, 3, Small);
            bool isLast = i == model.Assumptions.Length - 1;
            if (y + (line * words.Length) + 3 > box.Bottom - (isLast ? 0 : line))
            {
                int left = model.Assumptions.Length - i;
                shapes.Add(new TextShape(new(box.Left + 10, y + line + 1), string.Create(CultureInfo.InvariantCulture, $"… and {left} more, which the text and --json list"), Small, palette.Muted));
                return;
            }

            shapes.Add(new TextShape(new(box.Left, y + line), "·", Small, palette.Muted) { Weight = TextWeight.SemiBold });
            foreach (string one in words)
            {
                y += line;
                shapes.Add(new TextShape(new(box.Left + 10, y), one, Small, palette.Muted));
            }

            y += 2;
        }
    }

    private static void Rule(Box box, double y, Palette palette, List<Shape> shapes) =>
        shapes.Add(new LineShape([new(box.Left, y), new(box.Right, y)], new(palette.Faint, 1)));

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

    private static string Area(double squareMetres) => squareMetres < 9.95e5
        ? string.Create(CultureInfo.InvariantCulture, $"{squareMetres / 1e6:0.00} km²")
        : squareMetres < 9.95e7
            ? string.Create(CultureInfo.InvariantCulture, $"{squareMetres / 1e6:0.0} km²")
            : string.Create(CultureInfo.InvariantCulture, $"{squareMetres / 1e6:#,0} km²");
}
