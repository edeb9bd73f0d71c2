using System.Globalization;
using System.Text;
using Mastwright.Plans;
using Mastwright.Quantities;

namespace Mastwright.Cli.Output;

/// <summary>The fit-outs of a site side by side on the terminal, 80 columns wide: a table, which is better in what, the parts of each.</summary>
internal static class ComparisonText
{
    private const int LabelWidth = 29;
    private const int ColumnWidth = 16;
    private const int ColumnsAside = 3;

    internal static void Write(IEnumerable<FitOutComparison> comparisons)
    {
        StringBuilder text = new();
        foreach (FitOutComparison comparison in comparisons)
        {
            Site(text, comparison);
        }

        text.Wrapped(CheckText.Promise, 0);
        Console.Out.Write(text.ToString());
    }

    private static void Site(StringBuilder text, FitOutComparison comparison)
    {
        text.Wrapped($"{comparison.Site.Name}: {comparison.FitOuts.Length} fit-outs side by side", 0);
        for (int from = 0; from < comparison.FitOuts.Length; from += ColumnsAside)
        {
            text.AppendLine();
            Table(text, comparison, from, Math.Min(ColumnsAside, comparison.FitOuts.Length - from));
        }

        text.AppendLine();
        text.AppendLine("Which is better in what");
        foreach (string sentence in ComparisonSentences.Of(comparison))
        {
            text.Wrapped("– " + sentence, 2);
        }

        foreach (ComparedFitOut fitOut in comparison.FitOuts)
        {
            text.AppendLine();
            text.Wrapped($"Parts of {fitOut.FitOut.Key} ({fitOut.FitOut.Name})", 0);
            foreach (PartNeeded part in fitOut.Parts)
            {
                text.Wrapped($"{part.Count} × {part.What}{Length(part.LengthMetres)}", 2);
            }
        }

        text.AppendLine();
    }

    private static void Table(StringBuilder text, FitOutComparison comparison, int from, int count)
    {
        Row("", i => comparison.FitOuts[i].FitOut.Key + (comparison.FitOuts[i].IsInUse ? " *" : ""));
        foreach (ComparedMeasure measure in comparison.Measures)
        {
            Row(measure.Unit.Length == 0 ? measure.Label : $"{measure.Label}, {measure.Unit}", i => ComparisonSentences.Value(measure, measure.Values[i]));
        }

        if (comparison.FitOuts.Skip(from).Take(count).Any(fitOut => fitOut.IsInUse))
        {
            text.AppendLine("* in use");
        }

        void Row(string label, Func<int, string> cell)
        {
            text.Append(CultureInfo.InvariantCulture, $"{label,-LabelWidth}");
            for (int i = from; i < from + count; i++)
            {
                text.Append(CultureInfo.InvariantCulture, $" {Fit(cell(i)),ColumnWidth}");
            }

            text.AppendLine();
        }
    }

    private static string Fit(string cell) => cell.Length <= ColumnWidth ? cell : cell[..(ColumnWidth - 1)] + "…";

    private static string Length(Estimate? metres) => metres is not { } length ? ""
        : length.IsExact ? string.Create(CultureInfo.InvariantCulture, $", {length.Median:0.##} m")
        : string.Create(CultureInfo.InvariantCulture, $", {length.Low:0.##} to {length.High:0.##} m");
}
