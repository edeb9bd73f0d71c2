using System.Globalization;
using System.Text;
using Mastwright.Findings;
using Mastwright.Propagation;

namespace Mastwright.Cli.Output;

/// <summary>A bare path in words: loss, its parts, what is in the way, and every intermediate.</summary>
internal static class BarePathText
{
    internal static string Write(PathProfile path, P1812Input input, PathLossPrediction prediction)
    {
        StringBuilder text = new();
        text.Line($"Path of {path.LengthMetres / 1000:0.###} km at {input.FrequencyHz / 1e6:0.###} MHz, {path.Count} points");
        text.Line($"Basic transmission loss {prediction.LossDb:0.0} dB by {prediction.Method}");
        foreach (RangeProblem problem in prediction.RangeProblems)
        {
            text.Wrapped($"Outside the range of the method: {problem.Text}", 0);
        }

        text.AppendLine();
        Append(text, prediction.Ledger);
        ClearanceAnalysis clearance = FresnelClearance.Analyse(
            path, input.TransmitterHeightMetres, input.ReceiverHeightMetres, input.FrequencyHz, EffectiveEarth.FactorFromGradient(input.RefractivityGradient));
        text.AppendLine();
        ClearanceText.Append(text, clearance);
        if (prediction.P1812Result is { } result)
        {
            text.AppendLine();
            text.AppendLine("Intermediates, by the symbols of ITU-R P.1812");
            Columns(text, result.Named());
        }

        return text.ToString().TrimEnd();
    }

    /// <summary>A ledger as lines of label and value, the unit at its total.</summary>
    internal static void Append(StringBuilder text, Ledger ledger)
    {
        text.AppendLine(Capital(ledger.Title));
        foreach (LedgerLine line in ledger.Lines)
        {
            text.Line($"  {Fit(Capital(line.Label), 52),-52} {Signed(line.Value),8}");
            text.Wrapped(line.Note, 6);
        }

        text.Line($"  {"total",-52} {Signed(ledger.Total),8} {ledger.Unit}");
    }

    /// <summary>Text in lines of at most 79 characters, each after some spaces; nothing for no text.</summary>
    internal static void Wrapped(this StringBuilder text, string words, int indent)
    {
        StringBuilder line = new(new string(' ', indent));
        foreach (string word in words.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > indent && line.Length + 1 + word.Length > 79)
            {
                text.AppendLine(line.ToString());
                line.Clear().Append(' ', indent);
            }

            line.Append(line.Length > indent ? " " : "").Append(word);
        }

        if (line.Length > indent)
        {
            text.AppendLine(line.ToString());
        }
    }

    private static string Capital(string label) => label.Length == 0 ? label : char.ToUpperInvariant(label[0]) + label[1..];

    private static string Signed(double value) => value.ToString("+0.0;-0.0;0.0", CultureInfo.InvariantCulture);

    internal static void Columns(StringBuilder text, IReadOnlyList<(string Name, double Value)> values)
    {
        const int Across = 3;
        int rows = (values.Count + Across - 1) / Across;
        for (int row = 0; row < rows; row++)
        {
            StringBuilder line = new("  ");
            for (int column = 0; column < Across && (column * rows) + row < values.Count; column++)
            {
                (string name, double value) = values[(column * rows) + row];
                line.Append(CultureInfo.InvariantCulture, $"{name,-9}{(value == 0 ? 0 : value),13:0.0000}   ");
            }

            text.AppendLine(line.ToString().TrimEnd());
        }
    }

    private static string Fit(string label, int width) => label.Length <= width ? label : label[..(width - 1)] + "…";

    /// <summary>A line in the invariant culture.</summary>
    internal static void Line(this StringBuilder text, FormattableString line) => text.AppendLine(line.ToString(CultureInfo.InvariantCulture));
}
