using System.Collections.Immutable;
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
    /// <summary>Places of the sweep that one piece holds at most by default, about: some 20 bytes each.</summary>
    public const double UsualPlacesAPiece = 4e6;

    /// <summary>Version of the method: raised whenever the same input and ground give other bytes.</summary>
    public const int MethodVersion = 2;

    /// <summary>Places held around a sector's radials, for the bilinear heights beside them.</summary>
    private const int Margin = 3;

    private readonly int sectorsAnEighth;
    private readonly int innerReach;
    private readonly int radials;
    private readonly int halo;
    private readonly SweepFrame frame;
    private readonly Lazy<GridLattice> places;

    private ReachPieces(ReachFieldInput input, GridFrame grid, double stepMetres, double placesAPiece)
    {
        Input = input;
        Grid = grid;
        StepMetres = stepMetres;
        PlacesAPiece = placesAPiece;

        // Two steps more than the radius: the outermost cells lie between places, too.
        frame = SweepFrame.Around(input.Station, input.RadiusMetres + (2 * stepMetres), stepMetres);
        radials = AreaSweep.RadialsOf(frame.Reach);

        // Cells nearer to the station belong to the disc: the sectors begin where they are not all edge.
        innerReach = Math.Max((int)Math.Clamp(Math.Sqrt(placesAPiece) / 4, 24, 500), (int)Math.Ceiling(2 * ModelRange.ShortestPathMetres / stepMetres));
        double square = (double)frame.Reach * frame.Reach;
        sectorsAnEighth = 4 * square <= placesAPiece || frame.Reach <= innerReach + 16 ? 0 : (int)Math.Ceiling(square * Math.PI / 4 / placesAPiece);
        places = new(() => GridLattice.OfPlane(Grid, Input.Station));
        halo = (int)Math.Ceiling(radials / (Math.PI * innerReach)) + 1;
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
    /// <param name="placesAPiece">Places that one piece holds at most, about: how it is cut changes the pieces, not the field.</param>
    /// <exception cref="ArgumentException">There is no such grid, or no such sweep: ask <see cref="Problem"/> first.</exception>
    public static ReachPieces Of(ReachFieldInput input, double stepMetres, double placesAPiece = UsualPlacesAPiece)
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
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public ReachPiece Evaluate(int index, GroundExtent ground, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(ground);
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, Count);
        (_, SweepLayout layout, SweepResult result) = Sweep(index, ground, out ImmutableArray<SweepGap> gaps, cancellation);
        return ReachPiece.Of(this, index, layout, result, gaps, ground, cancellation);
    }

    /// <summary>The part of the sweep that a piece takes its cells from.</summary>
    internal (SweepFrame Plane, SweepLayout Layout, SweepResult Result) Sweep(int index, GroundExtent ground, out ImmutableArray<SweepGap> gaps, CancellationToken cancellation)
    {
        (SweepFrame plane, SweepLayout layout, int first, int count) = Part(index);
        SweepGround swept = SweepGround.Read(ground, plane, layout, (east, north) => IsIn(index, east, north), cancellation);
        gaps = swept.Gaps;
        return (plane, layout, AreaSweep.RunRadials(swept.Raster, SweptArea.Input(Input) with { Radials = radials }, first, count, cancellation));
    }

    /// <summary>The plane of the sweep.</summary>
    internal SweepFrame Plane => frame;

    /// <summary>Where each cell of the field lies, in metres to the east and to the north of the station.</summary>
    internal GridLattice Places => places.Value;

    /// <summary>Whether a place, counted in places east and north of the station, belongs to a piece; every place to just one.</summary>
    internal bool IsIn(int index, double east, double north)
    {
        bool isInner = sectorsAnEighth == 0 || (east * east) + (north * north) < (double)innerReach * innerReach;
        return index == 0 ? isInner : !isInner && IsBetween(index, RadialOf(east, north));
    }

    /// <summary>Whether a circle on the plane may hold places of a piece.</summary>
    internal bool MayMeet(int index, double east, double north, double radius)
    {
        double distance = Math.Sqrt((east * east) + (north * north));
        double most = index == 0 && sectorsAnEighth > 0 ? innerReach : frame.Reach;
        if (distance - radius > most || (index > 0 && distance + radius < innerReach))
        {
            return false;
        }

        if (index == 0 || distance <= radius)
        {
            return true;
        }

        double around = Math.Asin(radius / distance) / (2 * Math.PI);
        (int from, int to) = Radials(index);
        double middle = (from + to - 1) / 2.0 / radials;
        double off = Turns(east, north) - middle;
        return Math.Abs(off - Math.Round(off)) <= around + ((to - from + 1) / 2.0 / radials);
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
        return (frame, SweepLayout.Sector(frame.Reach, (from - halo - 0.5) / radials, (to + halo - 0.5) / radials, Margin), from - halo, to - from + (2 * halo));
    }

    /// <summary>The radials of a sector: from the first to before the second.</summary>
    private (int From, int To) Radials(int index) => (FirstRadial(index - 1), FirstRadial(index));

    private int FirstRadial(int sector)
    {
        (int eighth, int part) = (sector / sectorsAnEighth, sector % sectorsAnEighth);
        return (int)((eighth * (long)(radials / 8)) + (part * (long)(radials / 8) / sectorsAnEighth));
    }

    private bool IsBetween(int index, int radial)
    {
        (int from, int to) = Radials(index);
        return radial >= from && radial < to;
    }

    private int RadialOf(double east, double north) => Math.Max((int)Math.Floor((Turns(east, north) * radials) + 0.5), 0) % radials;

    /// <summary>Counted from east to north, 0 to 1.</summary>
    private static double Turns(double east, double north)
    {
        double turns = Math.Atan2(north, east) / (2 * Math.PI);
        return turns < 0 ? turns + 1 : turns;
    }
}
