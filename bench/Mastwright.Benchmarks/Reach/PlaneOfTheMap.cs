using System.Globalization;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Propagation.Area;

namespace Mastwright.Benchmarks.Reach;

/// <summary>Distance and bearing of cells against the geodesic: the places whose ground a sweep reads.</summary>
internal static class PlaneOfTheMap
{
    internal static void Measure()
    {
        ReachReport.Part("Largest difference of a cell's place from the geodesic, all bearings");
        foreach (double latitude in (double[])[0, 47.3, 69.5])
        {
            foreach (double kilometres in (double[])[50, 200])
            {
                SweepFrame frame = SweepFrame.Around(new(latitude, 11.2), kilometres * 1000, 30);
                SweepWarp warp = new(GroundMosaic.Empty, frame) { Heights = [], Cover = null, Zones = null };
                double metres = 0;
                double degrees = 0;
                for (double bearing = 0; bearing < 360; bearing += 0.25)
                {
                    (double sin, double cos) = Math.SinCos(double.DegreesToRadians(bearing));
                    int east = (int)(frame.Reach * sin);
                    int north = (int)(frame.Reach * cos);
                    GeodesicSegment segment = Geodesic.Inverse(frame.Station, warp.PointNear(east, north));
                    double length = Math.Sqrt(((double)east * east) + ((double)north * north)) * frame.CellMetres;
                    metres = Math.Max(metres, Math.Abs(segment.DistanceMetres - length));
                    degrees = Math.Max(degrees, Math.Abs(Math.IEEERemainder(double.RadiansToDegrees(Math.Atan2(east, north)) - segment.InitialBearingDegrees, 360)));
                }

                string name = string.Create(CultureInfo.InvariantCulture, $"{kilometres:0} km at latitude {latitude:0.0}°: distance");
                ReachReport.Plain(name, metres, "m", string.Create(CultureInfo.InvariantCulture, $"bearing {degrees:0.0e+0}°"));
            }
        }
    }
}
