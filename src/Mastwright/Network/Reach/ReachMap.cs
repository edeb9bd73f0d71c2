namespace Mastwright.Network.Reach;

/// <summary>Which way a margin counts.</summary>
public enum ReachDirection
{
    /// <summary>The station sends, the receiver in the cell hears it.</summary>
    Heard,

    /// <summary>The receiver in the cell sends, the station hears it.</summary>
    Hears,

    /// <summary>The weaker of the two.</summary>
    Both,
}

/// <summary>Levels, margins and odds over a field: what the loss makes of a budget.</summary>
/// <remarks>Immutable and safe from many threads. NaN where the field has no loss.</remarks>
public sealed class ReachMap
{
    private readonly float[] levelDbm;
    private readonly double requiredDbm;
    private readonly Lazy<OddsTable> heardOdds;
    private readonly Lazy<OddsTable> hearsOdds;

    private ReachMap(ReachField field, ReachBudget budget, float[] levelDbm)
    {
        Field = field;
        Budget = budget;
        this.levelDbm = levelDbm;
        requiredDbm = budget.Receiver.RequiredDbm!.Value.Median;
        HeardSpread = budget.Spread(heard: true);
        HearsSpread = budget.Spread(heard: false);
        heardOdds = new(() => new(HeardSpread.Unknown.Total, HeardSpread.Fading.Total));
        hearsOdds = new(() => new(HearsSpread.Unknown.Total, HearsSpread.Fading.Total));
    }

    /// <summary>The losses.</summary>
    public ReachField Field { get; }

    /// <summary>The budget.</summary>
    public ReachBudget Budget { get; }

    /// <summary>The spreads of the way from the station.</summary>
    public LinkSpread HeardSpread { get; }

    /// <summary>The spreads of the way to the station.</summary>
    public LinkSpread HearsSpread { get; }

    /// <summary>Level of the station at the receiver's antenna, in dBm, row by row; NaN where there is none.</summary>
    public ReadOnlySpan<float> LevelDbm => levelDbm;

    /// <summary>Works out the map.</summary>
    /// <exception cref="ArgumentException">A power, a gain or a required level of the budget is unknown.</exception>
    public static ReachMap Of(ReachField field, ReachBudget budget)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(budget);
        if (budget.StationPattern.MainBeamDbi is null || !double.IsFinite(budget.HeardOverHearsDb))
        {
            throw new ArgumentException("A power, a gain or a required level of the budget is unknown.", nameof(budget));
        }

        float[] level = new float[field.LossDb.Length];
        double atNoLoss = budget.HeardAtNoLossDbm;
        double mainBeamDbi = budget.StationPattern.MainBeamDbi.Value.Median;
        GridLattice plane = GridLattice.OfPlane(field.Frame, field.Input.Station);
        Parallel.For(0, field.Frame.Rows, row =>
        {
            GridLattice.RowReader along = plane.Row(row);
            for (int column = 0; column < field.Frame.Columns; column++)
            {
                int cell = (row * field.Frame.Columns) + column;
                float loss = field.LossDb[cell];
                if (float.IsNaN(loss))
                {
                    level[cell] = float.NaN;
                    continue;
                }

                (double east, double north) = along.At(column);
                double bearing = double.RadiansToDegrees(Math.Atan2(east, north));
                double gain = mainBeamDbi + budget.StationPattern.RelativeDb(field.StationElevationDegrees[cell], bearing);

                // A null of a formula is minus infinity: nobody's antenna is that clean, and no map holds it.
                level[cell] = (float)Math.Max(atNoLoss + gain - loss, -999);
            }
        });

        return new(field, budget, level);
    }

    /// <summary>Margin of a cell in dB; NaN where there is none.</summary>
    public double MarginDb(int cell, ReachDirection direction) => direction switch
    {
        ReachDirection.Heard => levelDbm[cell] - requiredDbm,
        ReachDirection.Hears => levelDbm[cell] - requiredDbm - Budget.HeardOverHearsDb,
        _ => levelDbm[cell] - requiredDbm - Math.Max(0, Budget.HeardOverHearsDb),
    };

    /// <summary>Margins of all cells in dB; NaN where there is none.</summary>
    public float[] MarginsDb(ReachDirection direction)
    {
        double shift = direction switch
        {
            ReachDirection.Heard => 0,
            ReachDirection.Hears => Budget.HeardOverHearsDb,
            _ => Math.Max(0, Budget.HeardOverHearsDb),
        };
        float[] margins = new float[levelDbm.Length];
        for (int i = 0; i < margins.Length; i++)
        {
            margins[i] = (float)(levelDbm[i] - requiredDbm - shift);
        }

        return margins;
    }

    /// <summary>Confidence that the link to a cell works, and what it delivers if it does; the weaker way's for <see cref="ReachDirection.Both"/>. Null where there is no loss.</summary>
    public LinkOdds? Odds(int cell, ReachDirection direction)
    {
        double margin = MarginDb(cell, direction) + Budget.LocationShiftDb;
        bool heard = direction == ReachDirection.Heard || (direction == ReachDirection.Both && Budget.HeardOverHearsDb <= 0);
        return double.IsNaN(margin) ? null : (heard ? heardOdds : hearsOdds).Value.At(margin);
    }

    /// <summary>The odds at a margin, for a legend.</summary>
    public LinkOdds OddsAt(double marginDb, ReachDirection direction)
    {
        bool heard = direction == ReachDirection.Heard || (direction == ReachDirection.Both && Budget.HeardOverHearsDb <= 0);
        return (heard ? heardOdds : hearsOdds).Value.At(marginDb + Budget.LocationShiftDb);
    }
}
