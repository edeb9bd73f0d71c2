using Mastwright.Geodesy;

namespace Mastwright.Tests.Geodesy;

/// <summary>Shortest lines, against published values and against numbers of an independent program.</summary>
public sealed class GeodesicTests
{
    /// <summary>
    /// Test cases that C. F. F. Karney publishes with GeographicLib's geodesic library, computed in high precision:
    /// latitude, longitude, azimuth, latitude, longitude, azimuth, distance. Given to 5 digits or more; azimuths to 1e-15°.
    /// </summary>
    public static TheoryData<double, double, double, double, double, double, double> PublishedTestSet => new()
    {
        { 35.60777, -139.44815, 111.098748429560326, -11.17491, -69.95921, 129.289270889708762, 8935244.5604818305 },
        { 55.52454, 106.05087, 22.020059880982801, 77.03196, 197.18234, 109.112041110671519, 4105086.1713924406 },
        { -21.97856, 142.59065, -32.44456876433189, 41.84138, 98.56635, -41.84359951440466, 8394328.894657671 },
        { -66.99028, 112.2363, 173.73491240878403, -12.70631, 285.90344, 2.512956620913668, 11150344.2312080241 },
        { -68.82867, -74.28391, 93.774347763114881, -50.63005, -8.36685, 34.65564085411343, 3956936.926063544 },
        { -19.79938, -174.47484, 71.167275780171533, -11.99349, -154.35109, 65.589099775199228, 2319004.8601169389 },
        { -41.22777, 122.32875, 14.285113402275739, -7.57291, 130.37946, 10.805303085187369, 3812686.035106021 },
    };

    /// <summary>
    /// Computed with GeodSolve 2.1.2 of GeographicLib, an independent program (-i -f -p 9): latitude, longitude, latitude,
    /// longitude, distance, bearings 0 to 360. Antipodes, equator, meridians, poles, antimeridian, short lines.
    /// </summary>
    public static TheoryData<double, double, double, double, double, double, double> GeographicLib => new()
    {
        { 0, 0, 0.5, 179.7, 19944127.420750458, 15.5568827934905, 164.4425138908549 },
        { 0, 0, 0.5, 179.5, 19936288.578965314, 25.6718728682919, 154.3270854699416 },
        { 0, 0, 0, 179.5, 19980861.908890963, 55.9664951401586, 124.0335048598414 },
        { 0, 0, 0, 180, 20003931.458625447, 0.0000000000000, 180.0000000000000 },
        { 30, 0, -30, 179.8, 20000239.437724669, 22.4966624096578, 157.5033375903422 },
        { 50, 179.9, 51, -179.8, 113256.457759667, 10.7166655660893, 10.9481619862921 },
        { 90, 10, 45, 100, 5017021.351334979, 90.0000000000000, 180.0000000000000 },
        { 88.202499451857, 0, -88.202499451857, 179.98102203299286, 20003898.213853300, 90.0000000001676, 90.0000000001676 },
        { 52.784459512564, 0, -52.78445951256399, 179.63440746494379, 19991596.095171604, 89.9999597694533, 90.0000402454909 },
        { -33.414308, -31.669402, 33.414283076, 148.330597412, 20003928.694258418, 179.9999331378719, 0.0000668621090 },
        { -41.32, 174.81, 40.96, -5.5, 19959679.267353822, 161.0676699861602, 18.8251951232471 },
        { 46.4, -18.7, 46.4, -18.6, 7690.320204221, 89.9637914025429, 90.0362085974571 },
        { -7, 0, 7, 179.99, 20003922.228149042, 179.0426882507087, 0.9573117492913 },
        { 89.9999, 20, 89.9999, -160, 22.338795913, -0.0000000000000, 180.0000000000000 },
        { 12.5, 45, 12.500001, 45.000001, 0.155091575, 44.4962177277775, 44.4962179442171 },
        { 0, -179.5, 0.00001, 179.5, 111319.490798765, 270.0005691512878, 270.0005690640191 },
    };

    [Theory, MemberData(nameof(PublishedTestSet))]
    public void Inverse_gives_the_published_test_set(
        double latitude1, double longitude1, double azimuth1, double latitude2, double longitude2, double azimuth2, double metres)
    {
        GeodesicSegment segment = Geodesic.Inverse(new GeoPoint(latitude1, longitude1), new GeoPoint(latitude2, longitude2));

        // 15 nm is what the method claims; a bearing's last digits are worth that over the earth's radius.
        Assert.Equal(metres, segment.DistanceMetres, 15e-9);
        Assert.Equal(0, Math.IEEERemainder(azimuth1 - segment.InitialBearingDegrees, 360), 1e-12);
        Assert.Equal(0, Math.IEEERemainder(azimuth2 - segment.FinalBearingDegrees, 360), 1e-12);
    }

    [Theory, MemberData(nameof(PublishedTestSet))]
    public void Direct_gives_the_published_test_set(
        double latitude1, double longitude1, double azimuth1, double latitude2, double longitude2, double azimuth2, double metres)
    {
        GeoPoint reached = Geodesic.Direct(new GeoPoint(latitude1, longitude1), azimuth1, metres);

        Assert.Equal(latitude2, reached.LatitudeDegrees, 2e-13);
        Assert.Equal(0, Math.IEEERemainder(longitude2 - reached.LongitudeDegrees, 360), 5e-13);
        Assert.InRange(azimuth2, -180, 180);
    }

    [Theory, MemberData(nameof(GeographicLib))]
    public void Inverse_agrees_with_an_independent_program_in_the_hard_cases(
        double latitude1, double longitude1, double latitude2, double longitude2, double metres, double bearing1, double bearing2)
    {
        GeoPoint from = new(latitude1, longitude1);
        GeoPoint to = new(latitude2, longitude2);
        GeodesicSegment segment = Geodesic.Inverse(from, to);

        Assert.Equal(metres, segment.DistanceMetres, 20e-9);

        // Near the antipode the bearing swings freely: what counts is that the line arrives.
        GeoPoint reached = Geodesic.Direct(from, segment.InitialBearingDegrees, segment.DistanceMetres);
        Assert.InRange(Geodesic.Inverse(reached, to).DistanceMetres, 0, 20e-9);
        double bearingTolerance = metres is > 1e3 and < 1.9e7 ? 1e-11 : 1e-5;
        Assert.Equal(0, Math.IEEERemainder(bearing1 - segment.InitialBearingDegrees, 360), bearingTolerance);
        Assert.Equal(0, Math.IEEERemainder(bearing2 - segment.FinalBearingDegrees, 360), bearingTolerance);
    }

    [Fact]
    public void A_transatlantic_line_has_its_published_length_and_bearings()
    {
        // New York to London, one of the public tests of GeographicLib's geodesic library.
        GeodesicSegment segment = Geodesic.Inverse(new GeoPoint(40.6, -73.8), new GeoPoint(51.6, -0.5));
        Assert.Equal(5551759.400318679, segment.DistanceMetres, 15e-9);
        Assert.Equal(51.198882845579824, segment.InitialBearingDegrees, 1e-12);
        Assert.Equal(107.821776735514248, segment.FinalBearingDegrees, 1e-12);
    }

    [Fact]
    public void A_national_line_has_its_published_length()
    {
        // Land's End to John o'Groats, a public worked example of the inverse problem on WGS 84, given to 1 µm.
        GeodesicSegment segment = Geodesic.Inverse(new GeoPoint(50.06632, -5.71475), new GeoPoint(58.64402, -3.07009));
        Assert.Equal(969954.166314, segment.DistanceMetres, 1e-6);
        Assert.Equal(9.1419, segment.InitialBearingDegrees, 5e-5);
        Assert.Equal(11.2972, segment.FinalBearingDegrees, 5e-5);
    }

    [Fact]
    public void A_line_of_seven_centimetres_keeps_its_digits()
    {
        GeodesicSegment segment = Geodesic.Inverse(
            new GeoPoint(36.493349428792, 0), new GeoPoint(36.49334942879201, 8e-7));
        Assert.Equal(0.071679009, segment.DistanceMetres, 2e-9);
    }

    [Fact]
    public void One_place_is_no_distance_from_itself() =>
        Gen.Select(Gen.Double[-90, 90], Gen.Double[-180, 180]).Sample((latitude, longitude) =>
        {
            GeoPoint point = new(latitude, longitude);
            return Geodesic.Inverse(point, point) == default;
        });

    [Fact]
    public void The_way_back_is_as_long_and_opposite() =>
        Pairs.Sample((from, to) =>
        {
            GeodesicSegment there = Geodesic.Inverse(from, to);
            GeodesicSegment back = Geodesic.Inverse(to, from);
            double turn = Math.IEEERemainder(there.InitialBearingDegrees + 180 - back.FinalBearingDegrees, 360);
            return Math.Abs(there.DistanceMetres - back.DistanceMetres) < 1e-8
                && (there.DistanceMetres is < 1 or > 1.99e7 || Math.Abs(turn) < 1e-6);
        });

    [Fact]
    public void A_line_arrives_where_it_was_aimed() =>
        Pairs.Sample((from, to) =>
        {
            GeodesicSegment segment = Geodesic.Inverse(from, to);
            GeoPoint reached = Geodesic.Direct(from, segment.InitialBearingDegrees, segment.DistanceMetres);
            return Geodesic.Inverse(reached, to).DistanceMetres < 30e-9;
        });

    [Fact]
    public void No_pair_of_places_breaks_the_search() =>
        Gen.Select(AwkwardDegrees(90), AwkwardDegrees(180), AwkwardDegrees(90), AwkwardDegrees(180)).Sample(
            (latitude1, longitude1, latitude2, longitude2) =>
            {
                GeodesicSegment segment = Geodesic.Inverse(new GeoPoint(latitude1, longitude1), new GeoPoint(latitude2, longitude2));

                // Half the length of a meridian ellipse is the longest there is: 20,003,931.4586 m (same source as above).
                return segment.DistanceMetres is >= 0 and <= 20003931.4587
                    && segment.InitialBearingDegrees is >= 0 and < 360
                    && segment.FinalBearingDegrees is >= 0 and < 360;
            });

    [Fact]
    public void A_bearing_or_distance_that_is_no_number_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Geodesic.Direct(default, double.NaN, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Geodesic.Direct(default, 0, double.PositiveInfinity));
    }

    internal static Gen<(GeoPoint From, GeoPoint To)> Pairs { get; } =
        Gen.Select(Gen.Double[-90, 90], Gen.Double[-180, 180], Gen.Double[-90, 90], Gen.Double[-180, 180])
            .Select((latitude1, longitude1, latitude2, longitude2) =>
                (new GeoPoint(latitude1, longitude1), new GeoPoint(latitude2, longitude2)));

    private static Gen<double> AwkwardDegrees(double limit) => Gen.OneOf(
        Gen.Double[-limit, limit],
        Gen.OneOf(-limit, -limit + 1e-12, -90, -45, -1e-13, -0.0, 0, 1e-300, 1e-9, 45, 90, limit - 1e-12, limit));
}
