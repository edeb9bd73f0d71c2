using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;

namespace Mastwright.Tests.Network.Reach;

public sealed class ReachGridTests
{
    private static readonly GeoPoint Station = new(46.3981, -18.67);

    [Fact]
    public void Every_place_within_the_radius_lies_in_the_grid() =>
        Gen.Select(Gen.Double[-79, 83], Gen.Double[-179.9, 179.9], Gen.Double[0, 360], Gen.Double[200, 90_000]).Sample((latitude, longitude, bearing, radius) =>
        {
            GeoPoint station = new(latitude, longitude);
            GridFrame frame = ReachGrid.Of(station, radius, radius / 20);
            (double column, double row) = frame.Locate(Geodesic.Direct(station, bearing, radius));
            Assert.InRange(column, -0.5, frame.Columns - 0.5);
            Assert.InRange(row, -0.5, frame.Rows - 0.5);
        });

    [Fact]
    public void Cells_lie_at_multiples_of_their_side_whatever_the_station()
    {
        GridFrame one = ReachGrid.Of(Station, 3_000, 90);
        GridFrame other = ReachGrid.Of(new(46.4203, -18.6511), 5_000, 90);
        Assert.Equal(0, (one.OriginX - other.OriginX) % 90, 1e-6);
        Assert.Equal(0, (one.OriginY - other.OriginY) % 90, 1e-6);
        Assert.Equal(45, one.OriginX % 90, 1e-6);
        Assert.True(one.SamplesAreAreas);
        Assert.Equal(27, one.UtmZone);
    }

    [Fact]
    public void The_centre_of_a_cell_is_where_the_grid_has_it()
    {
        GridFrame frame = ReachGrid.Of(Station, 3_000, 90);
        (double column, double row) = frame.Locate(ReachGrid.Centre(frame, 12, 7));
        Assert.Equal(12, column, 1e-6);
        Assert.Equal(7, row, 1e-6);
    }

    /// <summary>π · 20 km² / (30 m)² = 1,396,263 cells; √(400,000 / π) cells of 30 m are 10.7 km; √(π / 400,000) · 20 km is 56 m.</summary>
    [Fact]
    public void Too_many_cells_are_refused_with_what_would_do()
    {
        string problem = ReachGrid.Problem(Station, 20_000, 30);
        Assert.Contains("1,396,263 cells", problem, StringComparison.Ordinal);
        Assert.Contains("A cell of 60 m would do, or a radius of 10.7 km", problem, StringComparison.Ordinal);
        Assert.Equal("", ReachGrid.Problem(Station, 20_000, 60));
        Assert.Equal("", ReachGrid.Problem(Station, 10_700, 30));
    }

    [Theory]
    [InlineData(46, 3e6, 9_000, "200 km or less")]
    [InlineData(46, 100, 200, "several cells")]
    [InlineData(46, 1_000, 0.5, "5 m or more")]
    [InlineData(46, double.NaN, 90, "several cells")]
    [InlineData(46, double.PositiveInfinity, 90, "several cells")]
    [InlineData(46, 1_000, double.NaN, "5 m or more")]
    [InlineData(88, 1_000, 90, "UTM grid")]
    [InlineData(-85, 1_000, 90, "UTM grid")]
    public void What_cannot_be_made_is_refused_with_the_reason(double latitude, double radiusMetres, double cellMetres, string part)
    {
        Assert.Contains(part, ReachGrid.Problem(new(latitude, 10), radiusMetres, cellMetres), StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => ReachGrid.Of(new(latitude, 10), radiusMetres, cellMetres));
    }
}
