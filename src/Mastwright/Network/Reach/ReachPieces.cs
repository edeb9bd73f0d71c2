using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Runtime.Intrinsics;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Propagation;
using Mastwright.Propagation.Area;

namespace Mastwright.Network.Reach;

/// <summary>A field cut into pieces, each of which fits into memory with its ground: the disc around the station, and sectors around it.</summary>
/// <remarks>
/// <para>
/// All pieces are parts of one sweep: a place of the sweep has the very loss that the sweep of the whole area would give it, so the cut shows nowhere
/// (tested to the bit). How a field is cut depends on its input and step alone, never on the machine.
/// </para>
/// <para>A cell takes its loss as in <see cref="SweptArea"/>: the field is the same to the bit. Immutable and safe from many threads.</para>
/// </remarks>
public sealed class ReachPieces
{
    /// <summary>Version of the method: raised whenever the same input and ground give other bytes.</summary>
    public const int MethodVersion = 3;

    /// <summary>Places of the sweep that a piece of a moderate field holds, about: some 20 bytes each.</summary>
    private const double ModeratePlacesAPiece = 1e6;

    /// <summary>The same of a large field, whose sectors would be all edge otherwise.</summary>
    private const double ManyPlacesAPiece = 4e6;

    /// <summary>Places within the radius of a large field.</summary>
    private const double ManyPlaces = 30e6;

    /// <summary>Places held around a sector's radials, for the bilinear heights beside them.</summary>
    private const int Margin = 3;

    private readonly int sectorsAnEighth;
    private readonly int innerReach;
    private readonly int radials;
    private readonly int halo;
    private readonly SweepFrame frame;
    private readonly Lazy<GridLattice> places;
    private readonly (double East, double North)[] borders;
    private readonly Lazy<int> longestSector;

    private ReachPieces(ReachFieldInput input, GridFrame grid, double stepMetres, double? placesAPiece)
    {
        Input = input;
        Grid = grid;
        StepMetres = stepMetres;

        // Two steps more than the radius: the outermost cells lie between places, too.
        frame = SweepFrame.Around(input.Station, input.RadiusMetres + (2 * stepMetres), stepMetres);
        radials = AreaSweep.RadialsOf(frame.Reach);
        PlacesAPiece = placesAPiece ?? (PlaceCount > ManyPlaces ? ManyPlacesAPiece : ModeratePlacesAPiece);

        // Cells nearer to the station belong to the disc: the sectors begin where they are not all edge.
        innerReach = Math.Max((int)Math.Clamp(Math.Sqrt(PlacesAPiece) / 2, 24, 1000), (int)Math.Ceiling(2 * ModelRange.ShortestPathMetres / stepMetres));
        double square = (double)frame.Reach * frame.Reach;
        sectorsAnEighth = 4 * square <= PlacesAPiece || frame.Reach <= innerReach + 16 ? 0 : (int)Math.Ceiling(square * Math.PI / 4 / PlacesAPiece);
        places = new(() => GridLattice.OfPlane(Grid, Input.Station));
        halo = (int)Math.Ceiling(radials / (Math.PI * innerReach)) + 1;
        longestSector = new(() => Enumerable.Range(1, Count - 1).Max(index => SectorLayout(index, 0).Length));
        borders = [.. Enumerable.Range(0, 8 * sectorsAnEighth).Select(sector => Math.SinCos(2 * Math.PI * (FirstRadial(sector) - 0.5) / radials)).Select(way => (way.Cos, way.Sin))];
    }

    /// <summary>What the field is worked out from.</summary>
    public ReachFieldInput Input { get; }

    /// <summary>The grid of the whole field.</summary>
    public GridFrame Grid { get; }

    /// <summary>Step of the sweep in metres.</summary>
    public double StepMetres { get; }

    /// <summary>Places that one piece holds at most, about.</summary>
    public double PlacesAPiece { get; }

    /// <summary>Number of pieces.</summary>
    public int Count => 1 + (8 * sectorsAnEighth);

    /// <summary>Places of the sweep within the radius.</summary>
    public double PlaceCount => Math.PI * frame.Reach * frame.Reach;

    /// <summary>Cells within the radius, about.</summary>
    public double CellCount => Math.PI * Input.RadiusMetres * Input.RadiusMetres / (Input.CellMetres * Input.CellMetres);

    /// <summary>Cuts a field.</summary>
    /// <param name="input">Station, receiver, air.</param>
    /// <param name="stepMetres">Step of the sweep in metres: the ground's own, or a coarser one.</param>
    /// <param name="placesAPiece">Places that one piece holds at most, about: how it is cut changes the pieces, not the field. Null for what suits its size.</param>
    /// <exception cref="ArgumentException">There is no such grid, or no such sweep: ask <see cref="Problem"/> first.</exception>
    public static ReachPieces Of(ReachFieldInput input, double stepMetres, double? placesAPiece = null)
    {
        ArgumentNullException.ThrowIfNull(input);
        return Problem(input, stepMetres) is { Length: > 0 } problem
            ? throw new ArgumentException(problem, nameof(stepMetres))
            : new(input, ReachGrid.Of(input, long.MaxValue), stepMetres, placesAPiece);
    }

    /// <summary>Why a field cannot be swept in pieces, and what could; empty when it can.</summary>
    /// <param name="input">Station, receiver, air.</param>
    /// <param name="stepMetres">Step of the sweep in metres.</param>
    public static string Problem(ReachFieldInput input, double stepMetres)
    {
        ArgumentNullException.ThrowIfNull(input);
        return input.RadiusMetres / stepMetres <= SweepFrame.MostReach - 2 ? "" : FormattableString.Invariant(
            $"a radius of {input.RadiusMetres / 1000:0.##} km in steps of {stepMetres:0.##} m is too fine; a step of {Math.Ceiling(10 * input.RadiusMetres / (SweepFrame.MostReach - 2)) / 10:0.#} m would do");
    }

    /// <summary>The share of the whole work that a piece is, about.</summary>
    public double CostOf(int index) => index > 0 ? 1 : sectorsAnEighth == 0 ? 1 : Math.PI * innerReach * innerReach / (PlaceCount / (Count - 1));

    /// <summary>Works out a piece, on this thread.</summary>
    /// <param name="index">Which piece, from 0.</param>
    /// <param name="ground">The ground of the whole area.</param>
    /// <param name="rooms">Memory to work in.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public ReachPiece Evaluate(int index, GroundExtent ground, ReachRooms rooms, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(ground);
        ArgumentNullException.ThrowIfNull(rooms);
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, Count);
        SweepRoom room = rooms.Take();
        (_, SweepLayout layout, SweepResult result) = Sweep(index, ground, room, out ImmutableArray<SweepGap> gaps, cancellation);
        ReachPiece piece = ReachPiece.Of(this, index, layout, result, gaps, ground, cancellation);
        rooms.Return(room);
        return piece;
    }

    /// <summary>Works out all pieces into one field.</summary>
    internal ReachField EvaluateAll(GroundExtent ground, IProgress<int>? progress, ParallelOptions options)
    {
        (float[] loss, float[] elevation, ReachFlags[] flags) = ReachField.ArraysFor(Grid.Columns * Grid.Rows, null);
        ReachPiece.FillBeyond(this, loss, elevation, flags, options);
        ImmutableArray<ReachGap>[] missing = new ImmutableArray<ReachGap>[Count];
        ReachRooms rooms = new();
        int done = 0;
        // One by one: pieces that are handed out by the handful leave threads without work at the end.
        Parallel.ForEach(Partitioner.Create(Enumerable.Range(0, Count), EnumerablePartitionerOptions.NoBuffering), options, index =>
        {
            SweepRoom room = rooms.Take();
            (_, SweepLayout layout, SweepResult result) = Sweep(index, ground, room, out ImmutableArray<SweepGap> gaps, options.CancellationToken);
            missing[index] = ReachPiece.Lay(this, index, layout, result, gaps, ground, loss, elevation, flags, options.CancellationToken);
            rooms.Return(room);
            progress?.Report((int)(Interlocked.Increment(ref done) * CellCount / Count));
        });
        return ReachField.FromCells(Input, Grid, loss, elevation, flags, GapList.Joined(missing.SelectMany(gaps => gaps)), StepMetres);
    }

    /// <summary>The part of the sweep that a piece takes its cells from.</summary>
    internal (SweepFrame Plane, SweepLayout Layout, SweepResult Result) Sweep(int index, GroundExtent ground, SweepRoom room, out ImmutableArray<SweepGap> gaps, CancellationToken cancellation)
    {
        (SweepFrame plane, SweepLayout layout, int first, int count) = Part(index);
        SweepGround swept = SweepGround.Read(ground, plane, layout, (east, north) => IsIn(index, east, north), room, cancellation);
        gaps = swept.Gaps;

        // The disc has the places within; a cell of a sector lies between places that are at most a diagonal nearer.
        double leastMetres = index == 0 ? 0 : (innerReach - 2) * StepMetres;
        return (plane, layout, AreaSweep.RunRadials(swept.Raster, SweptArea.Input(Input) with { Radials = radials }, first, count, index == 0 ? 0 : halo, leastMetres, room, cancellation));
    }

    /// <summary>The plane of the sweep.</summary>
    internal SweepFrame Plane => frame;

    /// <summary>Where each cell of the field lies, in metres to the east and to the north of the station.</summary>
    internal GridLattice Places => places.Value;

    /// <summary>Whether a place, counted in places east and north of the station, belongs to a piece; every place to just one.</summary>
    internal bool IsIn(int index, double east, double north) => (AreIn(index, Vector512.Create(east), Vector512.Create(north)) & 1) != 0;

    /// <summary>The same of eight places: a bit to each.</summary>
    internal ulong AreIn(int index, Vector512<double> east, Vector512<double> north)
    {
        if (sectorsAnEighth == 0)
        {
            return index == 0 ? ~0UL : 0;
        }

        Vector512<double> isInner = Vector512.LessThan((east * east) + (north * north), Vector512.Create((double)innerReach * innerReach));
        return (index == 0 ? isInner : Vector512.AndNot(AreBetween(index, east, north), isInner)).ExtractMostSignificantBits();
    }

    /// <summary>Distance from the station, in the unit of the two.</summary>
    internal static double Distance(double east, double north) => Math.Sqrt((east * east) + (north * north));

    /// <summary>Whether a circle so far from the station holds no place of any piece.</summary>
    internal bool IsBeyond(double distance, double radius) => distance - radius > frame.Reach;

    /// <summary>Whether a circle on the plane may hold places of a piece.</summary>
    internal bool MayMeet(int index, double east, double north, double radius)
    {
        double distance = Distance(east, north);
        if (IsBeyond(distance, radius) || (index == 0 && sectorsAnEighth > 0 && distance - radius > innerReach) || (index > 0 && distance + radius < innerReach))
        {
            return false;
        }

        return index == 0
            || (LeftOf(borders[index - 1], east, north) >= -radius && LeftOf(borders[index % borders.Length], east, north) < radius);
    }

    private (SweepFrame Plane, SweepLayout Layout, int First, int Count) Part(int index)
    {
        if (sectorsAnEighth == 0)
        {
            return (frame, SweepLayout.Whole(frame.Reach), 0, radials);
        }

        if (index == 0)
        {
            // Its blocks begin where blocks of the whole plane do, so that its places come out the same to the bit.
            int block = SweepBlocks.CellsASide(frame);
            int reach = frame.Reach - ((frame.Reach - innerReach - Margin) / block * block);
            SweepFrame inner = SweepFrame.Around(Input.Station, reach * StepMetres, StepMetres);
            return (inner, SweepLayout.Whole(inner.Reach), 0, radials);
        }

        (int from, int to) = Radials(index);
        return (frame, SectorLayout(index, longestSector.Value), from - halo, to - from + (2 * halo));
    }

    private SweepLayout SectorLayout(int index, int leastLength)
    {
        (int from, int to) = Radials(index);
        return SweepLayout.Sector(frame.Reach, (from - halo - 0.5) / radials, (to + halo - 0.5) / radials, Margin, leastLength);
    }

    /// <summary>The radials of a sector: from the first to before the second.</summary>
    private (int From, int To) Radials(int index) => (FirstRadial(index - 1), FirstRadial(index));

    private int FirstRadial(int sector)
    {
        (int eighth, int part) = (sector / sectorsAnEighth, sector % sectorsAnEighth);
        return (int)((eighth * (long)(radials / 8)) + (part * (long)(radials / 8) / sectorsAnEighth));
    }

    /// <summary>Left of the line where the sector begins and right of the one where it ends; both neighbours ask of the very same line.</summary>
    private Vector512<double> AreBetween(int index, Vector512<double> east, Vector512<double> north) =>
        Vector512.GreaterThanOrEqual(LeftOf(borders[index - 1], east, north), Vector512<double>.Zero) & Vector512.LessThan(LeftOf(borders[index % borders.Length], east, north), Vector512<double>.Zero);

    /// <summary>How far left of a line out from the station.</summary>
    private static double LeftOf((double East, double North) line, double east, double north) => (line.East * north) - (line.North * east);

    private static Vector512<double> LeftOf((double East, double North) line, Vector512<double> east, Vector512<double> north) => (north * line.East) - (east * line.North);
}
