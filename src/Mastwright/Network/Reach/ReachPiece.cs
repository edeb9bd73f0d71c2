using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Propagation;
using Mastwright.Propagation.Area;

namespace Mastwright.Network.Reach;

/// <summary>The cells of one piece of a field: of each row of the field's grid a run of columns.</summary>
/// <remarks>A cell that is not the piece's own is <see cref="ReachFlags.Outside"/>, as one beyond the radius is. Immutable and safe from many threads.</remarks>
public sealed class ReachPiece
{
    private const int BlockSide = 16;

    private readonly float[] lossDb;
    private readonly float[] elevationDegrees;
    private readonly ReachFlags[] flags;

    internal ReachPiece(int firstRow, (int Column, int Start)[] runs, float[] lossDb, float[] elevationDegrees, ReachFlags[] flags, ImmutableArray<ReachGap> gaps)
    {
        FirstRow = firstRow;
        Runs = runs;
        this.lossDb = lossDb;
        this.elevationDegrees = elevationDegrees;
        this.flags = flags;
        Gaps = gaps;
    }

    /// <summary>Ground that the piece lacks, by tile; empty when nothing is.</summary>
    public ImmutableArray<ReachGap> Gaps { get; }

    /// <summary>First row of the field's grid with a run.</summary>
    internal int FirstRow { get; }

    /// <summary>Of each row its first column and where its run starts in the arrays; one entry more says where the last ends.</summary>
    internal (int Column, int Start)[] Runs { get; }

    internal ReadOnlySpan<float> LossDb => lossDb;

    internal ReadOnlySpan<float> ElevationDegrees => elevationDegrees;

    internal ReadOnlySpan<ReachFlags> Flags => flags;

    internal static ReachPiece Of(
        ReachPieces pieces, int index, SweepLayout layout, SweepResult result, ImmutableArray<SweepGap> gaps, GroundExtent ground, CancellationToken cancellation)
    {
        (int firstRow, (int Column, int Start)[] runs) = RunsOf(pieces.Grid, [.. BlocksOf(pieces, index)]);
        int cells = runs[^1].Start;
        float[] loss = new float[cells];
        float[] elevation = new float[cells];
        ReachFlags[] marks = new ReachFlags[cells];
        Array.Fill(loss, float.NaN);
        Array.Fill(elevation, float.NaN);
        Array.Fill(marks, ReachFlags.Outside);
        IReadOnlyList<double> missing = Fill(pieces, index, layout, result, firstRow, runs, row => runs[row].Start, loss, elevation, marks, cancellation);
        return new(firstRow, runs, loss, elevation, marks, GapsOf(pieces, gaps, ground, missing));
    }

    /// <summary>Fills the piece's cells of the whole field, and nothing else; what ground they lack.</summary>
    internal static ImmutableArray<ReachGap> Lay(
        ReachPieces pieces, int index, SweepLayout layout, SweepResult result, ImmutableArray<SweepGap> gaps, GroundExtent ground, float[] loss, float[] elevation, ReachFlags[] marks, CancellationToken cancellation)
    {
        (int firstRow, (int Column, int Start)[] runs) = RunsOf(pieces.Grid, [.. BlocksOf(pieces, index)]);
        int columns = pieces.Grid.Columns;
        return GapsOf(
            pieces, gaps, ground, Fill(pieces, index, layout, result, firstRow, runs, row => ((firstRow + row) * columns) + runs[row].Column, loss, elevation, marks, cancellation));
    }

    /// <summary>Fills the piece's cells; the distances in metres of those without ground.</summary>
    private static IReadOnlyList<double> Fill(
        ReachPieces pieces, int index, SweepLayout layout, SweepResult result, int firstRow, (int Column, int Start)[] runs, Func<int, int> startOf, float[] loss, float[] elevation, ReachFlags[] marks, CancellationToken cancellation)
    {
        SweptRows swept = new(pieces.Input, pieces.Places, pieces.Grid.Columns, pieces.StepMetres, layout, result, pieces, index);
        for (int i = 0; i < runs.Length - 1; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            int first = startOf(i);
            int count = runs[i + 1].Start - runs[i].Start;
            swept.Lay(firstRow + i, runs[i].Column, loss.AsSpan(first, count), elevation.AsSpan(first, count), marks.AsSpan(first, count));
        }

        return swept.MissingMetres;
    }

    private static ImmutableArray<ReachGap> GapsOf(ReachPieces pieces, ImmutableArray<SweepGap> gaps, GroundExtent ground, IReadOnlyList<double> missing)
    {
        double[] missingMetres = [.. missing.Order()];
        return
        [
            .. gaps.Where(gap => gap.NearestMetres <= pieces.Input.RadiusMetres)
                .Select(gap => new ReachGap(gap.Tile, IsVoid(ground, gap, pieces), Farther(missingMetres, gap.NearestMetres - pieces.Input.CellMetres), gap.NearestMetres, gap.NearestBearingDegrees)),
        ];
    }

    /// <summary>
    /// Marks the cells of a whole field that no piece will fill: blocks beyond the radius. Those of a piece are left to it, on its own thread: memory
    /// that was never touched costs more than what is written to it.
    /// </summary>
    internal static void FillBeyond(ReachPieces pieces, float[] loss, float[] elevation, ReachFlags[] marks, ParallelOptions options)
    {
        GridFrame grid = pieces.Grid;
        double radius = BlockRadius(pieces);
        Parallel.For(0, (grid.Rows + BlockSide - 1) / BlockSide, options, blockRow =>
        {
            int row = blockRow * BlockSide;
            foreach ((int column, double east, double north) in BlocksAlong(pieces, row))
            {
                if (!pieces.IsBeyond(ReachPieces.Distance(east, north), radius))
                {
                    continue;
                }

                int count = Math.Min(BlockSide, grid.Columns - column);
                for (int line = row; line < Math.Min(row + BlockSide, grid.Rows); line++)
                {
                    int first = (line * grid.Columns) + column;
                    loss.AsSpan(first, count).Fill(float.NaN);
                    elevation.AsSpan(first, count).Fill(float.NaN);
                    marks.AsSpan(first, count).Fill(ReachFlags.Outside);
                }
            }
        });
    }

    /// <summary>The blocks of a row of them: the first column, and where the middle lies, in places east and north of the station.</summary>
    private static IEnumerable<(int Column, double East, double North)> BlocksAlong(ReachPieces pieces, int row)
    {
        GridFrame grid = pieces.Grid;
        GridLattice.RowReader along = pieces.Places.Row(Math.Min(row + (BlockSide / 2), grid.Rows - 1));
        for (int column = 0; column < grid.Columns; column += BlockSide)
        {
            (double east, double north) = along.At(Math.Min(column + (BlockSide / 2), grid.Columns - 1));
            yield return (column, east / pieces.StepMetres, north / pieces.StepMetres);
        }
    }

    /// <summary>Radius in places of a circle around a block, with room for the bend of what is a square on the grid.</summary>
    private static double BlockRadius(ReachPieces pieces) => 1.02 * BlockSide * pieces.Grid.StepX / pieces.StepMetres / Math.Sqrt(2);

    /// <summary>Blocks of cells, by their north-western ones, that may hold cells of a piece.</summary>
    private static IEnumerable<(int Column, int Row)> BlocksOf(ReachPieces pieces, int index)
    {
        double radius = BlockRadius(pieces);
        for (int row = 0; row < pieces.Grid.Rows; row += BlockSide)
        {
            foreach ((int column, double east, double north) in BlocksAlong(pieces, row))
            {
                if (pieces.MayMeet(index, east, north, radius))
                {
                    yield return (column, row);
                }
            }
        }
    }

    /// <summary>Of each row the columns from the first to the last of its blocks.</summary>
    private static (int FirstRow, (int Column, int Start)[] Runs) RunsOf(GridFrame grid, List<(int Column, int Row)> blocks)
    {
        if (blocks.Count == 0)
        {
            return (0, [(0, 0)]);
        }

        int firstRow = blocks.Min(block => block.Row);
        int[] west = new int[Math.Min(blocks.Max(block => block.Row) + BlockSide, grid.Rows) - firstRow];
        int[] east = new int[west.Length];
        Array.Fill(west, int.MaxValue);
        Array.Fill(east, -1);
        foreach ((int column, int row) in blocks)
        {
            for (int i = row - firstRow; i < Math.Min(row + BlockSide - firstRow, west.Length); i++)
            {
                west[i] = Math.Min(west[i], column);
                east[i] = Math.Max(east[i], Math.Min(column + BlockSide, grid.Columns) - 1);
            }
        }

        (int Column, int Start)[] runs = new (int, int)[west.Length + 1];
        int start = 0;
        for (int row = 0; row < west.Length; row++)
        {
            runs[row] = east[row] < 0 ? (0, start) : (west[row], start);
            start += east[row] < 0 ? 0 : east[row] - west[row] + 1;
        }

        runs[^1] = (0, start);
        return (firstRow, runs);
    }

    /// <summary>Whether a tile was there and holds no height.</summary>
    private static bool IsVoid(GroundExtent ground, SweepGap gap, ReachPieces pieces)
    {
        GeoPoint place = Geodesic.Direct(pieces.Input.Station, gap.NearestBearingDegrees, gap.NearestMetres);
        return ground.Cut(GeoBounds.Of(place).Expanded(pieces.StepMetres)).Heights.Any(window =>
        {
            (double column, double row) = window.Frame.Locate(place);
            return column >= 0 && row >= 0 && column <= window.Frame.Columns - 1 && row <= window.Frame.Rows - 1;
        });
    }

    private static int Farther(double[] sorted, double metres)
    {
        int index = Array.BinarySearch(sorted, metres);
        return sorted.Length - (index < 0 ? ~index : index);
    }
}
