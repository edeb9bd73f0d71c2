using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Propagation;
using Mastwright.Station.Sun;

namespace Mastwright.Plans;

/// <summary>The horizon that a station's ground makes: what hides the sun from its panel.</summary>
/// <remarks>
/// Bare ground, in 72 directions out to 25 km, in steps that grow with the distance; the earth's curve and light's own bend (7/6 of the radius, the surveyor's
/// coefficient 0.14: common practice) are in it. Trees and buildings close by are not: whoever stands there sees them.
/// </remarks>
internal static class FarHorizon
{
    private const int Directions = 72;
    private const double NearestMetres = 60;
    private const double FarthestMetres = 25_000;
    private const double EyeMetres = 2;

    /// <summary>The horizon; null when the station's own ground is not known.</summary>
    internal static HorizonLine? Of(GeoPoint place, Func<GeoPoint, GeoPoint, GroundMosaic> ground)
    {
        double own = ground(place, place).HeightAt(place).Metres;
        if (double.IsNaN(own))
        {
            return null;
        }

        double[] degrees = new double[Directions];
        for (int i = 0; i < Directions; i++)
        {
            double azimuth = 360.0 * i / Directions;
            GroundMosaic along = ground(place, Geodesic.Direct(place, azimuth, FarthestMetres));
            double steepest = 0;
            for (double metres = NearestMetres; metres <= FarthestMetres; metres *= 1.02)
            {
                double height = along.HeightAt(Geodesic.Direct(place, azimuth, metres)).Metres;
                if (!double.IsNaN(height))
                {
                    double bend = metres * metres / (2 * (7.0 / 6) * EffectiveEarth.MeanRadiusMetres);
                    steepest = Math.Max(steepest, (height - own - EyeMetres - bend) / metres);
                }
            }

            degrees[i] = double.RadiansToDegrees(Math.Atan(steepest));
        }

        return HorizonLine.Of([.. degrees]);
    }
}
