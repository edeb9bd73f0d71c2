using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Quantities;

namespace Mastwright.Tests.Ground;

public sealed class SiteGroundTests
{
    private static readonly GeoPoint Place = new(46.5, -18.5);

    [Fact]
    public void The_plans_own_height_comes_first()
    {
        SiteGround ground = SiteGround.Resolve(Mosaic(HeightKind.Surface, (_, _) => 90), Place, Estimate.PlusMinus(80, 2), "sites/a");

        Assert.Equal(80, ground.HeightMetres!.Value.Median);
        Assert.Equal("plan", ground.Source);
        Assert.Empty(ground.Assumptions);
    }

    [Fact]
    public void Bare_earth_is_read_as_it_stands_and_an_unknown_kind_is_listed_as_assumed()
    {
        Assert.Empty(SiteGround.Resolve(Mosaic(HeightKind.BareEarth, (_, _) => 90), Place, null, "sites/a").Assumptions);
        SiteGround unknown = SiteGround.Resolve(Mosaic(HeightKind.Unknown, (_, _) => 90), Place, null, "sites/a");
        Assert.Equal(90, unknown.HeightMetres!.Value.Median);
        Assert.Equal("ground-kind", Assert.Single(unknown.Assumptions).Code);
    }

    [Fact]
    public void A_house_on_a_slope_is_taken_out_of_a_surface_model()
    {
        // A slope of 15 %, noise of half a metre, and a house of 9 m, 40 m across, over the site.
        static double Surface(double latitude, double longitude)
        {
            double east = (longitude - Place.LongitudeDegrees) * 111_195 * Math.Cos(double.DegreesToRadians(46.5));
            double north = (latitude - Place.LatitudeDegrees) * 111_195;
            double noise = 0.5 * Math.Sin(917 * east) * Math.Cos(611 * north);
            return 200 + (0.15 * east) + noise + (Math.Abs(east) < 20 && Math.Abs(north) < 20 ? 9 : 0);
        }

        SiteGround ground = SiteGround.Resolve(Fine(Surface), Place, null, "sites/a");

        // Within the noise and what the house leaks into its neighbours at 10 m of resolution.
        Assert.Equal(200, ground.HeightMetres!.Value.Median, 1.5);
        Assert.Equal("ground-under-surface", Assert.Single(ground.Assumptions).Code);
        Assert.Equal("sites/a/ground-height", ground.Assumptions[0].PlanPath);
    }

    [Fact]
    public void An_even_slope_is_its_own_bare_ground() =>
        Gen.Select(Gen.Double[-0.4, 0.4], Gen.Double[-0.4, 0.4]).Sample(
            (east, north) =>
            {
                double Slope(double latitude, double longitude) =>
                    500 + (east * (longitude - Place.LongitudeDegrees) * 76_000) + (north * (latitude - Place.LatitudeDegrees) * 111_195);
                Assert.Equal(500, SiteGround.BareHeight(Fine(Slope), Place), 0.05);
            },
            iter: 20);

    [Fact]
    public void Outside_the_ground_nothing_is_known() =>
        Assert.Null(SiteGround.Resolve(Mosaic(HeightKind.BareEarth, (_, _) => 90), new(10, 10), null, "sites/a").HeightMetres);

    [Fact]
    public void The_own_house_leaves_the_profile_and_a_strangers_house_stays()
    {
        static double Surface(double latitude, double longitude) =>
            100 + (Math.Abs(longitude - Place.LongitudeDegrees) < 0.0002 ? 9 : 0) + (longitude is > -18.49 and < -18.4895 ? 12 : 0);
        GroundMosaic mosaic = Fine(Surface);
        GeoPoint to = new(46.5, -18.482);
        TerrainProfile profile = SurfaceSites.TakeOut(TerrainProfile.Extract(mosaic, Place, to), mosaic, 100, null);

        Assert.Equal(100, profile.HeightsMetres[0]);
        Assert.Equal(100, profile.HeightsMetres[1], 0.5);
        double highest = 0;
        foreach (double height in profile.HeightsMetres)
        {
            highest = Math.Max(highest, height);
        }

        Assert.Equal(112, highest, 0.1);
    }

    [Fact]
    public void Mixed_and_unknown_datums_and_kinds_are_findings()
    {
        HeightSource known = new() { Name = "a", Files = ["a"], Kind = HeightKind.BareEarth, Datum = "EGM96" };
        Assert.Empty(VerticalDatums.Review([known], ["egm96"]));
        Assert.Equal(["ground-datums-mixed"], VerticalDatums.Review([known], ["NN54"]).Select(finding => finding.Code));
        Assert.Equal("EGM2008, EGM96", Assert.Single(VerticalDatums.Review([known, known with { Datum = "EGM2008" }])).Details["datums"]);
        Assert.Equal(
            [("ground-datum-unknown", Verdict.Unknown), ("ground-kind-unknown", Verdict.Unknown)],
            VerticalDatums.Review([new() { Name = "b", Files = ["b"] }]).Select(finding => (finding.Code, finding.Verdict)));
    }

    private static GroundMosaic Mosaic(HeightKind kind, Func<double, double, double> heightAt) =>
        GroundMosaic.Of([GroundSamples.Tile(46, -19, 301, heightAt, kind: kind)]);

    /// <summary>A surface model of 0.0001° (11 m by 8 m) around the place.</summary>
    private static GroundMosaic Fine(Func<double, double, double> heightAt)
    {
        GridFrame frame = GridFrame.Geographic(-18.51, 46.51, 0.0001, 0.0001, 400, 200, samplesAreAreas: true);
        float[] heights = new float[400 * 200];
        for (int i = 0; i < heights.Length; i++)
        {
            heights[i] = (float)heightAt(frame.OriginY - (i / 400 * 0.0001), frame.OriginX + (i % 400 * 0.0001));
        }

        return GroundMosaic.Of([GroundWindow.FromHeights(frame, heights, "fine", "fine", HeightKind.Surface, "EGM2008")]);
    }
}
