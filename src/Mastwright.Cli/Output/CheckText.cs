using System.Globalization;
using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Plans;
using Spectre.Console;

namespace Mastwright.Cli.Output;

/// <summary>A plan's report on the terminal: the links, what is not ok and what to do, what was assumed.</summary>
internal static class CheckText
{
    internal const string Promise = "A prediction is no permission and no promise: local rules, and those licensed to work on masts and mains, come first.";

    private const int FewSubjects = 3;

    internal static void Write(PlanReport report, bool all)
    {
        IAnsiConsole console = AnsiConsole.Console;
        console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{report.Plan.Name}: {report.Links.Length} {(report.Links.Length == 1 ? "link" : "links")} at {report.Settings.FrequencyHz / 1e6:0.###} MHz, {report.Settings.TimePercent:0.#} % of the time"));
        console.WriteLine();
        if (report.Links.Length > 0)
        {
            console.Write(Links(report));
            console.WriteLine("Margins in dB, there and back; the weaker direction decides.");
        }
        else
        {
            console.WriteLine("No two stations are there to link: give sites a fit-out in use, or add neighbours.");
        }

        if (!report.NotCounted.IsEmpty)
        {
            console.WriteLine($"Not counted, having no fit-out in use: {string.Join(", ", report.NotCounted.Select(site => site.Name))}.");
        }

        WriteFindings(console, report, all);
        if (all)
        {
            FitOutText.Write(console, report);
        }

        WriteAssumptions(console, report);
        console.WriteLine();
        console.WriteLine(Summary(report));
        console.WriteLine(Promise);
    }

    private static Table Links(PlanReport report)
    {
        Table table = new Table().Border(TableBorder.Simple).Width(80);
        table.AddColumn(new TableColumn("Link"));
        table.AddColumn(new TableColumn("km").RightAligned().NoWrap());
        table.AddColumn(new TableColumn("there").RightAligned().NoWrap());
        table.AddColumn(new TableColumn("back").RightAligned().NoWrap());
        table.AddColumn(new TableColumn("works").RightAligned().NoWrap());
        table.AddColumn(new TableColumn("verdict").NoWrap());
        foreach (LinkReport link in report.Links)
        {
            table.AddRow(
                new Text($"{link.From.Name} ~ {link.To.Name}"),
                new Text((link.Segment.DistanceMetres / 1000).ToString("0.0", CultureInfo.InvariantCulture)),
                new Text(Margin(link.Out)),
                new Text(Margin(link.Back)),
                new Text(link.Weaker.Odds is { } odds ? Works(odds.Works) : ""),
                new Text(VerdictText.Word(link.Finding.Verdict), VerdictText.Style(link.Finding.Verdict)));
        }

        return table;
    }

    private static string Works(double probability) => probability switch
    {
        > 0.995 => ">99 %",
        < 0.005 => "<1 %",
        _ => LinkOdds.Percent(probability),
    };

    private static string Margin(LinkDirection direction)
    {
        if (direction.MarginDb is not { } margin)
        {
            return "?";
        }

        string text = margin.Median.ToString("+0.0;-0.0;0.0", CultureInfo.InvariantCulture);
        return margin.High - margin.Low < 2 ? text : string.Create(CultureInfo.InvariantCulture, $"{margin.Low:+0;-0;0}…{margin.High:+0;-0;0}");
    }

    private static void WriteFindings(IAnsiConsole console, PlanReport report, bool all)
    {
        (Verdict Verdict, string Text, string Advice, string[] Subjects)[] groups =
        [
            .. report.AllFindings
                .Where(finding => all || finding.Verdict != Verdict.Ok)
                .GroupBy(finding => (finding.Verdict, Text: FindingSentences.Text(finding), Advice: FindingSentences.Advice(finding)))
                .OrderBy(group => Order(group.Key.Verdict))
                .Select(group => (group.Key.Verdict, group.Key.Text, group.Key.Advice, group.Select(finding => finding.Subject).Distinct(StringComparer.Ordinal).ToArray())),
        ];
        if (groups.Length == 0)
        {
            return;
        }

        console.WriteLine();
        console.WriteLine("Findings", new Style(decoration: Decoration.Bold));
        foreach ((Verdict verdict, string text, string advice, string[] subjects) in groups)
        {
            console.WriteLine(VerdictText.Word(verdict) + "  " + Subjects(subjects), VerdictText.Style(verdict));
            Indented(console, text);
            Indented(console, advice);
        }
    }

    private static void Indented(IAnsiConsole console, string text)
    {
        if (text.Length > 0)
        {
            console.Write(new Padder(new Text(text), new Padding(3, 0, 0, 0)));
        }
    }

    private static string Subjects(string[] subjects) => subjects.Length <= FewSubjects
        ? string.Join(", ", subjects)
        : string.Create(CultureInfo.InvariantCulture, $"{string.Join(", ", subjects.Take(FewSubjects))} and {subjects.Length - FewSubjects} more");

    private static void WriteAssumptions(IAnsiConsole console, PlanReport report)
    {
        if (report.Assumptions.IsEmpty)
        {
            return;
        }

        console.WriteLine();
        console.WriteLine("Assumed, because the plan does not say", new Style(decoration: Decoration.Bold));
        foreach (IGrouping<string, Assumption> group in report.Assumptions.GroupBy(one => one.Words, StringComparer.Ordinal))
        {
            string[] places = [.. group.Select(assumption => assumption.PlanPath).Where(path => path.Length > 0).Distinct(StringComparer.Ordinal)];
            Indented(console, "– " + group.Key + (places.Length == 0 ? "" : ": " + Subjects(places)));
        }
    }

    private static string Summary(PlanReport report)
    {
        int Count(Verdict verdict) => report.Links.Count(link => link.Finding.Verdict == verdict);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"Links: {Count(Verdict.Ok)} ok, {Count(Verdict.Tight)} tight, {Count(Verdict.Fails)} fail, {Count(Verdict.Unknown)} unknown.");
    }

    private static int Order(Verdict verdict) => verdict switch
    {
        Verdict.Fails => 0,
        Verdict.Unknown => 1,
        Verdict.Tight => 2,
        _ => 3,
    };
}
