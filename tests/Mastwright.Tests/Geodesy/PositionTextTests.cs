using System.Globalization;
using Mastwright.Geodesy;

namespace Mastwright.Tests.Geodesy;

/// <summary>Positions as a person writes them.</summary>
public sealed class PositionTextTests
{
    [Theory]
    [InlineData("46.40, -18.70", 46.4, -18.7)]
    [InlineData("46.40,-18.70", 46.4, -18.7)]
    [InlineData("46.40,18.70", 46.4, 18.7)]
    [InlineData("46.40 -18.70", 46.4, -18.7)]
    [InlineData("46.40; −18.70", 46.4, -18.7)]
    [InlineData("46.40 N, 18.70 W", 46.4, -18.7)]
    [InlineData("46.40° N 18.70° W", 46.4, -18.7)]
    [InlineData("N46.40 W18.70", 46.4, -18.7)]
    [InlineData("n 46.40°, w 18.70°", 46.4, -18.7)]
    [InlineData("18.70 W, 46.40 N", 46.4, -18.7)]
    [InlineData("46.40°, -18.70°", 46.4, -18.7)]
    [InlineData("46, 18", 46, 18)]
    [InlineData("46N 18W", 46, -18)]
    [InlineData("46°24'00\"N 18°42'00\"W", 46.4, -18.7)]
    [InlineData("46° 24′ 00″ N, 18° 42′ 00″ W", 46.4, -18.7)]
    [InlineData("46°24'00''N 18°42'00''W", 46.4, -18.7)]
    [InlineData("46°24'N 18°42'W", 46.4, -18.7)]
    [InlineData("46°24.5'S 18°42.25'E", -46.408333333333333, 18.704166666666667)]
    [InlineData("N 46° 24.500 W 018° 42.250", 46.408333333333333, -18.704166666666667)]
    [InlineData("46 24 00 N 18 42 00 W", 46.4, -18.7)]
    [InlineData("+46°24' -18°42'", 46.4, -18.7)]
    [InlineData("-0°30' +0°30'", -0.5, 0.5)]
    [InlineData("90, 0", 90, 0)]
    [InlineData("-90, 180", -90, -180)]
    public void Degrees_are_read_in_the_forms_people_use(string text, double latitude, double longitude)
    {
        Assert.True(PositionText.TryParse(text, out LocatedPoint position, out string problem), problem);
        Assert.Equal(latitude, position.Point.LatitudeDegrees, 1e-13);
        Assert.Equal(longitude, position.Point.LongitudeDegrees, 1e-13);
        Assert.Equal(0, position.RadiusMetres);
    }

    /// <summary>46.4° N 18.7° W is 27N 676804.366 5141062.337 and 27TXM7680441062 by GeoConvert 2.1.2 of GeographicLib.</summary>
    [Theory]
    [InlineData("27T 676804.366323 5141062.336725", 0, 0.001)]
    [InlineData("27 T 676804 5141062", 0, 1)]
    [InlineData("27t 676804mE 5141062mN", 0, 1)]
    [InlineData("27 north 676804 5141062", 0, 1)]
    [InlineData("27TXM7680441062", 0.7, 0.71)]
    [InlineData("27T XM 76804 41062", 0.7, 0.71)]
    [InlineData("27TXM 768 410", 70.7, 71)]
    public void Grid_positions_lead_to_the_same_place(string text, double leastRadius, double mostOff)
    {
        Assert.True(PositionText.TryParse(text, out LocatedPoint position, out string problem), problem);
        Assert.InRange(Geodesic.Inverse(position.Point, new GeoPoint(46.4, -18.7)).DistanceMetres, 0, mostOff);
        Assert.InRange(position.RadiusMetres, leastRadius, leastRadius == 0 ? 0 : mostOff);
    }

    [Fact]
    public void A_southern_position_needs_a_southern_band()
    {
        // 33.8568° S 151.2153° E is 56H 334900.570 6252288.753 by GeoConvert 2.1.2 of GeographicLib.
        Assert.True(PositionText.TryParse("56H 334900.570 6252288.753", out LocatedPoint position, out string problem), problem);
        Assert.InRange(Geodesic.Inverse(position.Point, new GeoPoint(-33.8568, 151.2153)).DistanceMetres, 0, 0.001);
    }

    [Fact]
    public void A_locator_has_its_own_radius()
    {
        Assert.True(PositionText.TryParse("IN06pj", out LocatedPoint position, out string problem), problem);
        Assert.Equal("IN06pj", Locator.Format(position.Point, 6));
        Assert.InRange(position.RadiusMetres, 3900, 4300);
    }

    [Theory]
    [InlineData("46.40, -18.70 ± 3 km", 3000)]
    [InlineData("46.40, -18.70 +/- 30 m", 30)]
    [InlineData("46°24'00\"N 18°42'00\"W ±30m", 30)]
    [InlineData("27T 676804 5141062 ± 50 m", 50)]
    [InlineData("27TXM7680441062 ± 5 m", 5)]
    [InlineData("IN06pj ± 10 km", 10000)]
    public void How_far_off_it_may_be_can_be_given(string text, double radius)
    {
        Assert.True(PositionText.TryParse(text, out LocatedPoint position, out string problem), problem);
        Assert.Equal(radius, position.RadiusMetres);
    }

    [Theory]
    [InlineData("", "there is no position")]
    [InlineData("46,40, -18,70", "comma between digits; write a decimal point")]
    [InlineData("46,40 -18,70", "comma between digits")]
    [InlineData("46,18", "comma between digits")]
    [InlineData("120.5, 46.4", "latitude comes first: is '46.4, 120.5' meant?")]
    [InlineData("-118.2, 34.0", "latitude comes first: is '34, -118.2' meant?")]
    [InlineData("46.4, 190", "a longitude is between -180° and 180°")]
    [InlineData("190, 46.4", "a latitude is between -90° and 90°")]
    [InlineData("95 N, 18 W", "a latitude is between -90° and 90°")]
    [InlineData("46°24'00\" 18°42'00\"", "does not say north or south")]
    [InlineData("46 24 00 18 42 00", "does not say north or south")]
    [InlineData("46°24'00\"N 18°42'00\"", "a letter for one angle and none for the other")]
    [InlineData("46.4 N, -18.7", "a letter for one angle and none for the other")]
    [InlineData("46.4 N, -18.7 W", "a sign and the letter W")]
    [InlineData("46.4 N, 18.7 N", "one of N or S and one of E or W")]
    [InlineData("46°60'N 18°42'W", "60 minutes; they are under 60")]
    [InlineData("46°24'75\"N 18°42'00\"W", "75 seconds")]
    [InlineData("46.5°30'N 18°42'W", "is not understood")]
    [InlineData("46.4", "is one number")]
    [InlineData("46.4, 18.7, 12", "is not understood")]
    [InlineData("by the harbour", "is not understood")]
    [InlineData("HM5", "3 characters; a locator has")]
    [InlineData("HMX6", "'X' as character 3")]
    [InlineData("27N 676804 5141062", "N is 0° to 8°, but the northing lies at 46.4°, which is band T")]
    [InlineData("27A 676804 5141062", "polar grid")]
    [InlineData("27I 676804 5141062", "bands run from C to X")]
    [InlineData("61T 676804 5141062", "zones run from 1 to 60")]
    [InlineData("27T 5141062 676804", "comes first")]
    [InlineData("27TXM123", "as many digits")]
    [InlineData("46.40, -18.70 ± 3", "how far off the position may be: '3' has no unit")]
    [InlineData("46.40, -18.70 ± 3 dB", "a length is wanted")]
    [InlineData("46.40, -18.70 ± -3 m", "is no distance")]
    [InlineData("46.40, -18.70 ± 3…5 m", "is no distance")]
    [InlineData("IN06 ± 3 km", "write a longer reference")]
    public void What_is_wrong_says_what_would_be_right(string text, string part)
    {
        Assert.False(PositionText.TryParse(text, out LocatedPoint position, out string problem));
        Assert.Equal(default, position);
        Assert.Contains(part, problem, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_written_reads_back_to_the_millimetre() =>
        Gen.Select(Gen.Double[-90, 90], Gen.Double[-180, 180], Gen.Double[0, 1e5]).Sample((latitude, longitude, radius) =>
        {
            LocatedPoint written = new(new GeoPoint(latitude, longitude), radius);
            return PositionText.TryParse(PositionText.Format(written), out LocatedPoint back, out _)
                && Geodesic.Inverse(written.Point, back.Point).DistanceMetres < 1e-3
                && back.RadiusMetres == radius;
        });

    [Fact]
    public void A_utm_position_reads_back_from_its_own_text() =>
        Gen.Select(Gen.Double[-79.9, 83.9], Gen.Double[-180, 180]).Sample((latitude, longitude) =>
        {
            GeoPoint point = new(latitude, longitude);
            string text = UniversalTransverseMercator.FromGeo(point).ToString();
            return PositionText.TryParse(text, out LocatedPoint back, out _)
                && Geodesic.Inverse(point, back.Point).DistanceMetres < 0.8;
        });

    [Fact]
    public void A_comma_culture_changes_nothing()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CommaCulture.Create();
            Assert.True(PositionText.TryParse("46.40, -18.70 ± 1.5 km", out LocatedPoint position, out string problem), problem);
            Assert.Equal("46.40000, -18.70000 ± 1500 m", PositionText.Format(position));
            Assert.False(PositionText.TryParse("120.5, 46.4", out _, out problem));
            Assert.Contains("'46.4, 120.5'", problem, StringComparison.Ordinal);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Any_text_is_an_answer() =>
        Gen.OneOf(Gen.String, Gen.String[Gen.Char["0123456789.,;+-−±/ °'\"′″NSEWnsewTXMJHmk\u0000é"], 0, 40]).Sample(text =>
        {
            bool isRead = PositionText.TryParse(text, out _, out string problem);
            return isRead == (problem.Length == 0);
        });
}
