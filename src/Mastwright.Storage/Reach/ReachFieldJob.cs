using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Jobs;
using Mastwright.Network.Reach;
using Mastwright.Propagation;
using Mastwright.Propagation.Area;
using Mastwright.Storage.Jobs;

namespace Mastwright.Storage.Reach;

/// <summary>Fields of losses as chunks of a job: one chunk a piece, its input told in full, the ground by its content hash.</summary>
public static class ReachFieldJob
{
    private const double WorthCollecting = 1e6;

    private static readonly JsonSerializerOptions Form = new() { UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow };

    /// <summary>
    /// What the bytes of a piece depend on besides its input: the version of the method, the width of the vectors it is solved in, and the build of the
    /// program, for a method may change by a line that nobody thought of as one.
    /// </summary>
    public static ChunkKind Kind { get; } = new(
        "reach-piece",
        ReachPieces.MethodVersion,
        FormattableString.Invariant($"{AreaSweep.VectorBits} bit, {typeof(ReachPieces).Module.ModuleVersionId:N}, {Environment.Version}"));

    /// <summary>The chunks of a field, one a piece, in the order of the pieces.</summary>
    /// <param name="pieces">The field as it is cut.</param>
    /// <param name="ground">Its ground.</param>
    public static ImmutableArray<Chunk> ChunksOf(ReachPieces pieces, GroundExtent ground)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        ArgumentNullException.ThrowIfNull(ground);
        ReachRooms rooms = new();
        byte[] Work(ReadOnlyMemory<byte> input, CancellationToken cancellation)
        {
            PieceInput asked = JsonSerializer.Deserialize<PieceInput>(input.Span, Form)!;

            // Where cells lie is worked out once for all pieces of a field.
            ReachFieldInput field = asked.ToField();
            ReachPieces cut = field == pieces.Input ? pieces : ReachPieces.Of(field, asked.StepMetres, asked.PlacesAPiece);
            byte[] bytes = ReachPieceBytes.Of(cut.Evaluate(asked.Piece, ground, rooms, cancellation));
            LetGo(cut);
            return bytes;
        }

        return
        [
            .. Enumerable.Range(0, pieces.Count).Select(index => new Chunk(
                Kind, JsonSerializer.SerializeToUtf8Bytes(PieceInput.Of(pieces, index, ground.ContentHash.Value), Form), Work, pieces.CostOf(index))),
        ];
    }

    /// <summary>The pieces of a field among the results of a job, to be read by rows.</summary>
    /// <param name="pieces">The field as it is cut.</param>
    /// <param name="result">The finished job.</param>
    /// <param name="firstChunk">Which of its chunks is the field's first.</param>
    public static ImmutableArray<ReachPieceBytes> Open(ReachPieces pieces, JobResult result, int firstChunk = 0)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        ArgumentNullException.ThrowIfNull(result);
        return [.. Enumerable.Range(firstChunk, pieces.Count).Select(chunk => new ReachPieceBytes((offset, into) => result.ReadPart(chunk, offset, into)))];
    }

    /// <summary>A whole field out of the results of a job.</summary>
    /// <inheritdoc cref="Open"/>
    public static ReachField Field(ReachPieces pieces, JobResult result, int firstChunk = 0)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        return ReachPieceBytes.Rows(pieces, Open(pieces, result, firstChunk), 0, pieces.Grid.Rows);
    }

    /// <summary>
    /// A large piece leaves arrays of some 60 MB behind it, and left to itself the collector lets several of them pile up: it doubled the memory of
    /// a long sweep (measured). Collecting them at once costs some milliseconds in a second.
    /// </summary>
    private static void LetGo(ReachPieces pieces)
    {
        if (pieces.PlaceCount > WorthCollecting)
        {
            GC.Collect(2, GCCollectionMode.Forced, blocking: true, compacting: false);
        }
    }

    /// <summary>The input of a piece, flat, with everything that its bytes depend on.</summary>
    private sealed record PieceInput(
        string Ground,
        int Piece,
        double StepMetres,
        double PlacesAPiece,
        double LatitudeDegrees,
        double LongitudeDegrees,
        double RadiusMetres,
        double CellMetres,
        double StationHeightMetres,
        double? StationGroundMetres,
        double ReceiverHeightMetres,
        double FrequencyHz,
        double TimePercent,
        double LocationPercent,
        double LocationSigmaDb,
        WavePolarisation Polarisation,
        double RefractivityGradient,
        double SurfaceRefractivity,
        int? SharedZone,
        bool? SharedZoneIsNorth)
    {
        internal static PieceInput Of(ReachPieces pieces, int piece, string ground)
        {
            ReachFieldInput field = pieces.Input;
            return new(
                ground,
                piece,
                pieces.StepMetres,
                pieces.PlacesAPiece,
                field.Station.LatitudeDegrees,
                field.Station.LongitudeDegrees,
                field.RadiusMetres,
                field.CellMetres,
                field.StationHeightMetres,
                field.StationGroundMetres,
                field.ReceiverHeightMetres,
                field.FrequencyHz,
                field.TimePercent,
                field.LocationPercent,
                field.LocationSigmaDb,
                field.Polarisation,
                field.RefractivityGradient,
                field.SurfaceRefractivity,
                field.SharedZone?.Number,
                field.SharedZone?.IsNorth);
        }

        internal ReachFieldInput ToField() => new()
        {
            Station = new GeoPoint(LatitudeDegrees, LongitudeDegrees),
            RadiusMetres = RadiusMetres,
            CellMetres = CellMetres,
            StationHeightMetres = StationHeightMetres,
            StationGroundMetres = StationGroundMetres,
            ReceiverHeightMetres = ReceiverHeightMetres,
            FrequencyHz = FrequencyHz,
            TimePercent = TimePercent,
            LocationPercent = LocationPercent,
            LocationSigmaDb = LocationSigmaDb,
            Polarisation = Polarisation,
            RefractivityGradient = RefractivityGradient,
            SurfaceRefractivity = SurfaceRefractivity,
            SharedZone = SharedZone is { } zone ? (zone, SharedZoneIsNorth ?? true) : null,
        };
    }
}
