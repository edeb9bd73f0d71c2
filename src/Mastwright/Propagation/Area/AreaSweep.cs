using Mastwright.Ground;

namespace Mastwright.Propagation.Area;

/// <summary>ITU-R P.1812 for every cell of a raster around a station: all its terms, and on the same points the result of <see cref="P1812"/>.</summary>
/// <remarks>
/// Each cell belongs to the radial nearest to its bearing; a radial is walked once, and each of its cells costs a few steps on a hull
/// instead of a look at every point (<see cref="SweepRadial"/>). The same map results whatever the number of threads.
/// </remarks>
public static class AreaSweep
{
    /// <summary>So many radials are one piece of work: neighbours share the ground that is in the processor's cache.</summary>
    private const int Chunk = 32;

    /// <summary>Radials to each cell on the edge of the map: with fewer, cells find themselves too far beside their radial (docs/physics/area-sweep.md).</summary>
    private const double RadialsPerEdgeCell = 0.75;

    /// <summary>A cell lies between places that are at most a diagonal from it, and a little.</summary>
    private const double HaloCells = 2;

    /// <summary>Computes the map.</summary>
    /// <param name="raster">The ground; it reaches as far as the map.</param>
    /// <param name="input">Radio, air and receiver.</param>
    /// <param name="result">Room for the map, overwritten; null to make it.</param>
    /// <param name="threads">Most threads to use, 1 or more; 0 for all processors.</param>
    /// <param name="progress">Told the share done, 0 to 1, from any thread.</param>
    /// <param name="cancellation">Stops the sweep; the map is then useless.</param>
    /// <returns>The map: <paramref name="result"/> where it was given.</returns>
    /// <exception cref="ArgumentException">A value is outside its range, or the result has another size than the raster.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static SweepResult Run(
        SweepRaster raster,
        SweepInput input,
        SweepResult? result = null,
        int threads = 0,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default) => RunAt(SweepSolver.Bits, raster, input, result, threads, progress, null, cancellation);

    /// <summary>The cells of some radials, on this thread: those of a sector, whose raster holds their ground. Cells by the station are left out of a sector, and those nearer than a distance.</summary>
    /// <remarks>Only the losses are those of the whole room: elevations of cells without one may be of a sector before, nothing is marked, and cells are not counted. So many of the first and of the last radials as the halo has are there only for places within <see cref="HaloCells"/> of the radials between.</remarks>
    internal static SweepResult RunRadials(SweepRaster raster, SweepInput input, int first, int count, int halo, double leastMetres, SweepRoom room, CancellationToken cancellation)
    {
        input.Check(raster);
        SweepResult result = room.Result(raster.Layout);
        Array.Fill(result.Losses, SweepResult.NoLossDb);
        SweepTerms terms = new(input, raster);
        int radials = RadialsOf(raster, input);
        if (raster.Layout.IsWhole)
        {
            NearCells.Fill(raster, in terms, result, null);
        }

        SweepWorker worker = new(SweepSolver.Bits, raster, terms, new(radials, raster.Reach, raster.Reach), result, null, leastMetres);
        for (int i = 0; i < count; i++)
        {
            cancellation.ThrowIfCancellationRequested();

            // How many radials lie between this one and those that the sector is for: further out they are further apart.
            int between = Math.Max(halo - 1 - i, i - (count - halo));
            double mostMetres = between < 1 ? double.PositiveInfinity : HaloCells * raster.CellMetres * radials / (2 * Math.PI * between);
            worker.Run((((first + i) % radials) + radials) % radials, mostMetres);
        }

        worker.Flush();
        return result;
    }

    /// <summary>Bits of the vectors that the closed form is solved in on this machine: 512, 256 or 128; 0 for plain double precision.</summary>
    public static int VectorBits => SweepSolver.Bits;

    /// <summary>Number of radials of a sweep.</summary>
    /// <param name="raster">The ground.</param>
    /// <param name="input">What the sweep asks.</param>
    public static int RadialsOf(SweepRaster raster, SweepInput input)
    {
        ArgumentNullException.ThrowIfNull(raster);
        return input.Radials > 0 ? input.Radials : RadialsOf(raster.Reach);
    }

    /// <summary>The usual number of radials of a square with so many cells on each side of the station's.</summary>
    internal static int RadialsOf(int reach) => 8 * Math.Max(1, (int)Math.Ceiling(RadialsPerEdgeCell * 2 * Math.PI * reach / 8));

    /// <summary>The map in plain double precision, with the losses as they are before they are stored.</summary>
    internal static SweepResult RunExact(SweepRaster raster, SweepInput input, double[] exact) =>
        RunAt(0, raster, input, null, 0, null, exact, CancellationToken.None);

    /// <summary>The map with the closed form in vectors of so many bits; 0 for plain double precision.</summary>
    internal static SweepResult RunAt(
        int bits, SweepRaster raster, SweepInput input, SweepResult? result, int threads, IProgress<double>? progress, double[]? exact, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(raster);
        ArgumentOutOfRangeException.ThrowIfNegative(threads);
        input.Check(raster);
        result ??= new(raster.Side);
        if (result.Losses.Length != raster.Layout.Length)
        {
            throw new ArgumentException($"The map has {result.Side} columns, the raster {raster.Side}.", nameof(result));
        }

        Clear(result);
        SweepTerms terms = new(input, raster);
        int radials = RadialsOf(raster, input);
        SweepWedges wedges = new(radials, raster.Reach, raster.Reach);
        NearCells.Fill(raster, in terms, result, exact);
        int chunks = (radials + Chunk - 1) / Chunk;
        int done = 0;
        ParallelOptions options = new() { MaxDegreeOfParallelism = threads == 0 ? -1 : threads, CancellationToken = cancellation };
        Parallel.For(
            0,
            chunks,
            options,
            () => new SweepWorker(bits, raster, terms, wedges, result, exact),
            (chunk, _, worker) =>
            {
                for (int radial = chunk * Chunk; radial < Math.Min(radials, (chunk + 1) * Chunk); radial++)
                {
                    worker.Run(radial);
                }

                worker.Flush();

                progress?.Report((double)Interlocked.Increment(ref done) / chunks);
                return worker;
            },
            _ => { });
        result.CellsWithLoss = result.Losses.Length - result.Losses.AsSpan().Count(SweepResult.NoLossDb);
        return result;
    }

    private static void Clear(SweepResult result)
    {
        Array.Fill(result.Losses, SweepResult.NoLossDb);
        Array.Clear(result.Elevations);
        Array.Fill(result.MarkBytes, (byte)SweepMarks.Beyond);
    }

    internal static void Store(SweepResult result, int cell, double loss, double elevationMrad, SweepMarks marks, double[]? exact)
    {
        result.Losses[cell] = (float)loss;
        result.Elevations[cell] = (float)(elevationMrad * (180 / (1000 * Math.PI)));
        Mark(result, cell, marks);
        exact?[cell] = loss;
    }

    internal static void StoreMissing(SweepResult result, int cell, SweepMarks marks) => Mark(result, cell, marks | SweepMarks.GroundMissing);

    private static void Mark(SweepResult result, int cell, SweepMarks marks)
    {
        if (result.MarkBytes.Length > 0)
        {
            result.MarkBytes[cell] = (byte)marks;
        }
    }
}
