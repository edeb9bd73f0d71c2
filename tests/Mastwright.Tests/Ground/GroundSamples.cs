using Mastwright.Geodesy;
using Mastwright.Ground;

namespace Mastwright.Tests.Ground;

/// <summary>Ground made up for tests.</summary>
internal static class GroundSamples
{
    /// <summary>A one-degree tile of points that shares its edges, like a height tile of few samples.</summary>
    internal static GroundWindow Tile(
        int south, int west, int side, Func<double, double, double> heightAt, string source = "tiles", HeightKind kind = HeightKind.BareEarth, string datum = "EGM96")
    {
        double step = 1.0 / (side - 1);
        GridFrame frame = GridFrame.Geographic(west, south + 1, step, step, side, side, samplesAreAreas: false);
        return GroundWindow.FromHeights(frame, Fill(frame, heightAt), GroundTile.OneDegree(south, west).Name, source, kind, datum);
    }

    /// <summary>A rectangle of areas in degrees; west and north are its edges, not its samples.</summary>
    internal static GroundWindow Areas(double west, double north, double step, int columns, int rows, Func<double, double, double> heightAt, string name = "areas")
    {
        GridFrame frame = GridFrame.Geographic(west + (step / 2), north - (step / 2), step, step, columns, rows, samplesAreAreas: true);
        return GroundWindow.FromHeights(frame, Fill(frame, heightAt), name, name, HeightKind.BareEarth);
    }

    /// <summary>Cover codes for a rectangle of areas.</summary>
    internal static GroundWindow Cover(double west, double north, double step, int columns, int rows, Func<double, double, byte> codeAt)
    {
        GridFrame frame = GridFrame.Geographic(west + (step / 2), north - (step / 2), step, step, columns, rows, samplesAreAreas: true);
        byte[] codes = new byte[columns * rows];
        for (int i = 0; i < codes.Length; i++)
        {
            codes[i] = codeAt(frame.OriginY - (i / columns * step), frame.OriginX + (i % columns * step));
        }

        return GroundWindow.FromCover(frame, codes, "cover", "cover");
    }

    private static float[] Fill(GridFrame frame, Func<double, double, double> heightAt)
    {
        float[] heights = new float[frame.Columns * frame.Rows];
        for (int i = 0; i < heights.Length; i++)
        {
            double latitude = frame.OriginY - (i / frame.Columns * frame.StepY);
            double longitude = frame.OriginX + (i % frame.Columns * frame.StepX);
            heights[i] = (float)heightAt(latitude, longitude);
        }

        return heights;
    }
}
