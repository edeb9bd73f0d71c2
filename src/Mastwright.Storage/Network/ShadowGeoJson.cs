using Mastwright.Network.Reach;
using Mastwright.Network.Shadow;
using Mastwright.Plans;
using Mastwright.Storage.Reach;

namespace Mastwright.Storage.Network;

/// <summary>Writes a shadow as GeoJSON (RFC 7946): an area a cause, one a number of hops over which relays open it, and the points of the ridges.</summary>
public static class ShadowGeoJson
{
    /// <summary>The text of a file.</summary>
    public static string Write(ShadowReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        List<ReachFeature> features = [new() { Place = report.Setup.Station.Position.Point, Words = [new("what", "station")] }];
        foreach (ShadowPart part in report.Parts.Where(part => part.Cells > 0))
        {
            features.Add(Area(report, cell => report.Shadow.Causes[cell] == part.Cause) with
            {
                Words = [new("what", "cause"), new("cause", ShadowExamination.Code(part.Cause))],
                Numbers = [new("area-square-metres", Math.Round(part.AreaSquareMetres))],
            });
        }

        for (int hops = 2; hops <= report.HopLimit; hops++)
        {
            double opened = report.Parts.Where(part => part.Cause != ShadowCause.Reached).Sum(part => part.ByHops[hops - 2]);
            if (opened > 0)
            {
                features.Add(Area(report, cell => report.Shadow.Causes[cell] != ShadowCause.Reached && report.Shadow.Hops[cell] == hops) with
                {
                    Words = [new("what", "opened")],
                    Numbers = [new("hops", hops), new("area-square-metres", Math.Round(opened))],
                });
            }
        }

        features.AddRange(report.Ridge.Select(point => new ReachFeature
        {
            Place = point.Place,
            Words = [new("what", "ridge")],
            Numbers = [new("bearing-degrees", point.BearingDegrees), new("distance-metres", Math.Round(point.DistanceMetres)), new("ground-metres", Math.Round(point.GroundMetres, 1))],
        }));
        return ReachGeoJson.Write(features, new Dictionary<string, string>(StringComparer.Ordinal) { ["shadow-of"] = report.Setup.Station.Subject });
    }

    private static ReachFeature Area(ShadowReport report, Func<int, bool> isIn)
    {
        float[] values = new float[report.Shadow.Causes.Length];
        for (int cell = 0; cell < values.Length; cell++)
        {
            values[cell] = report.Shadow.Causes[cell] == ShadowCause.Unknown ? float.NaN : isIn(cell) ? 1 : 0;
        }

        return new() { Patches = ReachContour.Around(report.Shadow.Map.Field.Frame, values, 0.5).Patches };
    }
}
