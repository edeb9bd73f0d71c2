using Mastwright.Geodesy;
using Mastwright.Ground;

namespace Mastwright.Tests.Ground;

public sealed class GroundWindowTests
{
    [Fact]
    public void Heights_that_cannot_be_are_voids()
    {
        GridFrame frame = GridFrame.Geographic(8, 47, 0.5, 0.5, 3, 2, samplesAreAreas: false);
        GroundWindow window = GroundWindow.FromHeights(frame, [-501, 9001, float.NaN, float.PositiveInfinity, -500, 9000], "odd");

        Assert.Equal([true, true, true, true, false, false], window.Heights.ToArray().Select(float.IsNaN));
    }

    [Fact]
    public void A_sample_beside_a_void_is_known_at_its_own_place_alone()
    {
        GridFrame frame = GridFrame.Geographic(8, 47, 0.5, 0.5, 2, 2, samplesAreAreas: false);
        GroundWindow window = GroundWindow.FromHeights(frame, [10, float.NaN, 10, 10], "void");

        Assert.Equal(10, window.HeightAt(new(47, 8)));
        Assert.Equal(10, window.HeightAt(new(46.5, 8.2)));
        Assert.Equal(double.NaN, window.HeightAt(new(46.9, 8.1)));
    }

    [Fact]
    public void Equal_content_has_an_equal_hash_and_any_change_shows()
    {
        GroundWindow one = GroundSamples.Tile(46, -19, 5, (latitude, _) => latitude);
        GroundWindow same = GroundSamples.Tile(46, -19, 5, (latitude, _) => latitude);
        Assert.Equal(one.ContentHash, same.ContentHash);
        Assert.Equal(64, one.ContentHash.Length);
        Assert.NotEqual(one.ContentHash, GroundSamples.Tile(46, -18, 5, (latitude, _) => latitude).ContentHash);
        Assert.NotEqual(one.ContentHash, GroundSamples.Tile(46, -19, 5, (latitude, _) => latitude + 1e-3).ContentHash);
        Assert.NotEqual(one.ContentHash, GroundSamples.Tile(46, -19, 5, (latitude, _) => latitude, kind: HeightKind.Surface).ContentHash);
    }

    [Fact]
    public void A_utm_grid_finds_its_own_samples()
    {
        // 18 E 323483.168 N 4306479.498 is 38.889467309501576, -77.0352402156242 (FGDC-STD-011-2001, 5.2.2).
        GridFrame frame = GridFrame.Utm(18, isNorth: true, 323_483.168, 4_306_479.498, 30, 30, 4, 4, samplesAreAreas: true);
        (double column, double row) = frame.Locate(new(38.889467309501576, -77.0352402156242));

        Assert.Equal(0, column, 1e-4);
        Assert.Equal(0, row, 1e-4);
    }

    [Fact]
    public void Tiles_are_named_by_their_corner()
    {
        Assert.Equal("N46W019", GroundTile.OneDegree(new GeoPoint(46.4, -18.7)).Name);
        Assert.Equal("S01E000", GroundTile.OneDegree(new GeoPoint(-0.1, 0.1)).Name);
        Assert.Equal("N10W180", GroundTile.OneDegree(10, 180).Name);
        Assert.Equal("S90W180", GroundTile.OneDegree(new GeoPoint(-90, -180)).Name);
        Assert.True(GroundTile.OneDegree(10, 179).Holds(10.5, 179.5));
        Assert.True(GroundTile.OneDegree(10, -180).Holds(10.5, 180.5));
        Assert.False(GroundTile.OneDegree(10, -180).Holds(10.5, 179.5));
    }

    [Theory]
    [InlineData(0, 0, 0, 1)]
    [InlineData(0, 91, 1, 1)]
    [InlineData(-400, 0, 1, 1)]
    [InlineData(double.NaN, 0, 1, 1)]
    public void A_grid_that_is_not_on_the_earth_is_refused(double west, double north, double step, int side) =>
        Assert.ThrowsAny<ArgumentException>(() => GridFrame.Geographic(west, north, step, step, side, side, samplesAreAreas: false));
}
