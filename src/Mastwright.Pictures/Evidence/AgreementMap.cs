using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Agreement;
using Mastwright.Network.Links;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Network;

namespace Mastwright.Pictures.Evidence;

/// <summary>Prediction against measurement where the stations lie: each direct link with by how much it is heard better or worse than predicted.</summary>
/// <remarks>Better: unbroken and blue; worse: dashed and vermilion; expected and not heard: dotted. Each has its number.</remarks>
public static class AgreementMap
{
    private const double Margin = 18;
    private const double TextPixels = 13;
    private const double SmallPixels = 11;
    private const int Width = 1000;
    private const int Height = 640;

    /// <summary>Draws the map.</summary>
    /// <param name="summary">Prediction against measurement.</param>
    /// <param name="stations">The stations where they lie.</param>
    /// <param name="own">Key of the station that heard.</param>
    /// <param name="theme">Light or dark.</param>
    /// <exception cref="InvalidOperationException">The fonts are missing from the program.</exception>
    public static Drawing Draw(AgreementSummary summary, IReadOnlyList<MatrixStation> stations, string own, Theme theme)
    {
        ArgumentNullException.ThrowIfNull(summary);
        ArgumentNullException.ThrowIfNull(stations);
        Palette palette = Palette.Of(theme);
        MatrixStation from = stations.First(one => one.Key == own);
        NetworkMap map = new(stations, new(Margin + 60, 110, Width - Margin - 90, Height - 80));
        AgreementRow[] shown = [.. summary.Rows.Where(row => row.MeasuredDbm is not null || row.Works >= 0.5)];
        int missed = shown.Count(row => row.MeasuredDbm is null);
        string title = $"{from.Name}: measured against predicted";
        string words = Text($"{shown.Length - missed} links heard directly, {missed} expected and not heard. The number is measured minus predicted signal power in dB.");
        return new()
        {
            WidthPixels = Width,
            HeightPixels = Height,
            Title = title,
            Description = words,
            Paper = palette.Paper,
            Shapes =
            [
                .. SheetHead.Of(title, words, Width, palette),
                new GroupShape("links", [.. shown.SelectMany(row => Link(row, map.At(from.Place), map.At(stations.First(one => one.Key == row.Station).Place), palette))]),
                new GroupShape("stations", LinksPicture.Stations(stations, map, palette)),
                new TextShape(new(Margin, Height - 18), "Unbroken: heard better than predicted; dashed: worse; dotted: expected and not heard. Square: own site; diamond: neighbour. North is up.", SmallPixels, palette.Muted),
            ],
        };
    }

    private static ImmutableArray<Shape> Link(AgreementRow row, Spot from, Spot to, Palette palette)
    {
        Stroke stroke = row.OffDb switch
        {
            null => new(palette.Missing, 1.6) { Dashes = [2, 5] },
            >= 0 => new(palette.Ok, 2.4),
            _ => new(palette.Fails, 2.4) { Dashes = [9, 5] },
        };
        // Nearer to the far end: there the links are apart.
        Spot at = new(from.X + (0.62 * (to.X - from.X)), from.Y + (0.62 * (to.Y - from.Y)));
        string number = row.OffDb is { } off ? $"{(row.WeakOnesLost ? "≤ " : "")}{off.ToString("+0.0;−0.0;0.0", CultureInfo.InvariantCulture)} dB" : "not heard";
        return
        [
            new LineShape([from, to], stroke),
            new TextShape(new(at.X, at.Y + 4), number, TextPixels, palette.Ink) { Halo = palette.Paper, Anchor = TextAnchor.Middle, Weight = TextWeight.SemiBold },
        ];
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
