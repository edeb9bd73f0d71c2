using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Mastwright.Findings;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;

namespace Mastwright.Pictures.Ledgers;

/// <summary>A ledger as steps: each line an arrow that begins where the one above it ended, and the total under them all.</summary>
/// <remarks>What adds points right, what takes away points left; the numbers stand beside. Nothing is said by colour alone.</remarks>
public static class LedgerPicture
{
    private const int MostLines = 200;
    private const double Margin = 18;
    private const double RowPixels = 36;
    private const double TitlePixels = 16;
    private const double TextPixels = 13;
    private const double SmallPixels = 11;

    /// <summary>Draws a ledger; its height follows from the number of lines.</summary>
    /// <param name="ledger">The ledger: at most 200 lines, every value finite.</param>
    /// <param name="widthPixels">Width of the sheet, 560 to 4000 pixels at scale 1.</param>
    /// <param name="theme">Light or dark.</param>
    /// <exception cref="ArgumentException">The ledger has more than 200 lines, or a value that is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The width is outside its range.</exception>
    /// <exception cref="InvalidOperationException">The fonts are missing from the program.</exception>
    public static Drawing Draw(Ledger ledger, int widthPixels, Theme theme)
    {
        Check(ledger, widthPixels);
        Palette palette = Palette.Of(theme);
        double top = Margin + TitlePixels + 16;
        double valuesRight = widthPixels - Margin;
        double valueWidth = ledger.Lines.Select(line => line.Value).Append(ledger.Total).Max(value => TextRuler.WidthPixels(Signed(value, ledger.Unit), TextPixels, TextWeight.SemiBold));
        double labelWidth = (widthPixels - (2 * Margin)) * 0.38;
        Box steps = new(Margin + labelWidth + 16, top, valuesRight - valueWidth - 16, top + (RowPixels * (ledger.Lines.Length + 1)));
        LedgerScale scale = LedgerScale.Of(ledger, steps);

        List<Shape> rows = [];
        double sum = 0;
        double y = top;
        foreach (LedgerLine line in ledger.Lines)
        {
            rows.Add(Row(line, ledger.Unit, sum, y, scale, palette, labelWidth, valuesRight));
            sum += line.Value;
            y += RowPixels;
            rows.Add(new LineShape([new(scale.X(sum), y - 8), new(scale.X(sum), y + 8)], new(palette.Muted, 1) { Dashes = [2, 2] }));
        }

        double zero = scale.X(0);
        ImmutableArray<Shape> shapes =
        [
            new TextShape(new(Margin, Margin + TitlePixels), TextRuler.Fit(ledger.Title, widthPixels - (2 * Margin), TitlePixels, TextWeight.SemiBold), TitlePixels, palette.Ink) { Weight = TextWeight.SemiBold },
            new GroupShape("zero", [new LineShape([new(zero, top - 4), new(zero, steps.Bottom)], new(palette.Muted, 1)), new TextShape(new(zero, top - 8), $"0 {ledger.Unit}", SmallPixels, palette.Muted) { Anchor = TextAnchor.Middle }]),
            new GroupShape("steps", [.. rows]),
            Total(ledger, y, scale, palette, valuesRight, widthPixels),
        ];
        return new()
        {
            WidthPixels = widthPixels,
            HeightPixels = (int)Math.Ceiling(y + RowPixels + Margin),
            Title = string.Create(CultureInfo.InvariantCulture, $"{ledger.Title}: {Number(ledger.Total)} {ledger.Unit}"),
            Description = Describe(ledger),
            Paper = palette.Paper,
            Shapes = shapes,
        };
    }

    private static void Check(Ledger ledger, int widthPixels)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        ArgumentOutOfRangeException.ThrowIfLessThan(widthPixels, 560);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(widthPixels, 4000);
        if (ledger.Lines.Length > MostLines || !double.IsFinite(ledger.Total) || ledger.Lines.Any(line => !double.IsFinite(line.Value)))
        {
            throw new ArgumentException("A ledger is drawn with at most 200 lines, every value finite.", nameof(ledger));
        }
    }

    private static GroupShape Row(LedgerLine line, string unit, double before, double y, LedgerScale scale, Palette palette, double labelWidth, double valuesRight)
    {
        string where = line.Note.Length == 0 ? line.Source : $"{line.Source} · {line.Note}";
        Ink ink = line.Value < 0 ? palette.Fails : palette.Ok;
        return new(
            $"line-{line.Code}",
            [
                new TextShape(new(Margin, y + 15), TextRuler.Fit(line.Label, labelWidth, TextPixels), TextPixels, palette.Ink),
                new TextShape(new(Margin, y + 29), TextRuler.Fit(where, labelWidth, SmallPixels), SmallPixels, palette.Muted),
                Arrow(scale.X(before), scale.X(before + line.Value), y + (RowPixels / 2), new(ink.Veil(0.85))),
                new TextShape(new(valuesRight, y + 22), Signed(line.Value, unit), TextPixels, palette.Ink) { Anchor = TextAnchor.End },
            ]);
    }

    private static GroupShape Total(Ledger ledger, double y, LedgerScale scale, Palette palette, double valuesRight, double widthPixels) => new(
        "total",
        [
            new LineShape([new(Margin, y), new(widthPixels - Margin, y)], new(palette.Muted, 1)),
            new TextShape(new(Margin, y + 22), "total", TextPixels, palette.Ink) { Weight = TextWeight.SemiBold },
            Arrow(scale.X(0), scale.X(ledger.Total), y + (RowPixels / 2), new(palette.Ink)),
            new TextShape(new(valuesRight, y + 22), $"{Number(ledger.Total)} {ledger.Unit}", TextPixels, palette.Ink) { Weight = TextWeight.SemiBold, Anchor = TextAnchor.End },
        ]);

    /// <summary>A bar with a pointed end; a short upright line where nothing changes.</summary>
    private static AreaShape Arrow(double from, double to, double y, Fill fill)
    {
        const double Half = 8;
        double way = to - from;
        if (Math.Abs(way) < 1)
        {
            return AreaShape.Of(new(from - 0.75, y - Half, from + 0.75, y + Half), fill);
        }

        double neck = to - (Math.Sign(way) * Math.Min(7, Math.Abs(way)));
        return new([new(from, y - Half), new(neck, y - Half), new(to, y), new(neck, y + Half), new(from, y + Half)], fill);
    }

    private static string Describe(Ledger ledger)
    {
        StringBuilder text = new();
        foreach (LedgerLine line in ledger.Lines)
        {
            text.Append(line.Label).Append(": ").Append(Signed(line.Value, ledger.Unit)).Append(" (").Append(line.Source).Append("). ");
        }

        return text.Append("Total: ").Append(Number(ledger.Total)).Append(' ').Append(ledger.Unit).Append('.').ToString();
    }

    private static string Number(double value) => value.ToString("0.##;−0.##;0", CultureInfo.InvariantCulture);

    // A line of a dBm ledger changes a level: its own unit is the dB.
    private static string Signed(double value, string unit) =>
        $"{value.ToString("+0.##;−0.##;0", CultureInfo.InvariantCulture)} {(unit == "dBm" ? "dB" : unit)}";
}

/// <summary>Turns values of a ledger into pixels across.</summary>
/// <param name="Steps">Where the steps are drawn.</param>
/// <param name="Low">Least sum reached, at the left.</param>
/// <param name="High">Greatest sum reached, at the right.</param>
internal sealed record LedgerScale(Box Steps, double Low, double High)
{
    /// <summary>The scale that holds zero and every sum on the way.</summary>
    public static LedgerScale Of(Ledger ledger, Box steps)
    {
        double low = 0;
        double high = 0;
        double sum = 0;
        foreach (LedgerLine line in ledger.Lines)
        {
            sum += line.Value;
            low = Math.Min(low, sum);
            high = Math.Max(high, sum);
        }

        return new(steps, low, high > low ? high : low + 1);
    }

    /// <summary>Pixels across for a sum.</summary>
    public double X(double sum) => Steps.Left + ((sum - Low) / (High - Low) * Steps.Width);
}
