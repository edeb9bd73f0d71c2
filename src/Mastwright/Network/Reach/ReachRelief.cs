using Mastwright.Ground;

namespace Mastwright.Network.Reach;

/// <summary>The ground under a map: height and sea at each point of a grid, for the picture alone.</summary>
public sealed class ReachRelief
{
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
        Parallel.For(0, side, r =>
        {
            (int Column, int Row, bool Answer) last = (int.MinValue, 0, false);
            for (int c = 0; c < side; c++)
            {
                Geodesy.GeoPoint place = ReachGrid.Centre(frame, c, r);
                GroundHeight height = ground.HeightAt(place);
                heights[(r * side) + c] = (float)height.Metres;
                isSea[(r * side) + c] = height.IsOpenSea || (ground.Sea is { } map && !double.IsNaN(height.Metres)
                    && ProfileZones.Of(map, height.Metres, ground.CoverTable.Find(ground.CoverAt(place)), place.LatitudeDegrees, place.LongitudeDegrees, ref last) == Zone.Sea);
            }
        });
        return new(frame, heights, isSea);
    }
}
