using System.Runtime.InteropServices;
using Mastwright.Geodesy;
using Mastwright.Ground;

namespace Mastwright.Storage.Ground;

/// <summary>Which pieces of which files a path or an area needs.</summary>
internal static class PieceFinder
{
    private const double LegMetres = 2_000;
    private const double MarginSamples = 2;

    /// <summary>The pieces that a path runs over, with two samples to spare on all sides.</summary>
    internal static HashSet<PieceKey> Along(IReadOnlyList<LibraryFile> files, GeoPoint from, GeoPoint to)
    {
        (GeodesicLine line, double length) = GeodesicLine.Between(from, to);
        int legs = Math.Max(1, (int)Math.Ceiling(length / LegMetres));
        GeoPoint[] nodes = new GeoPoint[legs + 1];
        for (int i = 0; i < nodes.Length; i++)
        {
            nodes[i] = line.At(length * i / legs);
        }

        GeoBounds around = GeoBounds.Of(nodes).Expanded(LegMetres);
        HashSet<PieceKey> keys = [];
        for (int f = 0; f < files.Count; f++)
        {
            if (!files[f].Bounds.Intersects(around))
            {
                continue;
            }

            (double column, double row) = files[f].File.Frame.Locate(nodes[0]);
            for (int i = 1; i < nodes.Length; i++)
            {
                (double nextColumn, double nextRow) = files[f].File.Frame.Locate(nodes[i]);
                Add(keys, files[f], f, Math.Min(column, nextColumn), Math.Max(column, nextColumn), Math.Min(row, nextRow), Math.Max(row, nextRow));
                (column, row) = (nextColumn, nextRow);
            }
        }

        return keys;
    }

    /// <summary>The pieces that an area meets.</summary>
    internal static HashSet<PieceKey> Within(IReadOnlyList<LibraryFile> files, GeoBounds area)
    {
        HashSet<PieceKey> keys = [];
        for (int f = 0; f < files.Count; f++)
        {
            if (files[f].Bounds.Intersects(area))
            {
                AddArea(keys, files[f], f, area);
            }
        }

        return keys;
    }

    private static void AddArea(HashSet<PieceKey> keys, LibraryFile file, int index, GeoBounds area)
    {
        // Columns and rows of points all over the area's edge; the far side of a sixteenth of an edge bulges less than the margin below.
        double lowColumn = double.PositiveInfinity;
        double highColumn = double.NegativeInfinity;
        double lowRow = double.PositiveInfinity;
        double highRow = double.NegativeInfinity;
        GridFrame frame = file.File.Frame;
        double middle = area.WestDegrees + (area.WidthDegrees / 2);
        double turn = frame.IsGeographic ? 360 * Math.Round((((frame.OriginX + frame.LastX) / 2) - middle) / 360) : 0;
        for (int i = 0; i <= 16; i++)
        {
            for (int j = 0; j <= 16; j++)
            {
                double latitude = area.SouthDegrees + ((area.NorthDegrees - area.SouthDegrees) * i / 16);
                double longitude = area.WestDegrees + (area.WidthDegrees * j / 16);
                (double column, double row) = frame.IsGeographic
                    ? ((longitude + turn - frame.OriginX) / frame.StepX, (frame.OriginY - latitude) / frame.StepY)
                    : frame.Locate(new GeoPoint(latitude, longitude));
                if (!double.IsNaN(column))
                {
                    (lowColumn, highColumn) = (Math.Min(lowColumn, column), Math.Max(highColumn, column));
                    (lowRow, highRow) = (Math.Min(lowRow, row), Math.Max(highRow, row));
                }
            }
        }

        double bulge = frame.IsGeographic ? 0 : 0.01 * Math.Max(highColumn - lowColumn, highRow - lowRow);
        Add(keys, file, index, lowColumn - bulge, highColumn + bulge, lowRow - bulge, highRow + bulge);
    }

    private static void Add(
        HashSet<PieceKey> keys, LibraryFile file, int index, double lowColumn, double highColumn, double lowRow, double highRow)
    {
        GridFrame frame = file.File.Frame;
        if (!(highColumn >= -MarginSamples && lowColumn <= frame.Columns + MarginSamples && highRow >= -MarginSamples && lowRow <= frame.Rows + MarginSamples))
        {
            return;
        }

        int firstColumn = (int)Math.Clamp(lowColumn - MarginSamples, 0, frame.Columns - 1) / file.File.PieceColumns;
        int lastColumn = (int)Math.Clamp(highColumn + MarginSamples, 0, frame.Columns - 1) / file.File.PieceColumns;
        int firstRow = (int)Math.Clamp(lowRow - MarginSamples, 0, frame.Rows - 1) / file.File.PieceRows;
        int lastRow = (int)Math.Clamp(highRow + MarginSamples, 0, frame.Rows - 1) / file.File.PieceRows;
        for (int row = firstRow; row <= lastRow; row++)
        {
            for (int column = firstColumn; column <= lastColumn; column++)
            {
                keys.Add(new(index, column, row));
            }
        }
    }
}

/// <summary>A piece of a file of a library.</summary>
/// <param name="File">Index of the file.</param>
/// <param name="Column">Column of the piece.</param>
/// <param name="Row">Row of the piece.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct PieceKey(int File, int Column, int Row);
