using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Ground;

namespace Mastwright.Network.Reach;

/// <summary>The ground under a map: height and sea at each point of a grid, for the picture alone.</summary>
public sealed class ReachRelief
{
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
    public static ReachRelief Sample(GroundMosaic ground, ReachField field, int side, double rimShare)
    {
        ArgumentNullException.ThrowIfNull(ground);
        ArgumentNullException.ThrowIfNull(field);
        ArgumentOutOfRangeException.ThrowIfLessThan(side, 16);
        (double column, double row) = field.Frame.Locate(field.Input.Station);
        double x = field.Frame.OriginX + (column * field.Frame.StepX);
        double y = field.Frame.OriginY - (row * field.Frame.StepY);
        double half = field.Input.RadiusMetres * (1 + rimShare);
        double step = 2 * half / side;
        GridFrame frame = GridFrame.Utm(
            field.Frame.UtmZone, field.Frame.IsNorth, x - half + (step / 2), y + half - (step / 2), step, step, side, side, samplesAreAreas: true);
        float[] heights = new float[side * side];
        bool[] isSea = new bool[heights.Length];
        GridLattice places = GridLattice.OfPlaces(frame);
        Parallel.For(0, side, r => SampleRow(ground, places.Row(r), heights.AsSpan(r * side, side), isSea.AsSpan(r * side, side)));
        return new(frame, heights, isSea);
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
