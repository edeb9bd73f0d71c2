using Mastwright.Propagation.Area;

namespace Mastwright.Benchmarks.Reach;

/// <summary>Made ground: all land, with woods.</summary>
internal static class MadeHills
{
    internal const double LatitudeDegrees = 50.5;

    /// <summary>Height of the woods in the rasters of <see cref="Raster"/>, in metres.</summary>
    private const float WoodMetres = 15;

    // The classes of the built-in table of cover: trees and grass.
    private const byte Wood = 10;
    private const byte Grass = 30;

    /// <summary>The plane of a sweep.</summary>
    internal static SweepRaster Raster(double radiusMetres, double cellMetres)
    {
        int reach = (int)Math.Ceiling(radiusMetres / cellMetres);
        (float[] heights, byte[] cover) = Samples(reach, cellMetres);
        float[] coverHeights = new float[256];
        coverHeights[Wood] = WoodMetres;
        return new(reach, cellMetres, LatitudeDegrees, heights, cover, coverHeights);
    }

    /// <summary>Hills of many sizes, to 600 m, with woods in the hollows of a pattern.</summary>
    internal static (float[] Heights, byte[] Cover) Samples(int reach, double cellMetres)
    {
        int side = (2 * reach) + 1;
        float[] heights = new float[side * side];
        byte[] cover = new byte[heights.Length];
        Parallel.For(0, side, row =>
        {
            for (int column = 0; column < side; column++)
            {
                double x = (column - reach) * cellMetres / 1000;
                double y = (row - reach) * cellMetres / 1000;
                double height = 300;
                double size = 110;
                double wave = 0.35;
                for (int octave = 0; octave < 6; octave++)
                {
                    double turned = (x * Math.Cos(octave * 1.3)) + (y * Math.Sin(octave * 1.3));
                    double across = (y * Math.Cos(octave * 1.3)) - (x * Math.Sin(octave * 1.3));
                    height += size * Math.Sin((turned * wave) + (0.7 * Math.Sin(across * wave * 0.8))) * Math.Cos((across * wave * 0.9) + octave);
                    size *= 0.5;
                    wave *= 2.1;
                }

                int cell = (row * side) + column;
                heights[cell] = (float)height;
                cover[cell] = (byte)(Math.Sin(x * 4.1) + Math.Cos(y * 3.7) + Math.Sin((x + y) * 1.3) > 0.7 ? Wood : Grass);
            }
        });
        return (heights, cover);
    }
}
