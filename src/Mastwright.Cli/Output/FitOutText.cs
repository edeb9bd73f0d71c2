using System.Globalization;
using Mastwright.Findings;
using Mastwright.Plans;
using Spectre.Console;

namespace Mastwright.Cli.Output;

/// <summary>The budgets of each fit-out on the terminal: every line with how it came about.</summary>
internal static class FitOutText
{
    private const int LabelWidth = 56;

    internal static void Write(IAnsiConsole console, PlanReport report)
    {
        foreach (FitOutReport fitOut in report.FitOuts)
        {
            foreach (Ledger ledger in fitOut.Examination.Ledgers)
            {
                console.WriteLine();
                console.WriteLine($"{fitOut.Station.Subject}: {ledger.Title}", new Style(decoration: Decoration.Bold));
                foreach (LedgerLine line in ledger.Lines)
                {
                    Line(console, line.Label, line.Value, ledger.Unit);
                    Note(console, line);
                }

                Line(console, "in all", ledger.Total, ledger.Unit);
            }
        }
    }

    private static void Line(IAnsiConsole console, string label, double value, string unit) =>
        console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"   {Fit(label),-LabelWidth} {Number(value),11} {unit}"));

    private static string Fit(string label) => label.Length <= LabelWidth ? label : label[..(LabelWidth - 1)] + "…";

    /// <summary>Four significant digits, or whole numbers above: the lines still sum to the total by eye.</summary>
    private static string Number(double value) => Math.Abs(value) switch
    {
        >= 1000 => value.ToString("0", CultureInfo.InvariantCulture),
        >= 100 => value.ToString("0.0", CultureInfo.InvariantCulture),
        >= 10 => value.ToString("0.00", CultureInfo.InvariantCulture),
        _ => value.ToString("0.000", CultureInfo.InvariantCulture),
    };

    private static void Note(IAnsiConsole console, LedgerLine line)
    {
        string note = string.Join("; ", new[] { line.Note, line.Source }.Where(part => part.Length > 0));
        if (note.Length > 0)
        {
            console.Write(new Padder(new Text(note, new Style(decoration: Decoration.Dim)), new Padding(6, 0, 0, 0)));
        }
    }
}
