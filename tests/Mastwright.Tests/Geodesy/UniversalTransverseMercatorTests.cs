using Mastwright.Geodesy;

namespace Mastwright.Tests.Geodesy;

/// <summary>The grid of metres, against published positions and an independent program.</summary>
public sealed class UniversalTransverseMercatorTests
{
    /// <summary>
    /// Computed with GeoConvert 2.1.2 of GeographicLib, an independent program (-u -p 6): latitude, longitude, zone, hemisphere,
    /// easting, northing. Norway, Svalbard, both sides of the equator and of the antimeridian, both ends of the grid.
    /// </summary>
    public static TheoryData<double, double, int, bool, double, double> GeographicLib => new()
    {
        { 46.4, -18.7, 27, true, 676804.366323, 5141062.336725 },
        { 60.39, 5.32, 32, true, 297230.220210, 6700510.175254 },
        { 78.22, 15.63, 33, true, 514357.743530, 8682999.169143 },
        { -54.8, -68.3, 19, false, 545000.053364, 3927239.381300 },
        { 83.9, 179.99, 60, true, 535457.200006, 9317850.302331 },
        { -79.9, -179.99, 1, false, 441488.077185, 1128072.242746 },
        { 0.001, 12, 33, true, 166021.443131, 110.682756 },
        { -0.001, 12, 33, false, 166021.443131, 9999889.317244 },
        { 48.8584, 2.2945, 31, true, 448252.001375, 5411954.909947 },
        { -33.8568, 151.2153, 56, false, 334900.569652, 6252288.752888 },
        { 33.3, 44.4, 38, true, 444140.544918, 3684706.355550 },
    };

    /// <summary>The same program with a forced zone (-z), and PROJ's cs2cs where that refuses (the first, third and last row).</summary>
    public static TheoryData<double, double, int, bool, double, double> ForcedZones => new()
    {
        { 46.4, -18.7, 29, true, -245478.133229, 5184404.743919 },
        { 50, 8.9, 33, true, 62974.801178, 5556482.860874 },
        { -1, 30, 38, false, -1188391.658318, 9885543.901145 },
        { 60, 3.5, 31, true, 527888.663944, 6651516.575620 },
        { 10, 20, 36, true, -936441.770924, 1134078.785879 },
    };

    [Fact]
    public void A_published_position_comes_out_to_the_millimetre()
    {
        // FGDC-STD-011-2001, United States National Grid, section 5.2.2.
        UtmPosition utm = UniversalTransverseMercator.FromGeo(new GeoPoint(38.889467309501576, -77.0352402156242));
        Assert.Equal((18, true), (utm.Zone, utm.North));
        Assert.Equal(323483.168, utm.EastingMetres, 0.0005);
        Assert.Equal(4306479.498, utm.NorthingMetres, 0.0005);
    }

    [Theory, MemberData(nameof(GeographicLib))]
    public void Positions_agree_with_an_independent_program(
        double latitude, double longitude, int zone, bool north, double easting, double northing)
    {
        UtmPosition utm = UniversalTransverseMercator.FromGeo(new GeoPoint(latitude, longitude));
        Assert.Equal((zone, north), (utm.Zone, utm.North));

        // The numbers are given to a micrometre.
        Assert.Equal(easting, utm.EastingMetres, 1e-6);
        Assert.Equal(northing, utm.NorthingMetres, 1e-6);
        GeoPoint back = UniversalTransverseMercator.ToGeo(new UtmPosition(zone, north, easting, northing));
        Assert.InRange(Geodesic.Inverse(back, new GeoPoint(latitude, longitude)).DistanceMetres, 0, 1e-6);
    }

    [Theory, MemberData(nameof(ForcedZones))]
    public void A_neighbouring_zone_can_be_asked_for(
        double latitude, double longitude, int zone, bool north, double easting, double northing)
    {
        UtmPosition utm = UniversalTransverseMercator.FromGeo(new GeoPoint(latitude, longitude), zone, north);
        Assert.Equal(easting, utm.EastingMetres, 1e-6);
        Assert.Equal(northing, utm.NorthingMetres, 1e-6);
    }

    [Fact]
    public void Going_to_the_grid_and_back_returns_to_the_place() =>
        Gen.Select(Gen.Double[-90, 90], Gen.Double[-30, 30], Gen.Int[1, 60], Gen.Bool).Sample((latitude, fromMeridian, zone, north) =>
        {
            double longitude = Math.IEEERemainder(UniversalTransverseMercator.MeridianDegrees(zone) + fromMeridian, 360);
            GeoPoint point = new(latitude, longitude);
            UniversalTransverseMercator.Forward(
                latitude, point.LongitudeDegrees, zone, north, out double easting, out double northing);
            if (double.IsNaN(easting))
            {
                return Math.Abs(fromMeridian) > 30 - 1e-9;
            }

            UniversalTransverseMercator.Reverse(easting, northing, zone, north, out double latitudeBack, out double longitudeBack);

            // 10 nm by the source; the false northing of 1e7 m alone rounds to 2 nm.
            return Geodesic.Inverse(point, new GeoPoint(latitudeBack, longitudeBack)).DistanceMetres < 20e-9;
        });

    [Fact]
    public void On_the_meridian_the_northing_is_the_geodesic_times_the_scale() =>
        Gen.Double[-80, 84].Sample(latitude =>
        {
            double metres = Geodesic.Inverse(new GeoPoint(0, -21), new GeoPoint(latitude, -21)).DistanceMetres;
            UtmPosition utm = UniversalTransverseMercator.FromGeo(new GeoPoint(latitude, -21), 27, north: true);
            return Math.Abs(utm.EastingMetres - 500000) < 1e-9
                && Math.Abs(Math.Abs(utm.NorthingMetres) - (0.9996 * metres)) < 30e-9;
        });

    [Theory]
    [InlineData(55.9, 5, 31)]
    [InlineData(56, 3, 32)]
    [InlineData(63.9, 2.9, 31)]
    [InlineData(71.9, 7, 32)]
    [InlineData(72, 8.9, 31)]
    [InlineData(72, 9, 33)]
    [InlineData(80, 20.9, 33)]
    [InlineData(80, 21, 35)]
    [InlineData(80, 33, 37)]
    [InlineData(80, 42, 38)]
    [InlineData(0, -180, 1)]
    [InlineData(0, 179.999, 60)]
    public void Zones_follow_the_grid_and_its_exceptions(double latitude, double longitude, int zone) =>
        Assert.Equal(zone, UniversalTransverseMercator.Zone(new GeoPoint(latitude, longitude)));

    [Fact]
    public void Places_that_the_grid_does_not_reach_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => UniversalTransverseMercator.FromGeo(new GeoPoint(84.1, 0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => UniversalTransverseMercator.FromGeo(new GeoPoint(-80.1, 0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => UniversalTransverseMercator.FromGeo(new GeoPoint(0, 90), 31, north: true));
        Assert.Throws<ArgumentOutOfRangeException>(() => UniversalTransverseMercator.FromGeo(default, 61, north: true));
        Assert.Throws<ArgumentOutOfRangeException>(() => new UtmPosition(31, true, double.NaN, 0));
    }
}
