using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Network.Reach;
using Spectre.Console;

namespace Mastwright.Cli.Output;

/// <summary>A reach map on the terminal: areas by margin, the budget without the path, what is missing, what was assumed.</summary>
internal static class ReachText
{
    internal static void Write(ReachReport report, ReachOptions options)
    {
        StringBuilder text = new();
        ReachField field = report.Map.Field;
        ReachBudget budget = report.Map.Budget;
        text.Wrapped($"{Title(report, options.Direction)} ({report.Setup.Station.Subject}), by {report.Setup.Receiver.Name}", 0);
        text.Wrapped(string.Create(CultureInfo.InvariantCulture, $"{report.RadioText()}; within {field.Input.RadiusMetres / 1000:0.##} km, {report.Totals.Cells} cells of {report.Frame.StepX:0.##} m"), 0);
        text.Wrapped(report.MethodText(), 0);
        text.AppendLine();
        Classes(text, report, options.Direction);
        text.AppendLine();
        double over = budget.HeardOverHearsDb;
        text.Wrapped(
            Math.Abs(over) < 0.05
                ? "At every place the margin is the same both ways."
                : string.Create(CultureInfo.InvariantCulture, $"At every place {report.Setup.Station.Name} {(over > 0 ? "is heard" : "hears")} with {Math.Abs(over):0.0} dB more to spare than it {(over > 0 ? "hears" : "is heard")}."),
            0);
        if (report.Weights is { } weights)
        {
            Weights(text, report, weights, options);
        }

        if (report.Range is { } range)
        {
            Range(text, report, range, options.Direction);
        }

        if (report.Compared is { } compared)
        {
            Comparison(text, report, compared, options.Direction);
        }

        Budget(text, report);
        Console.Out.Write(text.ToString());
        Notes(report.Findings, report.Assumptions);
        foreach (string file in options.Files)
        {
            Console.Out.WriteLine($"Written: {file}");
        }
    }

    private static string Title(ReachReport report, ReachDirection direction) => direction switch
    {
        ReachDirection.Hears => $"What {report.Setup.Station.Name} hears",
        ReachDirection.Both => $"Where {report.Setup.Station.Name} is heard and hears",
        _ => $"Where {report.Setup.Station.Name} is heard",
    };

    private static void Classes(StringBuilder text, ReachReport report, ReachDirection direction)
    {
        ImmutableArray<ReachClass> classes = report.Totals.ClassesOf(direction);
        double all = classes.Sum(one => one.AreaSquareMetres);
        text.Line($"  {"margin",-18} {"area",11} {"share",7}   {"confidence, on average",-24}");
        foreach (ReachClass one in classes.Reverse())
        {
            text.Line($"  {Margins(one),-18} {one.AreaSquareMetres / 1e6,7:0.00} km² {100 * one.AreaSquareMetres / all,5:0.0} %   {(one.Cells == 0 ? "" : LinkOdds.Percent(one.MeanWorks))}");
        }

        double heard = classes.Skip(1).Sum(one => one.AreaSquareMetres);
        text.Line($"  {"0 dB and more",-18} {heard / 1e6,7:0.00} km² {100 * heard / all,5:0.0} %   of {all / 1e6:0.00} km², sea included");
    }

    private static void Weights(StringBuilder text, ReachReport report, ReachWeights weights, ReachOptions options)
    {
        ReachWeightShares shares = weights.Shares(report.Map, options.Direction);
        ImmutableArray<ReachClass> classes = ReachClasses.Of(report.Map, options.Direction);
        text.AppendLine();
        text.Line($"  {"margin",-18} {"weight",13} {"share",7}");
        for (int i = classes.Length - 1; i >= 0; i--)
        {
            Weight(text, Margins(classes[i]), shares.InClass[i], weights.Total);
        }

        Weight(text, "0 dB and more", shares.Reached, weights.Total);
        WeightsBeside(text, weights, shares.Outside, shares.WithoutGround, options);
    }

    /// <summary>A line of weights.</summary>
    internal static void Weight(StringBuilder text, string words, double weight, double total) =>
        text.Line($"  {words,-18} {weight,13:#,0.##} {(total > 0 ? 100 * weight / total : 0),5:0.0} %");

    /// <summary>What lies elsewhere, and where the weights come from.</summary>
    internal static void WeightsBeside(StringBuilder text, ReachWeights weights, double outside, double withoutGround, ReachOptions options)
    {
        Weight(text, "outside", outside, weights.Total);
        if (withoutGround > 0)
        {
            Weight(text, "no ground there", withoutGround, weights.Total);
        }

        text.Wrapped(string.Create(CultureInfo.InvariantCulture, $"of {weights.Total:#,0.##} in {options.WeightsFile} ({weights.Count:#,0} {(weights.Count == 1 ? "entry" : "entries")})"), 2);
    }

    private static void Range(StringBuilder text, ReachReport report, ReachRange range, ReachDirection direction)
    {
        text.AppendLine();
        if (range.Count == 1)
        {
            text.Wrapped($"The plan gives {report.Setup.Station.Name}'s height exactly and its place to within a step of the ground data: there is no range to try.", 0);
            return;
        }

        (double low, double median, double high) = range.AreaSquareMetres(direction);
        (double below, double above) = range.TypicalMove();
        text.Wrapped(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Over the range of its place and height ({range.Count} maps) 0 dB and more: {low / 1e6:0.00} km² whatever of it is true, {median / 1e6:0.00} km² at the best guess, {high / 1e6:0.00} km² where any of it would do. At the median place the margin is {below:0.0} dB less to {above:0.0} dB more."),
            0);
        text.Wrapped($"Tried: {string.Join("; ", report.Tried)}", 0);
    }

    private static string Margins(ReachClass one) => double.IsNegativeInfinity(one.FromDb) ? "below the limit"
        : double.IsPositiveInfinity(one.ToDb) ? string.Create(CultureInfo.InvariantCulture, $"{one.FromDb:0.#} dB and more")
        : string.Create(CultureInfo.InvariantCulture, $"{one.FromDb:0.#} to {one.ToDb:0.#} dB");

    private static void Comparison(StringBuilder text, ReachReport report, ReachReport compared, ReachDirection direction)
    {
        ReachComparison comparison = ReachComparison.Of(report.Map, compared.Map, direction);
        text.AppendLine();
        text.Wrapped(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Compared with {compared.Setup.Station.Subject}, the margin is {Signed(comparison.MedianDb)} dB at the median place; {Signed(comparison.LowDb)} to {Signed(comparison.HighDb)} dB at nine places of ten. {comparison.GainedSquareMetres / 1e6:0.00} km² are gained, {comparison.LostSquareMetres / 1e6:0.00} km² lost."),
            0);
    }

    private static string Signed(double value) => value.ToString("+0.0;-0.0;0.0", CultureInfo.InvariantCulture);

    private static void Budget(StringBuilder text, ReachReport report)
    {
        ReachBudget budget = report.Map.Budget;
        text.AppendLine();
        text.Line($"The budget without the path and the station's gain towards each place");
        text.Line($"  {"power into the station's antenna",-46} {budget.Station.PowerIntoAntennaDbm!.Value.Median,8:0.0} dBm");
        text.Line($"  {"gain of its main beam",-46} {budget.StationPattern.MainBeamDbi!.Value.Median,8:0.0} dBi");
        text.Wrapped(budget.StationPattern.Form, 6);
        text.Line($"  {"gain of the receiver's antenna",-46} {budget.Receiver.GainDbi!.Value.Median,8:0.0} dBi");
        foreach (LedgerLine line in budget.EndLosses)
        {
            text.Line($"  {line.Label,-46} {-line.Value,8:0.0} dB");
        }

        text.Line($"  {"level that the receiver wants",-46} {budget.Receiver.RequiredDbm!.Value.Median,8:0.0} dBm");
        text.Line($"  {"level that the station wants",-46} {budget.Station.RequiredDbm!.Value.Median,8:0.0} dBm");
        text.Line($"  {"not known about a place, heard / hears",-46} {$"±{report.Map.HeardSpread.Unknown.Total:0.0} / ±{report.Map.HearsSpread.Unknown.Total:0.0}",8} dB");
        text.Line($"  {"from packet to packet",-46} {$"±{report.Map.HeardSpread.Fading.Total:0.0}",8} dB");
    }

    /// <summary>What is not well, and what was assumed.</summary>
    internal static void Notes(IEnumerable<Finding> findings, IEnumerable<Assumption> assumptions)
    {
        IAnsiConsole console = AnsiConsole.Console;
        foreach (IGrouping<(Verdict, string), Finding> group in findings
            .Where(finding => finding.Verdict != Verdict.Ok)
            .GroupBy(finding => (finding.Verdict, FindingSentences.Text(finding))))
        {
            console.WriteLine();
            console.WriteLine(VerdictText.Word(group.Key.Item1) + "  " + group.First().Subject, VerdictText.Style(group.Key.Item1));
            Wrap(console, group.Key.Item2);
            Wrap(console, FindingSentences.Advice(group.First()));
        }

        console.WriteLine();
        foreach (string assumed in assumptions.Select(assumption => $"Assumed: {assumption.Text} ({assumption.Source})").Distinct(StringComparer.Ordinal))
        {
            Wrap(console, assumed);
        }
    }

    private static void Wrap(IAnsiConsole console, string text)
    {
        if (text.Length > 0)
        {
            console.Write(new Padder(new Text(text), new Padding(2, 0, 0, 0)));
        }
    }
}
