using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Paths;

/// <summary>How each kind of cover is drawn and called.</summary>
internal static class CoverStyle
{
    /// <summary>Colour and pattern.</summary>
    public static Fill FillOf(CoverKind kind, Palette palette) => kind switch
    {
        CoverKind.Water => new(palette.Water, new(HatchKind.Waves, palette.WaterMarks)),
        CoverKind.Grass => new(palette.Grass, new(HatchKind.Blades, palette.GrassMarks)),
        CoverKind.Trees => new(palette.Trees, new(HatchKind.Firs, palette.TreesMarks)),
        CoverKind.Buildings => new(palette.Buildings, new(HatchKind.Gables, palette.BuildingsMarks)),
        CoverKind.Other => new(palette.Other, new(HatchKind.Dots, palette.OtherMarks)),
        _ => new(palette.Ground),
    };

    /// <summary>Colour of the edge.</summary>
    public static Ink EdgeOf(CoverKind kind, Palette palette) => kind switch
    {
        CoverKind.Water => palette.WaterMarks,
        CoverKind.Grass => palette.GrassMarks,
        CoverKind.Trees => palette.TreesMarks,
        CoverKind.Buildings => palette.BuildingsMarks,
        CoverKind.Other => palette.OtherMarks,
        _ => palette.GroundEdge,
    };

    /// <summary>The word in the legend.</summary>
    public static string NameOf(CoverKind kind) => kind switch
    {
        CoverKind.Water => "water",
        CoverKind.Grass => "pasture",
        CoverKind.Trees => "woodland",
        CoverKind.Buildings => "buildings",
        CoverKind.Other => "other cover",
        _ => "ground",
    };
}
