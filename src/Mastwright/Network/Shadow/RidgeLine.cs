using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Propagation;

namespace Mastwright.Network.Shadow;

/// <summary>A point of the ridge that throws a station's shadow.</summary>
/// <param name="BearingDegrees">Bearing from the station.</param>
/// <param name="DistanceMetres">Distance from it.</param>
/// <param name="Place">Where it is.</param>
/// <param name="GroundMetres">Its height above the sea.</param>
public sealed record RidgePoint(double BearingDegrees, double DistanceMetres, GeoPoint Place, double GroundMetres);

/// <summary>The highest of what a station sees, bearing by bearing, where ground behind it lies in its shadow.</summary>
public static class RidgeLine
{
    private const double StepDegrees = 2;
    private const double NearestMetres = 100;

    /// <summary>The points, by bearing.</summary>
    /// <param name="shadow">The shadow.</param>
    /// <param name="ground">The ground.</param>
    public static ImmutableArray<RidgePoint> Of(ShadowMap shadow, GroundMosaic ground)
    {
        ArgumentNullException.ThrowIfNull(shadow);
        ArgumentNullException.ThrowIfNull(ground);
        ReachFieldInput input = shadow.Map.Field.Input;
        double own = (input.StationGroundMetres ?? ground.HeightAt(input.Station).Metres) + input.StationHeightMetres;
        double earth = EffectiveEarth.FromGradient(input.RefractivityGradient);
        double step = Math.Max(30, input.CellMetres / 2);
        ImmutableArray<RidgePoint>.Builder points = ImmutableArray.CreateBuilder<RidgePoint>();
        for (double bearing = 0; bearing < 360; bearing += StepDegrees)
        {
            RidgePoint? highest = null;
            double steepest = double.NegativeInfinity;
            bool shades = false;
            for (double metres = NearestMetres; metres < input.RadiusMetres; metres += step)
            {
                GeoPoint place = Geodesic.Direct(input.Station, bearing, metres);
                double height = ground.HeightAt(place).Metres;
                double slope = (height - own - (metres * metres / (2 * earth))) / metres;
                if (slope > steepest)
                {
                    (steepest, highest, shades) = (slope, new(bearing, metres, place, height), false);
                }
                else
                {
                    shades |= CauseAt(shadow, place) == ShadowCause.Ground;
                }
            }

            if (shades && highest is not null)
            {
                points.Add(highest);
            }
        }

        return points.ToImmutable();
    }

    private static ShadowCause CauseAt(ShadowMap shadow, GeoPoint place)
    {
        GridFrame frame = shadow.Map.Field.Frame;
        (double column, double row) = frame.Locate(place);
        (int c, int r) = ((int)Math.Round(column), (int)Math.Round(row));
        return c >= 0 && r >= 0 && c < frame.Columns && r < frame.Rows ? shadow.Causes[(r * frame.Columns) + c] : ShadowCause.Unknown;
    }
}
