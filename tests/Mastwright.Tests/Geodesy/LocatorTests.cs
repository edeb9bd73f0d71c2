using Mastwright.Geodesy;

namespace Mastwright.Tests.Geodesy;

/// <summary>Maidenhead locators.</summary>
public sealed class LocatorTests
{
    /// <summary>Public worked examples that go back to "Conversion between geodetic and grid locator systems", QST, January 1989.</summary>
    public static TheoryData<double, double, string> Published => new()
    {
        { 48.14666, 11.60833, "JN58td25" },
        { -34.91, -56.21166, "GF15vc41" },
        { 38.92, -77.065, "FM18lw20" },
        { -41.28333, 174.745, "RE78ir92" },
        { 41.714775, -72.72726, "FN31pr21" },
        { 37.413708, -122.1073236, "CM87wj79" },
        { 35.0542, -85.1142, "EM75kb63" },
        { 0, 0, "JJ00aa00" },
    };

    [Theory, MemberData(nameof(Published))]
    public void A_place_has_its_published_locator(double latitude, double longitude, string locator)
    {
        GeoPoint point = new(latitude, longitude);
        Assert.Equal(locator, Locator.Format(point));
        Assert.Equal(locator[..6], Locator.Format(point, 6));
        Assert.Equal(locator[..2], Locator.Format(point, 2));
    }

    [Fact]
    public void A_locator_reads_back_as_the_middle_of_its_square()
    {
        // FM18lw: 38.9375, -77.041667 (same source). A sub-square is 5' by 2.5': at 38.9° N some 7.2 by 4.6 km.
        Assert.True(Locator.TryParse("fm18LW", out LocatedPoint position, out string problem), problem);
        Assert.Equal(38.9375, position.Point.LatitudeDegrees, 1e-9);
        Assert.Equal(-77.0416667, position.Point.LongitudeDegrees, 1e-7);
        Assert.Equal(4280, position.RadiusMetres, 20.0);
    }

    [Fact]
    public void Every_place_lies_within_the_radius_of_its_locator() =>
        Gen.Select(Gen.Double[-90, 90], Gen.Double[-180, 180], Gen.Int[1, 5]).Sample((latitude, longitude, pairs) =>
        {
            GeoPoint point = new(latitude, longitude);
            string locator = Locator.Format(point, 2 * pairs);
            return Locator.TryParse(locator, out LocatedPoint position, out _)
                && Locator.Format(position.Point, 2 * pairs) == locator
                && Geodesic.Inverse(point, position.Point).DistanceMetres <= position.RadiusMetres * (1 + 1e-6) + 1e-6;
        });

    [Theory]
    [InlineData("JN5", "3 characters")]
    [InlineData("SN58", "'S' as character 1")]
    [InlineData("JNA8", "'A' as character 3; a locator has a digit")]
    [InlineData("JN58yd", "'y' as character 5; a locator has a letter from A to X")]
    public void A_wrong_locator_says_what_would_be_right(string text, string part)
    {
        Assert.False(Locator.TryParse(text, out _, out string problem));
        Assert.Contains(part, problem, StringComparison.Ordinal);
    }

    [Fact]
    public void The_north_pole_and_the_antimeridian_have_a_square()
    {
        Assert.Equal("JR09ax", Locator.Format(new GeoPoint(90, 0), 6));
        Assert.Equal("AJ00aa", Locator.Format(new GeoPoint(0, 180), 6));
    }
}
