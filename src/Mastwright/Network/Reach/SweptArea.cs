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

    /// <summary>From here on memory counts for more than the milliseconds of a collection.</summary>
    private const int ManyCells = 2_000_000;

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

        // Two steps more than the radius: the outermost cells lie between places, too.
        SweepFrame frame = SweepFrame.Around(input.Station, input.RadiusMetres + (2 * step), step);
        SweepResult result = Sweep(input, ground, frame, grid, progress, threads, cancellation, out SweepLayout layout, out ImmutableArray<SweepGap> missing);
        int cells = grid.Columns * grid.Rows;
        if (cells > ManyCells)
        {
            // The plane of the sweep is garbage now, tens of megabytes of it; left to itself the collector would make room for the field first.
            GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
        }

        float[] loss = new float[cells];
        float[] elevation = new float[cells];
        ReachFlags[] flags = new ReachFlags[cells];
        ParallelOptions options = new() { CancellationToken = cancellation, MaxDegreeOfParallelism = threads > 0 ? threads : Environment.ProcessorCount };
        GridLattice plane = GridLattice.OfPlane(grid, input.Station);
        Parallel.For(0, grid.Rows, options, row =>
        {
            GridLattice.RowReader along = plane.Row(row);
            for (int column = 0; column < grid.Columns; column++)
            {
                int cell = (row * grid.Columns) + column;
                (loss[cell], elevation[cell], flags[cell]) = Cell(input, step, layout, result, along.At(column));
            }
        });
        ImmutableArray<ReachGap> gaps =
        [
            .. missing.Where(gap => gap.NearestMetres <= input.RadiusMetres)
                .Select(gap => new ReachGap(gap.Tile, ground.Heights.Any(window => window.Name == gap.Tile), Met(flags, grid, gap, input), gap.NearestMetres, gap.NearestBearingDegrees)),
        ];
        return ReachField.FromCells(input, grid, loss, elevation, flags, gaps, step);
    }

    /// <summary>Reads the ground onto the plane of the sweep and sweeps it. A method of its own, so that nothing holds that plane afterwards.</summary>
    private static SweepResult Sweep(
        ReachFieldInput input, GroundMosaic ground, SweepFrame frame, GridFrame grid, IProgress<int>? progress, int threads, CancellationToken cancellation, out SweepLayout layout, out ImmutableArray<SweepGap> missing)
    {
        SweepGround swept = SweepGround.Read(ground, frame, threads, cancellation);
        layout = swept.Raster.Layout;
        missing = swept.Gaps;
        return AreaSweep.Run(swept.Raster, Input(input), null, threads, progress is null ? null : new CellProgress(progress, grid.Columns * grid.Rows), cancellation);
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

    /// <summary>A cell's loss between the places of the sweep around it.</summary>
    internal static (float LossDb, float ElevationDegrees, ReachFlags Flags) Cell(
        ReachFieldInput input, double stepMetres, SweepLayout layout, SweepResult result, (double EastMetres, double NorthMetres) place)
    {
        double metres = Math.Sqrt((place.EastMetres * place.EastMetres) + (place.NorthMetres * place.NorthMetres));
        if (metres > input.RadiusMetres)
        {
            return (float.NaN, float.NaN, ReachFlags.Outside);
        }

        ReachFlags nearness = metres < ModelRange.ShortestPathMetres ? ReachFlags.ShortPath : ReachFlags.None;
        double column = (place.EastMetres / stepMetres) + layout.Reach;
        double row = layout.Reach - (place.NorthMetres / stepMetres);
        int c = (int)column;
        int r = (int)row;
        double fc = column - c;
        double fr = row - r;
        Span<int> around = [layout.Index(c, r), layout.Index(c + 1, r), layout.Index(c, r + 1), layout.Index(c + 1, r + 1)];
        Span<double> weights = [(1 - fc) * (1 - fr), fc * (1 - fr), (1 - fc) * fr, fc * fr];
        double loss = 0;
        double elevation = 0;
        double known = 0;
        int nearest = 0;
        ReadOnlySpan<float> losses = result.LossDb;
        ReadOnlySpan<float> elevations = result.ElevationDegrees;
        for (int i = 0; i < around.Length; i++)
        {
            nearest = weights[i] > weights[nearest] ? i : nearest;
            if (losses[around[i]] != SweepResult.NoLossDb)
            {
                known += weights[i];
                loss += weights[i] * losses[around[i]];
                elevation += weights[i] * elevations[around[i]];
            }
        }

        return losses[around[nearest]] == SweepResult.NoLossDb
            ? (float.NaN, float.NaN, nearness | ReachFlags.GroundMissing)
            : ((float)(loss / known), (float)(elevation / known), nearness);
    }

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
