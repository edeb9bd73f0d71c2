using Mastwright.Geodesy;
using Mastwright.Ground;

namespace Mastwright.Storage.Ground;

/// <summary>A file of a library: what was found in its header, the source it belongs to, and the rectangle of the earth it may cover.</summary>
internal sealed class LibraryFile
{
    internal LibraryFile(GroundFile file, string sourceName, bool isCover, HeightKind kind, string datum)
    {
        File = file;
        SourceName = sourceName;
        IsCover = isCover;
        Kind = kind;
        Datum = datum.Length > 0 ? datum : file.Datum;
        Bounds = BoundsOf(file.Frame);
    }

    internal GroundFile File { get; }

    internal string SourceName { get; }

    internal bool IsCover { get; }

    internal HeightKind Kind { get; }

    internal string Datum { get; }

    /// <summary>A rectangle in degrees that holds the grid; a little larger than it for a UTM grid.</summary>
    internal GeoBounds Bounds { get; }

    internal int PiecesAcross => (File.Frame.Columns + File.PieceColumns - 1) / File.PieceColumns;

    internal int PiecesDown => (File.Frame.Rows + File.PieceRows - 1) / File.PieceRows;

    /// <summary>The grid of a piece.</summary>
    internal GridFrame FrameOf(int pieceColumn, int pieceRow)
    {
        int column = pieceColumn * File.PieceColumns;
        int row = pieceRow * File.PieceRows;
        return File.Frame.Part(column, row, Math.Min(File.PieceColumns, File.Frame.Columns - column), Math.Min(File.PieceRows, File.Frame.Rows - row));
    }

    /// <summary>Reads one piece.</summary>
    /// <exception cref="GroundFileException">The file is damaged or gone.</exception>
    internal GroundWindow ReadPiece(int pieceColumn, int pieceRow)
    {
        GridFrame frame = FrameOf(pieceColumn, pieceRow);
        int column = pieceColumn * File.PieceColumns;
        int row = pieceRow * File.PieceRows;
        return IsCover
            ? GroundWindow.FromCover(frame, File.ReadCover(column, row, frame.Columns, frame.Rows), File.Name, SourceName)
            : GroundWindow.FromHeights(frame, File.ReadHeights(column, row, frame.Columns, frame.Rows), File.Name, SourceName, Kind, Datum);
    }

    private static GeoBounds BoundsOf(GridFrame frame)
    {
        double halfX = frame.SamplesAreAreas ? frame.StepX / 2 : 0;
        double halfY = frame.SamplesAreAreas ? frame.StepY / 2 : 0;
        (double west, double east) = (frame.OriginX - halfX, frame.LastX + halfX);
        (double south, double north) = (frame.LastY - halfY, frame.OriginY + halfY);
        if (frame.IsGeographic)
        {
            return east - west >= 360
                ? new(Math.Max(-90, south), -180, Math.Min(90, north), 180)
                : new(Math.Max(-90, south), Wrap(west), Math.Min(90, north), Wrap(east));
        }

        // The edges of a UTM rectangle are curves in degrees: points along them, and a margin for the bulge between.
        List<GeoPoint> points = [];
        for (int i = 0; i <= 8; i++)
        {
            double x = west + ((east - west) * i / 8);
            double y = south + ((north - south) * i / 8);
            points.Add(ToGeo(frame, x, south));
            points.Add(ToGeo(frame, x, north));
            points.Add(ToGeo(frame, west, y));
            points.Add(ToGeo(frame, east, y));
        }

        return GeoBounds.Of(points).Expanded(10 + (0.01 * Math.Max(east - west, north - south)));
    }

    private static GeoPoint ToGeo(GridFrame frame, double x, double y) =>
        UniversalTransverseMercator.ToGeo(new UtmPosition(frame.UtmZone, frame.IsNorth, x, y));

    private static double Wrap(double degrees) => degrees switch
    {
        > 180 => degrees - 360,
        < -180 => degrees + 360,
        _ => degrees,
    };
}
