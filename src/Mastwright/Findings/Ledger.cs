using System.Collections.Immutable;
using System.Globalization;

namespace Mastwright.Findings;

/// <summary>A computed budget: ordered lines in one unit that sum to its total.</summary>
public sealed record Ledger
{
    /// <summary>Makes a ledger whose total is the sum of its lines.</summary>
    public Ledger(string title, string unit, ImmutableArray<LedgerLine> lines)
    {
        Title = title;
        Unit = unit;
        Lines = lines;
        double total = 0;
        foreach (LedgerLine line in lines)
        {
            total += line.Value;
        }

        Total = total;
    }

    /// <summary>What the ledger is of.</summary>
    public string Title { get; }

    /// <summary>The unit of every line and of the total: "dB", "dBm", "W" …</summary>
    public string Unit { get; }

    /// <summary>The lines in the order in which the thing happens.</summary>
    public ImmutableArray<LedgerLine> Lines { get; }

    /// <summary>The sum of the lines, added in their order.</summary>
    public double Total { get; }

    /// <summary>A ledger, checked against a total that was computed another way.</summary>
    /// <exception cref="InvalidOperationException">The lines do not sum to the total within 1e-9.</exception>
    public static Ledger SummingTo(double total, string title, string unit, ImmutableArray<LedgerLine> lines)
    {
        Ledger ledger = new(title, unit, lines);
        if (!(Math.Abs(ledger.Total - total) <= 1e-9))
        {
            throw new InvalidOperationException(string.Create(
                CultureInfo.InvariantCulture,
                $"The ledger '{title}' sums to {ledger.Total:R} {unit}, not to {total:R} {unit}."));
        }

        return ledger;
    }

    /// <summary>Title and total, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Title}: {Total:0.##} {Unit}");
}
