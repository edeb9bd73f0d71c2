using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Workbench.Components;
using Mastwright.Workbench.Work;

namespace Mastwright.Workbench.Desk;

/// <summary>A fit-out as tables: its findings by element, its budgets line by line, fit-outs side by side, what a change moves.</summary>
internal static class FitOutTables
{
    /// <summary>Every finding of the fit-out, by element.</summary>
    /// <param name="desk">The fit-out.</param>
    /// <param name="address">Where an element is shown; null for nowhere.</param>
    internal static WorkTable Findings(FitOutDesk desk, Func<StationElement, string>? address = null) => new(
        "findings", "Every finding, element by element", [new("Element"), new("Verdict"), new("Finding"), new("Value", IsNumber: true), new("Limit", IsNumber: true), new("Unit"), new("Source of the limit")],
        [
            .. desk.Elements.SelectMany(element => element.Findings.Select(finding => new WorkRow(
                [element.Label, VerdictMark.WordOf(finding.Verdict), FindingSentences.Text(finding), Value(finding.Value), Number(finding.Limit), finding.Unit, finding.Source])
            {
                Verdict = finding.Verdict,
                Address = address?.Invoke(element),
            })),
        ]);

    /// <summary>Every line of every budget, by element.</summary>
    internal static WorkTable Ledgers(FitOutDesk desk) => new(
        "ledgers", "Every budget, line by line", [new("Element"), new("Budget"), new("Line"), new("Value", IsNumber: true), new("Unit"), new("Source"), new("Note")],
        [
            .. desk.Elements.SelectMany(element => element.Ledgers.SelectMany(ledger => ledger.Lines.Select(line => new WorkRow(
                [element.Label, ledger.Title, line.Label, Number(line.Value), ledger.Unit, line.Source, line.Note])))),
        ]);

    /// <summary>Fit-outs side by side.</summary>
    /// <param name="comparison">The fit-outs of the site.</param>
    /// <param name="fitOuts">Keys of those that are shown, in this order.</param>
    internal static WorkTable Compared(FitOutComparison comparison, ImmutableArray<string> fitOuts)
    {
        int[] shown = [.. fitOuts.Select(key => comparison.FitOuts.IndexOf(comparison.FitOuts.First(one => one.FitOut.Key == key)))];
        return new(
            "comparison", "Fit-outs side by side; ● stands at what is ahead of what is shown beside it",
            [new("Measure"), .. shown.Select(i => new WorkColumn(comparison.FitOuts[i].FitOut.Key + (comparison.FitOuts[i].IsInUse ? " (in use)" : ""), IsNumber: true)), new("Unit")],
            [
                .. comparison.Measures.Select(measure => measure with { Values = [.. shown.Select(i => measure.Values[i])] }).Select(measure => new WorkRow(
                    [measure.Label, .. measure.Values.Select((value, i) => (measure.Ahead.Contains(i) ? "● " : "") + Cell(measure, value)), measure.Unit])),
            ]);
    }

    /// <summary>The measures of a fit-out before and after a change; those that stay are left out.</summary>
    internal static WorkTable Moved(ReportDifference difference) => new(
        "moved", "What moves", [new("Measure"), new("As it is", IsNumber: true), new("As tried", IsNumber: true), new("Unit")],
        [
            .. difference.Measures.Select(measure => (measure, Before: Cell(measure, measure.Values[0]), After: Cell(measure, measure.Values[1])))
                .Where(one => one.Before != one.After)
                .Select(one => new WorkRow([one.measure.Label, one.Before, one.After, one.measure.Unit])),
        ]);

    private static string Cell(ComparedMeasure measure, ComparedValue value) => ComparisonSentences.Value(measure, value) + (value.Note.Length > 0 ? $" ({value.Note})" : "");

    private static string Value(Estimate? value) => value is not { } known ? ""
        : known.IsExact ? Number(known.Median)
        : string.Create(CultureInfo.InvariantCulture, $"{Number(known.Low)}…{Number(known.High)}");

    private static string Number(double? value) => value is { } known ? Numbers.Plain(known) : "";
}
