using System.Globalization;
using Mastwright.Geodesy;

namespace Mastwright.Tests.Geodesy;

/// <summary>Many positions along one line.</summary>
public sealed class GeodesicLineTests
{
    [Fact]
    public void Positions_in_a_span_are_the_positions_one_by_one() =>
        Gen.Select(Gen.Double[-90, 90], Gen.Double[-180, 180], Gen.Double[0, 360], Gen.Double[-3e7, 3e7].Array[1, 20]).Sample(
            (latitude, longitude, bearing, distances) =>
            {
                GeodesicLine line = new(new GeoPoint(latitude, longitude), bearing);
                double[] latitudes = new double[distances.Length];
                double[] longitudes = new double[distances.Length];
                line.At(distances, latitudes, longitudes);
                for (int i = 0; i < distances.Length; i++)
                {
                    GeoPoint single = line.At(distances[i]);
                    if (single.LatitudeDegrees != latitudes[i] || single.LongitudeDegrees != longitudes[i])
                    {
                        return false;
                    }
                }

                return true;
            });

    [Fact]
    public void A_place_part_way_is_that_far_from_both_ends() =>
        Gen.Select(GeodesicTests.Pairs, Gen.Double[0, 1]).Sample((ends, share) =>
        {
            (GeodesicLine line, double length) = GeodesicLine.Between(ends.From, ends.To);
            GeoPoint middle = line.At(length * share);
            return Math.Abs(Geodesic.Inverse(ends.From, middle).DistanceMetres - (length * share)) < 40e-9
                && Math.Abs(Geodesic.Inverse(middle, ends.To).DistanceMetres - (length * (1 - share))) < 40e-9;
        });

    [Fact]
    public void A_line_crosses_the_antimeridian()
    {
        // From 50° N 179.9° E to 51° N 179.8° W, 113,256.457759667 m by GeodSolve 2.1.2 of GeographicLib.
        (GeodesicLine line, double length) = GeodesicLine.Between(new GeoPoint(50, 179.9), new GeoPoint(51, -179.8));
        Assert.Equal(113256.457759667, length, 20e-9);
        Assert.InRange(line.At(10_000).LongitudeDegrees, 179.9, 180);
        Assert.InRange(line.At(100_000).LongitudeDegrees, -180, -179.8);
    }

    [Fact]
    public void A_line_over_the_pole_comes_down_the_other_side()
    {
        // From pole to pole is 20,003,931.458625 m by GeodSolve 2.1.2 of GeographicLib; half of it is the quarter meridian.
        GeodesicLine line = new(new GeoPoint(80, 30), 0);
        double toPole = Geodesic.Inverse(new GeoPoint(80, 30), new GeoPoint(90, 0)).DistanceMetres;
        GeoPoint beyond = line.At(2 * toPole);
        Assert.Equal(80, beyond.LatitudeDegrees, 1e-12);
        Assert.Equal(-150, beyond.LongitudeDegrees, 1e-9);
        Assert.Equal(90, line.At(toPole).LatitudeDegrees, 1e-12);
        Assert.Equal(10001965.729, Geodesic.Inverse(new GeoPoint(0, 30), new GeoPoint(90, 0)).DistanceMetres, 5e-4);
    }

    [Fact]
    public void Going_backwards_is_going_the_other_way() =>
        Gen.Select(Gen.Double[-89, 89], Gen.Double[-180, 180], Gen.Double[0, 360], Gen.Double[0, 1e7]).Sample(
            (latitude, longitude, bearing, metres) =>
            {
                GeoPoint from = new(latitude, longitude);
                GeoPoint back = new GeodesicLine(from, bearing).At(-metres);
                GeoPoint turned = new GeodesicLine(from, bearing + 180).At(metres);
                return Geodesic.Inverse(back, turned).DistanceMetres < 30e-9;
            });

    [Fact]
    public void Spans_of_different_lengths_are_refused() =>
        Assert.Throws<ArgumentException>(() => new GeodesicLine(default, 0).At([1, 2], new double[2], new double[1]));

    [Fact]
    public void Its_text_does_not_follow_the_culture()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CommaCulture.Create();
            Assert.Equal("from 46.40000, -18.70000 at 12.5°", new GeodesicLine(new GeoPoint(46.4, -18.7), 12.5).ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
