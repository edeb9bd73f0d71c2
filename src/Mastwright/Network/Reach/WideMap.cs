using Mastwright.Ground;

namespace Mastwright.Network.Reach;

/// <summary>A map with more cells than are held in memory at once: its cells are read in bands of rows, and a coarser map stands for it in pictures.</summary>
/// <remarks>Safe from many threads, as the reading of its pieces has to be.</remarks>
public sealed class WideMap
{
    private const int BandRows = 256;

    private readonly ReachPieces pieces;
    private readonly IReadOnlyList<ReachPieceBytes> parts;
    private ReachMap? idle;

    private WideMap(ReachPieces pieces, IReadOnlyList<ReachPieceBytes> parts, ReachMap overview, ReachTotals totals, ReachMap idle)
    {
        this.idle = idle;
        this.pieces = pieces;
        this.parts = parts;
        Overview = overview;
        Totals = totals;
    }

    /// <summary>The grid of all cells.</summary>
    public GridFrame Frame => pieces.Grid;

    /// <summary>A map of every so-manieth cell across and down, each with its own numbers.</summary>
    public ReachMap Overview { get; }

    /// <summary>What is counted over all cells.</summary>
    public ReachTotals Totals { get; }

    /// <summary>Reads all cells once, for the totals and the overview.</summary>
    /// <param name="pieces">The field as it was cut.</param>
    /// <param name="parts">All its pieces.</param>
    /// <param name="budget">The budget.</param>
    /// <param name="mostCells">Most cells within the radius of the overview.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static WideMap Of(ReachPieces pieces, IReadOnlyList<ReachPieceBytes> parts, ReachBudget budget, long mostCells = ReachGrid.MostCells, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        ArgumentNullException.ThrowIfNull(parts);
        ReachFieldInput input = pieces.Input;

        // An odd number of cells has one in its middle, whose centre is that of the coarse cell.
        int every = (int)Math.Ceiling(input.RadiusMetres * Math.Sqrt(Math.PI / mostCells) / input.CellMetres) | 1;
        ReachFieldInput coarse = input with { CellMetres = every * input.CellMetres };
        GridFrame frame = ReachGrid.Of(coarse, long.MaxValue);
        float[] loss = new float[frame.Columns * frame.Rows];
        float[] elevation = new float[loss.Length];
        ReachFlags[] flags = new ReachFlags[loss.Length];
        Array.Fill(loss, float.NaN);
        Array.Fill(elevation, float.NaN);
        Array.Fill(flags, ReachFlags.Outside);
        int west = (int)Math.Round((frame.OriginX - pieces.Grid.OriginX) / input.CellMetres);
        int north = (int)Math.Round((pieces.Grid.OriginY - frame.OriginY) / input.CellMetres);
        ReachTotals? totals = null;
        ReachMap? band = null;
        for (int row = 0; row < pieces.Grid.Rows; row += BandRows)
        {
            cancellation.ThrowIfCancellationRequested();
            int rows = Math.Min(BandRows, pieces.Grid.Rows - row);
            ReachField last = ReachPieceBytes.Rows(pieces, parts, row, rows, band?.Field);
            band = band?.Over(last, isSpent: true) ?? ReachMap.Of(last, budget);
            totals = totals?.With(ReachTotals.Of(band)) ?? ReachTotals.Of(band);
            for (int cell = 0; cell < loss.Length; cell++)
            {
                int fineRow = north + (cell / frame.Columns * every) - row;
                int column = west + (cell % frame.Columns * every);
                if (fineRow < 0 || fineRow >= rows)
                {
                    cell += frame.Columns - 1;
                }
                else if (column >= 0 && column < pieces.Grid.Columns)
                {
                    int fine = (fineRow * pieces.Grid.Columns) + column;
                    (loss[cell], elevation[cell], flags[cell]) = (last.LossDb[fine], last.StationElevationDegrees[fine], last.Flags[fine]);
                }
            }
        }

        ReachField field = ReachField.FromCells(coarse, frame, loss, elevation, flags, band!.Field.Gaps, pieces.StepMetres);
        return new(pieces, parts, band.Over(field), totals!, band);
    }

    /// <summary>Some rows of the map, as a map of their own.</summary>
    /// <param name="firstRow">The first of them.</param>
    /// <param name="rows">Their number, 1 or more.</param>
    /// <param name="spent">A band that nobody asks any more: its arrays are used again; null for new ones.</param>
    public ReachMap Band(int firstRow, int rows, ReachMap? spent = null)
    {
        // The first reader takes over what the totals were counted in.
        spent ??= Interlocked.Exchange(ref idle, null);
        ReachField field = ReachPieceBytes.Rows(pieces, parts, firstRow, rows, spent?.Field);
        return spent?.Over(field, isSpent: true) ?? Overview.Over(field);
    }
}
