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
    private readonly double heardOverHearsDb;
    private readonly double locationShiftDb;
    private readonly GainOverElevation? gains;
    private readonly Lazy<OddsTable> heardOdds;
    private readonly Lazy<OddsTable> hearsOdds;

    private ReachMap(ReachField field, ReachBudget budget, float[] levelDbm, GainOverElevation? gains, ReachMap? other)
    {
        Field = field;
        Budget = budget;
        this.levelDbm = levelDbm;
        requiredDbm = budget.Receiver.RequiredDbm!.Value.Median;
        heardOverHearsDb = budget.HeardOverHearsDb;
        locationShiftDb = budget.LocationShiftDb;
        this.gains = gains;
        HeardSpread = other?.HeardSpread ?? budget.Spread(heard: true);
        HearsSpread = other?.HearsSpread ?? budget.Spread(heard: false);
        heardOdds = other?.heardOdds ?? new(() => new(HeardSpread.Unknown.Total, HeardSpread.Fading.Total));
        hearsOdds = other?.hearsOdds ?? new(() => new(HearsSpread.Unknown.Total, HearsSpread.Fading.Total));
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
    public static ReachMap Of(ReachField field, ReachBudget budget) => Of(field, budget, null);

    /// <summary>The map of another field with the same budget, by the tables that were made for this one.</summary>
    /// <param name="field">The field.</param>
    /// <param name="isSpent">Whether nobody asks this map any more: its array is used again.</param>
    internal ReachMap Over(ReachField field, bool isSpent = false) => Of(field, Budget, this, isSpent);

    private static ReachMap Of(ReachField field, ReachBudget budget, ReachMap? other, bool isSpent = false)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(budget);
        if (budget.StationPattern.MainBeamDbi is null || !double.IsFinite(budget.HeardOverHearsDb))
        {
            throw new ArgumentException("A power, a gain or a required level of the budget is unknown.", nameof(budget));
        }

        float[] level = isSpent && other!.levelDbm.Length == field.LossDb.Length ? other.levelDbm : new float[field.LossDb.Length];
        double atNoLoss = budget.HeardAtNoLossDbm;
        double mainBeamDbi = budget.StationPattern.MainBeamDbi.Value.Median;
        GainOverElevation? table = other?.gains ?? (budget.StationPattern.IsAlikeAllRound ? new(budget.StationPattern) : null);
        GridLattice? plane = table is null ? GridLattice.OfPlane(field.Frame, field.Input.Station) : null;
        Parallel.For(0, field.Frame.Rows, row =>
        {
            int first = row * field.Frame.Columns;
            ReadOnlySpan<float> losses = field.LossDb.Slice(first, field.Frame.Columns);
            ReadOnlySpan<float> elevations = field.StationElevationDegrees.Slice(first, losses.Length);
            Span<float> levels = level.AsSpan(first, losses.Length);
            for (int column = 0; column < losses.Length; column++)
            {
                if (float.IsNaN(losses[column]))
                {
                    levels[column] = float.NaN;
                    continue;
                }

                double relative = table?.RelativeDb(elevations[column]) ?? budget.StationPattern.RelativeDb(elevations[column], Bearing(plane!.Row(row).At(column)));

                // A null of a formula is minus infinity: nobody's antenna is that clean, and no map holds it.
                levels[column] = (float)Math.Max(atNoLoss + mainBeamDbi + relative - losses[column], -999);
            }
        });

        return new(field, budget, level, table, other);
    }

    /// <summary>Margin of a cell in dB; NaN where there is none.</summary>
    public double MarginDb(int cell, ReachDirection direction) => levelDbm[cell] - requiredDbm - ShiftDb(direction);

    /// <summary>Margins of all cells in dB; NaN where there is none.</summary>
    public float[] MarginsDb(ReachDirection direction)
    {
        double shift = ShiftDb(direction);
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
        double margin = MarginDb(cell, direction);
        return double.IsNaN(margin) ? null : OddsAt(margin, direction);
    }

    /// <summary>The odds at a margin, for a legend.</summary>
    public LinkOdds OddsAt(double marginDb, ReachDirection direction) => OddsOf(direction).At(marginDb + locationShiftDb);

    /// <summary>The odds of a way over its margin and <see cref="ReachBudget.LocationShiftDb"/>; for <see cref="ReachDirection.Both"/> of the weaker way.</summary>
    internal OddsTable OddsOf(ReachDirection direction) =>
        (direction == ReachDirection.Heard || (direction == ReachDirection.Both && heardOverHearsDb <= 0) ? heardOdds : hearsOdds).Value;

    /// <summary>How much less margin a way has than that from the station, in dB.</summary>
    internal double ShiftDb(ReachDirection direction) => direction switch
    {
        ReachDirection.Heard => 0,
        ReachDirection.Hears => heardOverHearsDb,
        _ => Math.Max(0, heardOverHearsDb),
    };

    private static double Bearing((double East, double North) place) => double.RadiansToDegrees(Math.Atan2(place.East, place.North));
}
