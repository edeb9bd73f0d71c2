using Mastwright.Geodesy;
using Mastwright.Ground;

namespace Mastwright.Storage.Ground;

/// <summary>What a library knows about the sea at the lattice points of one one-degree tile.</summary>
internal static class SeaCells
{
    /// <summary>Lattice points a side, without the next tile's first.</summary>
    internal const int Side = SeaMap.PointsPerDegree;

    /// <summary>A file so fine that a degree of it has more samples than this takes no part: reading it all would take too long.</summary>
    private const double MostSamplesADegree = 200e6;

    /// <summary>Cells row by row from the south-west; the first source that knows a point answers for it.</summary>
    internal static SeaCell[] Of(
        GroundTile tile, IReadOnlyList<LibraryFile> files, IEnumerable<TileIndex> indexes, Func<PieceKey, GroundWindow?> load)
    {
        SeaCell[] cells = new SeaCell[Side * Side];
        GeoBounds bounds = new(tile.SouthDegrees, tile.WestDegrees, tile.SouthDegrees + 1, Math.Min(180, tile.WestDegrees + 1));
        for (int f = 0; f < files.Count; f++)
        {
            GridFrame frame = files[f].File.Frame;
            bool isTooFine = Math.Pow(111_000 / frame.ResolutionMetres, 2) > MostSamplesADegree;
            if (!files[f].IsCover && !isTooFine && files[f].Bounds.Intersects(bounds))
            {
                Fill(cells, tile, files[f], f, load);
            }
        }

        if (indexes.Any(index => !index.Lists(tile)))
        {
            cells.AsSpan().Replace(SeaCell.Unknown, SeaCell.OpenSea);
        }

        return cells;
    }

    private static void Fill(SeaCell[] cells, GroundTile tile, LibraryFile file, int index, Func<PieceKey, GroundWindow?> load)
    {
        if (file.File.HasCheapRows && file.File.Frame.IsGeographic)
        {
            FillByRows(cells, tile, file, index, load);
        }
        else
        {
            FillByPieces(cells, tile, file, index, load);
        }
    }

    /// <summary>Reads only the rows that the lattice runs through: a fifteenth of a tile of one arc-second.</summary>
    private static void FillByRows(SeaCell[] cells, GroundTile tile, LibraryFile file, int index, Func<PieceKey, GroundWindow?> load)
    {
        GridFrame frame = file.File.Frame;
        double firstColumn = frame.Locate(new GeoPoint(tile.SouthDegrees, tile.WestDegrees)).Column;
        double columnsAStep = 1 / (Side * frame.StepX);
        if (firstColumn > frame.Columns || firstColumn + ((Side - 1) * columnsAStep) < -1)
        {
            // The file begins or ends with the edge it shares with this tile.
            return;
        }

        for (int y = 0; y < Side; y++)
        {
            double row = Math.Round((frame.OriginY - (tile.SouthDegrees + (y / (double)Side))) / frame.StepY);
            if (!(row >= 0 && row < frame.Rows))
            {
                continue;
            }

            float[] heights;
            try
            {
                heights = file.File.ReadHeights(0, (int)row, frame.Columns, 1);
            }
            catch (GroundFileException)
            {
                // Asking for a piece makes the damage a problem of the library.
                load(new(index, 0, (int)row / file.File.PieceRows));
                return;
            }

            for (int x = 0; x < Side; x++)
            {
                double column = Math.Round(firstColumn + (x * columnsAStep));
                int cell = (y * Side) + x;
                if (column >= 0 && column < frame.Columns && cells[cell] == SeaCell.Unknown)
                {
                    float height = heights[(int)column];
                    bool isHeight = height is >= GroundWindow.LowestHeightMetres and <= GroundWindow.HighestHeightMetres;
                    cells[cell] = SeaMap.Classify(isHeight ? height : double.NaN);
                }
            }
        }
    }

    private static void FillByPieces(SeaCell[] cells, GroundTile tile, LibraryFile file, int index, Func<PieceKey, GroundWindow?> load)
    {
        GridFrame frame = file.File.Frame;
        List<(PieceKey Piece, int Cell, int Column, int Row)> wanted = [];
        for (int cell = 0; cell < cells.Length; cell++)
        {
            if (cells[cell] != SeaCell.Unknown)
            {
                continue;
            }

            double latitude = tile.SouthDegrees + (cell / Side / (double)Side);
            double longitude = tile.WestDegrees + (cell % Side / (double)Side);
            (double column, double row) = frame.Locate(new GeoPoint(latitude, longitude));
            column = Math.Round(column);
            row = Math.Round(row);
            if (column >= 0 && row >= 0 && column < frame.Columns && row < frame.Rows)
            {
                int c = (int)column;
                int r = (int)row;
                wanted.Add((new(index, c / file.File.PieceColumns, r / file.File.PieceRows), cell, c, r));
            }
        }

        foreach (IGrouping<PieceKey, (PieceKey Piece, int Cell, int Column, int Row)> group in wanted.GroupBy(one => one.Piece))
        {
            GroundWindow? window = load(group.Key);
            foreach ((PieceKey piece, int cell, int column, int row) in group)
            {
                int at = ((row - (piece.Row * file.File.PieceRows)) * (window?.Frame.Columns ?? 0)) + column - (piece.Column * file.File.PieceColumns);
                cells[cell] = window is null ? SeaCell.Unknown : SeaMap.Classify(window.Heights[at]);
            }
        }
    }
}
