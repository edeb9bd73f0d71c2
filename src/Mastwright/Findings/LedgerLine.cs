using System.Globalization;

namespace Mastwright.Findings;

/// <summary>One line of a ledger: a named, signed contribution to its total.</summary>
/// <param name="Code">Stable name of the line within its ledger, kebab-case.</param>
/// <param name="Label">What a person reads.</param>
/// <param name="Value">Signed contribution in the ledger's unit.</param>
/// <param name="Source">Where the number comes from: plan path, catalogue row, document and clause, or "assumed".</param>
/// <param name="Note">How it came about, such as the factor behind a step that multiplies; empty when there is nothing to say.</param>
public sealed record LedgerLine(string Code, string Label, double Value, string Source, string Note = "")
{
    /// <summary>The label and the signed value, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Label}: {Value:+0.##;-0.##;0}");
}
