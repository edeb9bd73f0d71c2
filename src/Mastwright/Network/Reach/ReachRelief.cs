using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Ground;

namespace Mastwright.Network.Reach;

/// <summary>The ground under a map: height and sea at each point of a grid, for the picture alone.</summary>
public sealed class ReachRelief
{
    /// <summary>Points across and down a block that is sampled at once.</summary>
    private const int BlockSide = 200;

    /// <summary>Points of a row that are looked up together.</summary>
    private const int Run = 64;

    private readonly float[] heightsMetres;
    private readonly bool[] sea;

    private ReachRelief(GridFrame frame, float[] heightsMetres, bool[] sea)
    {
        Frame = frame;
        this.heightsMetres = heightsMetres;
        this.sea = sea;
    }

    /// <summary>The grid: metres of one UTM zone, row 0 in the north.</summary>
    public GridFrame Frame { get; }

    /// <summary>Heights row by row in metres; NaN where nothing is known.</summary>
    public ReadOnlySpan<float> HeightsMetres => heightsMetres;

    /// <summary>Whether a point is sea.</summary>
    public ReadOnlySpan<bool> IsSea => sea;

    /// <summary>Samples the ground over the square of a field, with a rim around it.</summary>
    /// <param name="ground">The ground.</param>
    /// <param name="field">The field.</param>
    /// <param name="side">Points across and down, 16 or more.</param>
    /// <param name="rimShare">Width of the rim as a share of the radius, zero or more.</param>
    public static ReachRelief Sample(GroundExtent ground, ReachField field, int side, double rimShare)
    {
        ArgumentNullException.ThrowIfNull(ground);
        ArgumentNullException.ThrowIfNull(field);
        (double column, double row) = field.Frame.Locate(field.Input.Station);
        GridFrame square = Square(
            field.Frame,
            field.Frame.OriginX + (column * field.Frame.StepX),
            field.Frame.OriginY - (row * field.Frame.StepY),
            field.Input.RadiusMetres * (1 + rimShare),
            side);
        return Sample(square, ground.Cut, BlockSide);
    }

    /// <summary>Samples the ground over a square that holds a whole grid, block by block, so that no more than a block's ground is in memory.</summary>
    /// <param name="ground">The ground of an area; asked for one block after another.</param>
    /// <param name="grid">The grid.</param>
    /// <param name="side">Points across and down, 16 or more.</param>
    /// <param name="rimShare">Width of the rim as a share of half the grid, zero or more.</param>
    public static ReachRelief Over(Func<GeoBounds, GroundMosaic> ground, GridFrame grid, int side, double rimShare)
    {
        ArgumentNullException.ThrowIfNull(ground);
        ArgumentNullException.ThrowIfNull(grid);
        double half = Math.Max(grid.Columns * grid.StepX, grid.Rows * grid.StepY) / 2 * (1 + rimShare);
        return Sample(Square(grid, (grid.OriginX + grid.LastX) / 2, (grid.OriginY + grid.LastY) / 2, half, side), ground, BlockSide);
    }

    /// <summary>Refuses a grid of another zone.</summary>
    /// <exception cref="ArgumentException">The zones differ.</exception>
    public void RequireZoneOf(GridFrame grid)
    {
        ArgumentNullException.ThrowIfNull(grid);
        if (Frame.UtmZone != grid.UtmZone || Frame.IsNorth != grid.IsNorth)
        {
            throw new ArgumentException("Relief and map are of one UTM zone.", nameof(grid));
        }
    }

    private static GridFrame Square(GridFrame zone, double x, double y, double half, int side)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(side, 16);
        double step = 2 * half / side;
        return GridFrame.Utm(zone.UtmZone, zone.IsNorth, x - half + (step / 2), y + half - (step / 2), step, step, side, side, samplesAreAreas: true);
    }

    private static ReachRelief Sample(GridFrame frame, Func<GeoBounds, GroundMosaic> groundOf, int block)
    {
        float[] heights = new float[frame.Columns * frame.Rows];
        bool[] isSea = new bool[heights.Length];
        for (int top = 0; top < frame.Rows; top += block)
        {
            for (int left = 0; left < frame.Columns; left += block)
            {
                GridFrame part = frame.Part(left, top, Math.Min(block, frame.Columns - left), Math.Min(block, frame.Rows - top));
                GroundMosaic ground = groundOf(Bounds(part));
                GridLattice places = GridLattice.OfPlaces(part);
                int start = (top * frame.Columns) + left;
                Parallel.For(0, part.Rows, r => SampleRow(
                    ground, places.Row(r), heights.AsSpan(start + (r * frame.Columns), part.Columns), isSea.AsSpan(start + (r * frame.Columns), part.Columns)));
            }
        }

        return new(frame, heights, isSea);
    }

    /// <summary>An area that holds all of a part, whose edges bend a little in degrees.</summary>
    private static GeoBounds Bounds(GridFrame part)
    {
        (int right, int bottom) = (part.Columns - 1, part.Rows - 1);
        return GeoBounds.Of(ReachGrid.Centre(part, 0, 0), ReachGrid.Centre(part, right, 0), ReachGrid.Centre(part, 0, bottom), ReachGrid.Centre(part, right, bottom))
            .Expanded(Math.Max(1_000, part.StepX * part.Columns / 8));
    }

    private static void SampleRow(GroundMosaic ground, GridLattice.RowReader along, Span<float> heights, Span<bool> isSea)
    {
        (int Column, int Row, bool Answer) last = (int.MinValue, 0, false);
        Span<int> withHeights = new int[ground.Heights.Length];
        Span<int> withCover = new int[ground.Covers.Length];
        for (int from = 0; from < heights.Length; from += Run)
        {
            int to = Math.Min(heights.Length, from + Run);
            ReadOnlySpan<int> near = Near(ground.Heights, along, from, to - 1, withHeights);
            ReadOnlySpan<int> nearCover = Near(ground.Covers, along, from, to - 1, withCover);
            for (int c = from; c < to; c++)
            {
                GeoPoint place = PlaceAt(along, c);
                heights[c] = HeightAt(ground, near, place, out bool isOpenSea);
                isSea[c] = isOpenSea || IsSeaAt(ground, nearCover, place, heights[c], ref last);
            }
        }
    }

    private static GeoPoint PlaceAt(GridLattice.RowReader along, int column)
    {
        (double latitude, double longitude) = along.At(column);
        return new(latitude, longitude - (360 * Math.Round(longitude / 360)));
    }

    /// <summary>Numbers of the windows that may know a place between two points of a row, in their order: most of a mosaic's lie elsewhere.</summary>
    private static ReadOnlySpan<int> Near(ImmutableArray<GroundWindow> windows, GridLattice.RowReader along, int from, int to, Span<int> near)
    {
        // More than the half sample by which a window answers beyond its last, and what a short row bends.
        const double slack = 2;
        GeoPoint west = PlaceAt(along, from);
        GeoPoint east = PlaceAt(along, to);
        int count = 0;
        for (int i = 0; i < windows.Length; i++)
        {
            GridFrame frame = windows[i].Frame;
            (double c0, double r0) = frame.Locate(west);
            (double c1, double r1) = frame.Locate(east);
            if (Math.Max(c0, c1) > -slack && Math.Min(c0, c1) < frame.Columns + slack && Math.Max(r0, r1) > -slack && Math.Min(r0, r1) < frame.Rows + slack)
            {
                near[count++] = i;
            }
        }

        return near[..count];
    }

    /// <summary>What <see cref="GroundMosaic.HeightAt"/> says, asking only the windows nearby.</summary>
    private static float HeightAt(GroundMosaic ground, ReadOnlySpan<int> near, GeoPoint place, out bool isOpenSea)
    {
        isOpenSea = false;
        foreach (int i in near)
        {
            (double column, double row) = ground.Heights[i].Frame.Locate(place);
            double height = ground.HeightIn(i, column, row);
            if (!double.IsNaN(height))
            {
                return (float)height;
            }
        }

        isOpenSea = ground.IsLeftToSea(place.LatitudeDegrees, place.LongitudeDegrees);
        return isOpenSea ? 0 : float.NaN;
    }

    /// <summary>Whether known ground is sea; nothing is asked about ground too high for it, nor where the height is not known.</summary>
    private static bool IsSeaAt(GroundMosaic ground, ReadOnlySpan<int> near, GeoPoint place, float heightMetres, ref (int Column, int Row, bool Answer) last)
    {
        if (ground.Sea is not { HasSea: true } map || !(heightMetres <= SeaMap.CoastalHeightMetres))
        {
            return false;
        }

        byte code = 0;
        for (int i = 0; i < near.Length && code == 0; i++)
        {
            code = ground.Covers[near[i]].CoverAt(place);
        }

        return ProfileZones.Of(map, heightMetres, ground.CoverTable.Find(code), place.LatitudeDegrees, place.LongitudeDegrees, ref last) == Zone.Sea;
    }
}
