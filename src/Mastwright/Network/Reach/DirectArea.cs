using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Propagation;

namespace Mastwright.Network.Reach;

/// <summary>Works out a field cell by cell: each by its own path and by the method that judges single links.</summary>
/// <remarks>
/// Sure, and slow where the radius is large: a path a cell. Each cell depends on nothing but the input and the ground, so the
/// result is the same to the bit whatever the number of threads.
/// </remarks>
public static class DirectArea
{
    private const double LeastPathMetres = 1;

    /// <summary>Works out the field.</summary>
    /// <param name="input">Station, receiver, air.</param>
    /// <param name="ground">The ground of the whole area, with its sea.</param>
    /// <param name="progress">Told the number of cells done so far, from any thread; null for nobody.</param>
    /// <param name="threads">Most threads; 0 for as many as the machine has.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentException">The grid cannot be made: ask <see cref="ReachGrid.Problem"/> first.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ReachField Evaluate(
        ReachFieldInput input, GroundMosaic ground, IProgress<int>? progress = null, int threads = 0, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(ground);
        GridFrame frame = ReachGrid.Of(input);
        int cells = frame.Columns * frame.Rows;
        float[] loss = new float[cells];
        float[] elevation = new float[cells];
        ReachFlags[] flags = new ReachFlags[cells];
        GapList[] gaps = new GapList[frame.Rows];
        int done = 0;
        ParallelOptions options = new() { CancellationToken = cancellation, MaxDegreeOfParallelism = threads > 0 ? threads : Environment.ProcessorCount };
        Parallel.For(0, frame.Rows, options, row =>
        {
            gaps[row] = new();
            int inRow = 0;
            for (int column = 0; column < frame.Columns; column++)
            {
                cancellation.ThrowIfCancellationRequested();
                int cell = (row * frame.Columns) + column;
                (loss[cell], elevation[cell], flags[cell]) = Cell(input, ground, ReachGrid.Centre(frame, column, row), gaps[row]);
                inRow += (flags[cell] & ReachFlags.Outside) == ReachFlags.None ? 1 : 0;
            }

            progress?.Report(Interlocked.Add(ref done, inRow));
        });

        return ReachField.FromCells(input, frame, loss, elevation, flags, GapList.Joined(gaps));
    }

    /// <summary>The prediction for one cell: the path from the station to a place.</summary>
    /// <returns>Null where the ground has gaps.</returns>
    internal static (PathLossPrediction Prediction, double ElevationDegrees)? Path(ReachFieldInput input, GroundMosaic ground, TerrainProfile terrain)
    {
        if (!terrain.IsComplete)
        {
            return null;
        }

        PathProfile profile = Profile(input, ground, terrain);
        PathLossPrediction prediction = PathLoss.Predict(profile, new()
        {
            FrequencyHz = input.FrequencyHz,
            TimePercent = input.TimePercent,
            LocationPercent = input.LocationPercent,
            LocationSigmaDb = input.LocationSigmaDb,
            TransmitterHeightMetres = input.StationHeightMetres,
            ReceiverHeightMetres = input.ReceiverHeightMetres,
            Polarisation = input.Polarisation,
            RefractivityGradient = input.RefractivityGradient,
            SurfaceRefractivity = input.SurfaceRefractivity,
            PathCentreLatitudeDegrees = PathCentre.LatitudeDegrees(terrain.From, terrain.To, terrain.LengthMetres),
            DistanceToCoastTransmitterMetres = terrain.DistanceToCoastFromMetres,
            DistanceToCoastReceiverMetres = terrain.DistanceToCoastToMetres,
        });
        double k = EffectiveEarth.FactorFromGradient(input.RefractivityGradient);
        return (prediction, HorizonAngle.TransmitterDegrees(profile, input.StationHeightMetres, input.ReceiverHeightMetres, k));
    }

    private static (float LossDb, float ElevationDegrees, ReachFlags Flags) Cell(ReachFieldInput input, GroundMosaic ground, GeoPoint place, GapList gaps)
    {
        double metres = Geodesic.Inverse(input.Station, place).DistanceMetres;
        if (metres > input.RadiusMetres)
        {
            return (float.NaN, float.NaN, ReachFlags.Outside);
        }

        // A path has a length: a cell whose centre is the station itself is taken a metre north of it.
        place = metres < LeastPathMetres ? Geodesic.Direct(input.Station, 0, LeastPathMetres) : place;
        TerrainProfile terrain = TerrainProfile.Extract(ground, input.Station, place);
        ReachFlags nearness = terrain.LengthMetres < ModelRange.ShortestPathMetres ? ReachFlags.ShortPath : ReachFlags.None;
        if (Path(input, ground, terrain) is not { } path)
        {
            gaps.Add(terrain);
            return (float.NaN, float.NaN, nearness | ReachFlags.GroundMissing);
        }

        return ((float)path.Prediction.LossDb, (float)path.ElevationDegrees, nearness);
    }

    private static PathProfile Profile(ReachFieldInput input, GroundMosaic ground, TerrainProfile terrain)
    {
        // As for a single link: the plan's own ground under the station, and no roofs or trees of either end's own over a surface model.
        if (terrain.HasSurface || input.StationGroundMetres is not null)
        {
            double bare = terrain.HasSurface ? SiteGround.BareHeight(ground, terrain.To) : double.NaN;
            terrain = SurfaceSites.TakeOut(terrain, ground, input.StationGroundMetres, double.IsNaN(bare) ? null : Math.Min(bare, terrain.HeightsMetres[^1]));
        }

        PathProfile profile = PathProfiles.From(terrain);
        return input.ReplacesCoverAtStation ? TerminalClutter.WithoutCover(profile, PathEnd.Transmitter) : profile;
    }
}
