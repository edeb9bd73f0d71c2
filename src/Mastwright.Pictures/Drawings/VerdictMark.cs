using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;

namespace Mastwright.Pictures.Drawings;

/// <summary>A verdict as a shape and as words: neither needs colour to be read.</summary>
internal static class VerdictMark
{
    /// <summary>
    /// Disc with a tick: ok. Half-filled diamond: tight. Square with a cross: fails. Ring with a question mark: unknown.
    /// </summary>
    public static GroupShape Draw(Verdict verdict, Spot centre, double radius, Palette palette)
    {
        Ink ink = palette.Of(verdict);
        double r = radius;
        Stroke inner = new(palette.Paper, Math.Max(1.2, r / 4));
        ImmutableArray<Shape> shapes = verdict switch
        {
            Verdict.Ok =>
            [
                new AreaShape(Disc(centre, r), new(ink)),
                new LineShape([At(-0.5, 0.05), At(-0.12, 0.45), At(0.5, -0.38)], inner),
            ],
            Verdict.Tight =>
            [
                new AreaShape([At(0, -1.1), At(1.1, 0), At(0, 1.1), At(-1.1, 0)], new(palette.Paper), new(ink, 1.5)),
                new AreaShape([At(-1.1, 0), At(1.1, 0), At(0, 1.1)], new(ink)),
            ],
            Verdict.Fails =>
            [
                new AreaShape([At(-0.95, -0.95), At(0.95, -0.95), At(0.95, 0.95), At(-0.95, 0.95)], new(ink)),
                new LineShape([At(-0.45, -0.45), At(0.45, 0.45)], inner),
                new LineShape([At(-0.45, 0.45), At(0.45, -0.45)], inner),
            ],
            _ =>
            [
                new AreaShape(Disc(centre, r * 0.92), new(palette.Paper), new(ink, 1.5)),
                new TextShape(At(0, 0.48), "?", r * 1.4, ink) { Anchor = TextAnchor.Middle, Weight = TextWeight.SemiBold },
            ],
        };
        return new($"verdict-{Word(verdict)}", shapes);

        Spot At(double right, double down) => new(centre.X + (right * r), centre.Y + (down * r));
    }

    /// <summary>The word of a verdict.</summary>
    public static string Word(Verdict verdict) => verdict switch
    {
        Verdict.Ok => "ok",
        Verdict.Tight => "tight",
        Verdict.Fails => "fails",
        _ => "unknown",
    };

    /// <summary>The word, and what is to spare or what is short; of an unknown verdict the range that leaves it unknown, if there is one.</summary>
    public static string Sentence(Verdict verdict, double? marginDb, double? lowDb = null, double? highDb = null)
    {
        string word = Word(verdict);
        if (verdict == Verdict.Unknown)
        {
            return Range(lowDb, highDb) is { } range ? $"{word}: {range} dB" : word;
        }

        return marginDb switch
        {
            null => word,
            < 0 and double margin => string.Create(CultureInfo.InvariantCulture, $"{word}: {-margin:0.#} dB short"),
            double margin => string.Create(CultureInfo.InvariantCulture, $"{word}: {margin:0.#} dB to spare"),
        };
    }

    /// <summary>A range of margins in whole decibels, "2 to 56", each with its sign where one is below zero; null where there is none.</summary>
    public static string? Range(double? lowDb, double? highDb) => (lowDb, highDb) switch
    {
        ({ } low, { } high) when Whole(low, false) != Whole(high, false) => $"{Whole(low, low < 0)} to {Whole(high, low < 0)}",
        _ => null,
    };

    /// <summary>A round outline.</summary>
    public static ImmutableArray<Spot> Disc(Spot centre, double radius)
    {
        const int Corners = 28;
        ImmutableArray<Spot>.Builder outline = ImmutableArray.CreateBuilder<Spot>(Corners);
        for (int i = 0; i < Corners; i++)
        {
            (double sine, double cosine) = Math.SinCos(2 * Math.PI * i / Corners);
            outline.Add(new(centre.X + (radius * cosine), centre.Y + (radius * sine)));
        }

        return outline.MoveToImmutable();
    }

    private static string Whole(double db, bool signed) =>
        Math.Round(db).ToString(signed ? "+0;−0;0" : "0;−0;0", CultureInfo.InvariantCulture);
}
