using System.Globalization;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text;
using Mastwright.Ground;
using Mastwright.Jobs;
using Mastwright.Network.Reach;
using Mastwright.Network.Relays;
using Mastwright.Propagation.Area;
using Mastwright.Station.Antenna;

namespace Mastwright.Storage.Network;

/// <summary>Which cells a station reaches, as a chunk of a job: one bit a cell of its own grid, so that a search over thousands of places can keep them all.</summary>
public static class RelayReachJob
{
    /// <summary>What the bits depend on besides the input: the method, the width of the vectors and the build.</summary>
    public static ChunkKind Kind { get; } = new(
        "relay-reach",
        1,
        FormattableString.Invariant($"{AreaSweep.VectorBits} bit, {typeof(ReachedCells).Module.ModuleVersionId:N}, {Environment.Version}"));

    /// <summary>The chunk of a station.</summary>
    /// <param name="input">What its losses are worked out from.</param>
    /// <param name="budget">Its budget.</param>
    /// <param name="direction">Which way counts.</param>
    /// <param name="ground">The ground of all that it may reach.</param>
    /// <param name="groundHash">The content hash of that.</param>
    /// <param name="leastStepMetres">Least step of the sweep in metres, zero or more.</param>
    public static Chunk ChunkOf(ReachFieldInput input, ReachBudget budget, ReachDirection direction, GroundMosaic ground, string groundHash, double leastStepMetres)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(budget);
        byte[] Work(ReadOnlyMemory<byte> asked, CancellationToken cancellation)
        {
            ulong[] reached = ReachedCells.Of(ReachMap.Of(Field(input, ground, leastStepMetres, 1, cancellation), budget), direction);
            return MemoryMarshal.AsBytes(reached.AsSpan()).ToArray();
        }

        return new(Kind, Encoding.UTF8.GetBytes(Text(input, budget, direction, groundHash, leastStepMetres)), Work, Math.Pow(input.RadiusMetres / 1_000, 2));
    }

    /// <summary>The losses around a station: by one sweep where that gives what single links give, else cell by cell.</summary>
    /// <param name="input">What they are worked out from.</param>
    /// <param name="ground">The ground.</param>
    /// <param name="leastStepMetres">Least step of the sweep in metres, zero or more.</param>
    /// <param name="threads">Most threads; 0 for as many as the machine has.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ReachField Field(ReachFieldInput input, GroundMosaic ground, double leastStepMetres, int threads, CancellationToken cancellation) => SweptArea.Fits(input, ground)
        ? SweptArea.Evaluate(input, ground, threads: threads, leastStepMetres: leastStepMetres, cancellation: cancellation)
        : DirectArea.Evaluate(input, ground, threads: threads, cancellation: cancellation);

    /// <summary>The bits of a result.</summary>
    public static ulong[] Bits(byte[] result) => MemoryMarshal.Cast<byte, ulong>(result).ToArray();

    /// <summary>Everything that the bits depend on, as text; a pattern by its values at every degree of elevation and every two of azimuth.</summary>
    private static string Text(ReachFieldInput input, ReachBudget budget, ReachDirection direction, string groundHash, double leastStepMetres) => string.Create(
        CultureInfo.InvariantCulture,
        $"""
        {groundHash} {leastStepMetres:R}
        {input.Station.LatitudeDegrees:R} {input.Station.LongitudeDegrees:R} {input.RadiusMetres:R} {input.CellMetres:R} {input.SharedZone?.Number} {input.SharedZone?.IsNorth}
        {input.StationHeightMetres:R} {input.StationGroundMetres:R} {input.ReceiverHeightMetres:R} {input.FrequencyHz:R} {input.Polarisation}
        {input.TimePercent:R} {input.LocationPercent:R} {input.LocationSigmaDb:R} {input.RefractivityGradient:R} {input.SurfaceRefractivity:R}
        {budget.HeardAtNoLossDbm:R} {budget.HeardOverHearsDb:R} {budget.Receiver.RequiredDbm?.Median:R} {budget.LocationShiftDb:R} {direction}
        {Fingerprint(budget.StationPattern)}
        """);

    private static string Fingerprint(AntennaPattern pattern)
    {
        const int Elevations = 181;
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        double[] gains = new double[Elevations];
        for (int bearing = pattern.IsAlikeAllRound ? 358 : 0; bearing < 360; bearing += 2)
        {
            pattern.FillTable(gains, -90, 1, pattern.IsAlikeAllRound ? double.NaN : bearing);
            hash.AppendData(MemoryMarshal.AsBytes(gains.AsSpan()));
        }

        return pattern.Form + " " + Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}
