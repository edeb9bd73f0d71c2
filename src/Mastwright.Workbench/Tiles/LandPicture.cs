using Mastwright.Ground;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Workbench.Tiles;

/// <summary>What lies on the ground, in the colours of the path picture: water, trees, houses, open land; a hatch where no height is known.</summary>
internal static class LandPicture
{
    private const int HatchPixels = 8;

    private static readonly Land LightLand = new(Ink.Of(0xF1ECDF), Ink.Of(0xC9DEEA), Ink.Of(0xD0DCD0), Ink.Of(0xDBD0DA), Ink.Of(0xE3E2DC), Ink.Of(0xFBFAF6), Ink.Of(0xC9C6BD));
    private static readonly Land DarkLand = new(Ink.Of(0x2C2C28), Ink.Of(0x14303F), Ink.Of(0x263430), Ink.Of(0x3A3440), Ink.Of(0x343535), Ink.Of(0x14191E), Ink.Of(0x333B42));

    /// <summary>Draws a tile into a larger picture.</summary>
    /// <param name="mosaic">The tile's ground.</param>
    /// <param name="heightsMetres">Heights of its pixels; empty when none is known.</param>
    /// <param name="tile">The tile.</param>
    /// <param name="theme">Light or dark.</param>
    /// <param name="pixels">Four bytes a pixel, from the tile's north-western one on.</param>
    /// <param name="rowPixels">Pixels in a row of the picture.</param>
    public static void Draw(GroundMosaic mosaic, ReadOnlySpan<float> heightsMetres, TileAddress tile, Theme theme, Span<byte> pixels, int rowPixels)
    {
        Land land = theme == Theme.Dark ? DarkLand : LightLand;
        for (int row = 0; row < TileAddress.Side; row++)
        {
            double latitude = tile.LatitudeDegrees(row + 0.5);
            for (int column = 0; column < TileAddress.Side; column++)
            {
                int i = (row * TileAddress.Side) + column;
                float height = heightsMetres.IsEmpty ? float.NaN : heightsMetres[i];
                Ink ink = float.IsNaN(height)
                    ? (row + column) % HatchPixels == 0 ? land.Hatch : land.Unknown
                    : Colour(land, mosaic, height, latitude, tile.LongitudeDegrees(column + 0.5));
                Span<byte> pixel = pixels.Slice(4 * ((row * rowPixels) + column), 4);
                (pixel[0], pixel[1], pixel[2], pixel[3]) = (ink.Red, ink.Green, ink.Blue, 255);
            }
        }
    }

    private static Ink Colour(Land land, GroundMosaic mosaic, float height, double latitude, double longitude)
    {
        byte code = mosaic.CoverAt(new(latitude, longitude));
        if (code != 0)
        {
            // Codes of ESA WorldCover, as in the path picture.
            return code switch
            {
                10 or 95 => land.Trees,
                50 => land.Houses,
                60 or 70 => land.Bare,
                80 => land.Water,
                _ => land.Open,
            };
        }

        bool isSea = SeaMap.Classify(height) == SeaCell.AtSeaLevel && (mosaic.Sea is null ? height == 0 : mosaic.Sea.IsBesideSea(latitude, longitude));
        return isSea ? land.Water : land.Open;
    }

    private sealed record Land(Ink Open, Ink Water, Ink Trees, Ink Houses, Ink Bare, Ink Unknown, Ink Hatch);
}
