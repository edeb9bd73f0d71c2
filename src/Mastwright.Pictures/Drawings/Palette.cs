using Mastwright.Findings;

namespace Mastwright.Pictures.Drawings;

/// <summary>The colours of a theme.</summary>
/// <remarks>
/// Sand, blue, violet and vermilion, and no scale from red over yellow to green. Nothing is said by colour alone: every cover has its
/// pattern, every verdict its word and its shape. Inks of text keep 4.5 : 1 against the paper (WCAG 2, success criterion 1.4.3).
/// </remarks>
internal sealed record Palette
{
    private static readonly Palette LightInks = new()
    {
        Paper = Ink.Of(0xFBFAF6), Ink = Ink.Of(0x20262C), Muted = Ink.Of(0x59616A), Faint = Ink.Of(0x20262C).Veil(0.13),
        Ground = Ink.Of(0xDDD0BB), GroundEdge = Ink.Of(0x5A4A36),
        Water = Ink.Of(0xC3DCEC), WaterMarks = Ink.Of(0x4B83AE), Trees = Ink.Of(0xA3C0BA), TreesMarks = Ink.Of(0x2B5A56),
        Grass = Ink.Of(0xE6E4C2), GrassMarks = Ink.Of(0x7F7C40), Buildings = Ink.Of(0xCFC6D3), BuildingsMarks = Ink.Of(0x5A4E66),
        Other = Ink.Of(0xD8D8D3), OtherMarks = Ink.Of(0x6C7075),
        Ray = Ink.Of(0x14202B), Fresnel = Ink.Of(0x6A4FA3), Blocked = Ink.Of(0xC4471B), Missing = Ink.Of(0x7C8288),
        Ok = Ink.Of(0x1B5E9E), Tight = Ink.Of(0x815900), Fails = Ink.Of(0xB23A12), Unknown = Ink.Of(0x59616A),
    };

    private static readonly Palette DarkInks = new()
    {
        Paper = Ink.Of(0x14191E), Ink = Ink.Of(0xECE9E2), Muted = Ink.Of(0xA9B0B6), Faint = Ink.Of(0xECE9E2).Veil(0.15),
        Ground = Ink.Of(0x4B4235), GroundEdge = Ink.Of(0xD3BF9A),
        Water = Ink.Of(0x1D445F), WaterMarks = Ink.Of(0x79B2D8), Trees = Ink.Of(0x2B504C), TreesMarks = Ink.Of(0x8FC8BF),
        Grass = Ink.Of(0x4C4C2E), GrassMarks = Ink.Of(0xC0BE7E), Buildings = Ink.Of(0x4D4555), BuildingsMarks = Ink.Of(0xC8B9D6),
        Other = Ink.Of(0x44484C), OtherMarks = Ink.Of(0xA4A9AE),
        Ray = Ink.Of(0xF6F3EC), Fresnel = Ink.Of(0xB9A0EA), Blocked = Ink.Of(0xFF8A57), Missing = Ink.Of(0x8A9097),
        Ok = Ink.Of(0x82BCF0), Tight = Ink.Of(0xE3B552), Fails = Ink.Of(0xFF8A57), Unknown = Ink.Of(0xA9B0B6),
    };

    public required Ink Paper { get; init; }

    public required Ink Ink { get; init; }

    public required Ink Muted { get; init; }

    public required Ink Faint { get; init; }

    public required Ink Ground { get; init; }

    public required Ink GroundEdge { get; init; }

    public required Ink Water { get; init; }

    public required Ink WaterMarks { get; init; }

    public required Ink Trees { get; init; }

    public required Ink TreesMarks { get; init; }

    public required Ink Grass { get; init; }

    public required Ink GrassMarks { get; init; }

    public required Ink Buildings { get; init; }

    public required Ink BuildingsMarks { get; init; }

    public required Ink Other { get; init; }

    public required Ink OtherMarks { get; init; }

    public required Ink Ray { get; init; }

    public required Ink Fresnel { get; init; }

    public required Ink Blocked { get; init; }

    public required Ink Missing { get; init; }

    public required Ink Ok { get; init; }

    public required Ink Tight { get; init; }

    public required Ink Fails { get; init; }

    public required Ink Unknown { get; init; }

    /// <summary>The colours of a theme.</summary>
    public static Palette Of(Theme theme) => theme switch
    {
        Theme.Light => LightInks,
        Theme.Dark => DarkInks,
        _ => throw new ArgumentOutOfRangeException(nameof(theme), theme, "No such theme."),
    };

    /// <summary>The colour of a verdict.</summary>
    public Ink Of(Verdict verdict) => verdict switch
    {
        Verdict.Ok => Ok,
        Verdict.Tight => Tight,
        Verdict.Fails => Fails,
        _ => Unknown,
    };
}
