using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Writers;

namespace Mastwright.Workbench.Tiles;

/// <summary>Heights written as the colours of a picture: metres = red × 256 + green + blue / 256 − 32768.</summary>
/// <remarks>
/// The open "terrarium" form of elevation tiles, which the MapLibre style specification names for its raster-dem sources. It has no mark for
/// "nothing known": such pixels are 0 m here, and the picture of the land says where they are.
/// </remarks>
internal static class HeightPicture
{
    private const double ZeroMetres = 32_768;

    /// <summary>The picture of a tile's heights; sea level all over when there are none.</summary>
    public static byte[] Write(ReadOnlySpan<float> heightsMetres)
    {
        byte[] pixels = new byte[4 * TileAddress.Side * TileAddress.Side];
        for (int i = 0; i < pixels.Length / 4; i++)
        {
            float metres = heightsMetres.IsEmpty || float.IsNaN(heightsMetres[i]) ? 0 : heightsMetres[i];
            int steps = (int)Math.Round((metres + ZeroMetres) * 256);
            pixels[4 * i] = (byte)(steps >> 16);
            pixels[(4 * i) + 1] = (byte)(steps >> 8);
            pixels[(4 * i) + 2] = (byte)steps;
            pixels[(4 * i) + 3] = 255;
        }

        return PixelPng.Write(PixelImage.FromPixels(TileAddress.Side, TileAddress.Side, pixels));
    }
}
