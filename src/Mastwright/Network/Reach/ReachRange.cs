using Mastwright.Ground;

namespace Mastwright.Network.Reach;

/// <summary>How much a map moves over the range of its station's place and height: a state that takes one map after another.</summary>
/// <remarks>
/// Least and most margin of each cell over the best guess and all that was tried. The order makes no difference. One thread at a time. A cell that a map does not hold, because its
/// station stands some metres aside or ground is missing, keeps what the others say.
/// </remarks>
public sealed class ReachRange
{
    private readonly float[] low;
    private readonly float[] high;

    /// <summary>The state before the first try.</summary>
    /// <param name="best">The map of the best guess.</param>
    public ReachRange(ReachMap best)
    {
        ArgumentNullException.ThrowIfNull(best);
        Best = best;
        low = best.MarginsDb(ReachDirection.Heard);
        high = [.. low];
    }

    /// <summary>The map of the best guess.</summary>
    public ReachMap Best { get; }

    /// <summary>Number of maps, the best guess among them.</summary>
    public int Count { get; private set; } = 1;

    /// <summary>Takes a map of another place or height of the same station.</summary>
    /// <exception cref="ArgumentException">Its cells do not lie on those of the best guess.</exception>
    public void Take(ReachMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        (int column, int row) = ReachGrid.OffsetOf(map.Field.Frame, Best.Field.Frame);
        Count++;
        GridFrame own = map.Field.Frame;
        GridFrame frame = Best.Field.Frame;
        for (int r = Math.Max(0, -row); r < Math.Min(own.Rows, frame.Rows - row); r++)
        {
            for (int c = Math.Max(0, -column); c < Math.Min(own.Columns, frame.Columns - column); c++)
            {
                int at = ((row + r) * frame.Columns) + column + c;
                float margin = (float)map.MarginDb((r * own.Columns) + c, ReachDirection.Heard);
                if (!float.IsNaN(margin) && !float.IsNaN(low[at]))
                {
                    low[at] = Math.Min(low[at], margin);
                    high[at] = Math.Max(high[at], margin);
                }
            }
        }
    }

    /// <summary>Least margins in dB, row by row; NaN where the best guess has none.</summary>
    public float[] LowDb(ReachDirection direction) => Shifted(low, direction);

    /// <summary>Most margins in dB, row by row; NaN where the best guess has none.</summary>
    public float[] HighDb(ReachDirection direction) => Shifted(high, direction);

    /// <summary>Area with 0 dB and more: whatever of the range is true, at the best guess, and if the best of it is true; in square metres.</summary>
    public (double Low, double Median, double High) AreaSquareMetres(ReachDirection direction)
    {
        double cell = Best.Field.CellAreaSquareMetres;
        return (LowDb(direction).Count(margin => margin >= 0) * cell, Best.MarginsDb(direction).Count(margin => margin >= 0) * cell, HighDb(direction).Count(margin => margin >= 0) * cell);
    }

    /// <summary>Median over the cells of how far the margin may be below, and above, that of the best guess, in dB.</summary>
    public (double BelowDb, double AboveDb) TypicalMove()
    {
        float[] best = Best.MarginsDb(ReachDirection.Heard);
        return (Median(cell => best[cell] - low[cell]), Median(cell => high[cell] - best[cell]));

        double Median(Func<int, float> of)
        {
            float[] moves = [.. Enumerable.Range(0, best.Length).Where(cell => !float.IsNaN(best[cell])).Select(of).Order()];
            return moves[moves.Length / 2];
        }
    }

    private float[] Shifted(float[] heard, ReachDirection direction)
    {
        double shift = direction switch
        {
            ReachDirection.Heard => 0,
            ReachDirection.Hears => Best.Budget.HeardOverHearsDb,
            _ => Math.Max(0, Best.Budget.HeardOverHearsDb),
        };
        return Array.ConvertAll(heard, margin => (float)(margin - shift));
    }
}
