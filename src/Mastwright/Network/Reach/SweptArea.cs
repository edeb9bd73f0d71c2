using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Propagation;
using Mastwright.Propagation.Area;

namespace Mastwright.Network.Reach;

/// <summary>Works out a field by one sweep over the ground around the station, whose cost grows with its places and not with their paths.</summary>
/// <remarks>
/// The sweep runs on the ground's own step (<see cref="AreaSweep"/>); a cell takes the loss at its centre, bilinear between the four places of
/// the sweep around it. The result is the same to the bit whatever the number of threads.
/// </remarks>
public static class SweptArea
{
    /// <summary>Most places of one sweep: some 15 bytes each.</summary>
    public const double MostPlaces = 16e6;

    /// <summary>Places of a sweep from which on it is worked out in pieces, which share the processor's cache better and take less memory.</summary>
    public const double WorthPieces = 2e6;

    /// <summary>Whether a sweep gives what single links give: not over a surface model, whose roofs and trees are taken out at each end, and not where terminal clutter takes the place of cover.</summary>
    public static bool Fits(ReachFieldInput input, GroundMosaic ground)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(ground);
        return !input.ReplacesCoverAtStation && !ground.Heights.IsEmpty && ground.Heights.All(window => window.Kind != HeightKind.Surface);
    }

    /// <summary>Works out the field.</summary>
    /// <param name="input">Station, receiver, air.</param>
    /// <param name="ground">The ground of the whole area, with its sea.</param>
    /// <param name="progress">Told the number of cells done so far, from any thread; null for nobody.</param>
    /// <param name="threads">Most threads; 0 for as many as the machine has.</param>
    /// <param name="leastStepMetres">Least step of the sweep in metres, zero or more: a coarser one than the ground's own is quicker.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentException">The grid cannot be made, or the ground does not fit a sweep.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ReachField Evaluate(
        ReachFieldInput input, GroundMosaic ground, IProgress<int>? progress = null, int threads = 0, double leastStepMetres = 0, CancellationToken cancellation = default)
    {
        if (!Fits(input, ground))
        {
            throw new ArgumentException("A sweep needs bare ground, with its cover as it is.", nameof(ground));
        }

        GridFrame grid = ReachGrid.Of(input, ReachGrid.MostCells);
        double finest = ground.Heights.Min(window => window.ResolutionMetres);
        double step = Math.Max(Math.Max(finest, leastStepMetres), 2 * input.RadiusMetres / Math.Sqrt(MostPlaces));

        ParallelOptions options = new() { CancellationToken = cancellation, MaxDegreeOfParallelism = threads > 0 ? threads : Environment.ProcessorCount };
        if (2 * input.RadiusMetres / step > Math.Sqrt(WorthPieces))
        {
            return ReachPieces.Of(input, step).EvaluateAll(GroundExtent.Of(ground), progress, options);
        }

        // Two steps more than the radius: the outermost cells lie between places, too.
        SweepFrame frame = SweepFrame.Around(input.Station, input.RadiusMetres + (2 * step), step);
        SweepGround swept = SweepGround.Read(ground, frame, threads, cancellation);
        SweepLayout layout = swept.Raster.Layout;
        int cells = grid.Columns * grid.Rows;
        SweepResult result = AreaSweep.Run(swept.Raster, Input(input), null, threads, progress is null ? null : new CellProgress(progress, cells), cancellation);
        float[] loss = new float[cells];
        float[] elevation = new float[cells];
        ReachFlags[] flags = new ReachFlags[cells];
        GridLattice plane = GridLattice.OfPlane(grid, input.Station);
        Parallel.For(0, grid.Rows, options, () => new SweptRows(input, plane, grid.Columns, step, layout, result), (row, _, rows) =>
        {
            int first = row * grid.Columns;
            rows.Lay(row, 0, loss.AsSpan(first, grid.Columns), elevation.AsSpan(first, grid.Columns), flags.AsSpan(first, grid.Columns));
            return rows;
        }, _ => { });
        ImmutableArray<ReachGap> gaps =
        [
            .. swept.Gaps.Where(gap => gap.NearestMetres <= input.RadiusMetres)
                .Select(gap => new ReachGap(gap.Tile, ground.Heights.Any(window => window.Name == gap.Tile), Met(flags, grid, gap, input), gap.NearestMetres, gap.NearestBearingDegrees)),
        ];
        return ReachField.FromCells(input, grid, loss, elevation, flags, gaps, step);
    }

    internal static SweepInput Input(ReachFieldInput input) => new()
    {
        FrequencyHz = input.FrequencyHz,
        StationHeightMetres = input.StationHeightMetres,
        ReceiverHeightMetres = input.ReceiverHeightMetres,
        StationGroundMetres = input.StationGroundMetres ?? double.NaN,
        TimePercent = Math.Clamp(input.TimePercent, 1, 50),
        LocationPercent = Math.Clamp(input.LocationPercent, 1, 99),
        LocationSigmaDb = input.LocationSigmaDb,
        RefractivityGradient = input.RefractivityGradient,
        SurfaceRefractivity = input.SurfaceRefractivity,
        Polarisation = input.Polarisation,
    };

    /// <summary>Cells without ground that lie no nearer than a gap begins: all of them where there is but one gap.</summary>
    private static int Met(ReachFlags[] flags, GridFrame grid, SweepGap gap, ReachFieldInput input)
    {
        (double column, double row) = grid.Locate(input.Station);
        int met = 0;
        for (int i = 0; i < flags.Length; i++)
        {
            double east = ((i % grid.Columns) - column) * grid.StepX;
            double north = ((i / grid.Columns) - row) * grid.StepY;
            met += (flags[i] & ReachFlags.GroundMissing) != ReachFlags.None && Math.Sqrt((east * east) + (north * north)) >= gap.NearestMetres - grid.StepX ? 1 : 0;
        }

        return met;
    }

    private sealed class CellProgress(IProgress<int> progress, int cells) : IProgress<double>
    {
        public void Report(double value) => progress.Report((int)(value * cells));
    }
}
