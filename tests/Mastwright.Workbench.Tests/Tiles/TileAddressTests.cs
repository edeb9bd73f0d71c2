using Mastwright.Workbench.Tiles;

namespace Mastwright.Tests.Workbench.Tiles;

/// <summary>Tile addresses against OGC 17-083r4, Two Dimensional Tile Matrix Set, annex D.1 (WebMercatorQuad): the world is a square of ±20,037,508.342 789 2 m.</summary>
public sealed class TileAddressTests
{
    private const double HalfMetres = 20_037_508.342_789_2;
    private const double RadiusMetres = 6_378_137;

    [Fact]
    public void The_whole_world_ends_where_the_square_does()
    {
        TileAddress world = new(0, 0, 0);
        Assert.Equal(-180, world.Bounds.WestDegrees, 9);
        Assert.Equal(180, world.Bounds.EastDegrees, 9);
        // Latitude of the square's edge: the inverse of y = R ln tan(π/4 + φ/2) at y = πR.
        double edge = ((2 * Math.Atan(Math.Exp(HalfMetres / RadiusMetres))) - (Math.PI / 2)) * 180 / Math.PI;
        Assert.Equal(edge, world.Bounds.NorthDegrees, 6);
        Assert.Equal(-edge, world.Bounds.SouthDegrees, 6);
    }

    [Fact]
    public void Children_cover_their_parent_without_overlap() => Gen.Int[0, 20].SelectMany(zoom => Gen.Select(Gen.Const(zoom), Gen.Int[0, (1 << zoom) - 1], Gen.Int[0, (1 << zoom) - 1]))
        .Sample((zoom, x, y) =>
        {
            TileAddress parent = new(zoom, x, y);
            (TileAddress northWest, TileAddress southEast) = (parent.Child(0), parent.Child(3));
            return Near(northWest.Bounds.NorthDegrees, parent.Bounds.NorthDegrees) && Near(northWest.Bounds.WestDegrees, parent.Bounds.WestDegrees)
                && Near(southEast.Bounds.SouthDegrees, parent.Bounds.SouthDegrees) && Near(southEast.Bounds.EastDegrees, parent.Bounds.EastDegrees)
                && Near(northWest.Bounds.SouthDegrees, southEast.Bounds.NorthDegrees) && Near(parent.Child(1).Bounds.WestDegrees, northWest.Bounds.EastDegrees);
        });

    [Theory]
    // OGC 17-083r4, table D.1: cell size at the equator in metres.
    [InlineData(0, 156_543.033_928_041)]
    [InlineData(10, 152.874_056_570_353)]
    [InlineData(18, 0.597_164_283_559_817)]
    public void A_pixel_at_the_equator_has_the_published_size(int zoom, double metres)
    {
        // The middle of a tile beside the equator lies off it: by half a tile, whose cosine is told apart here.
        TileAddress tile = new(zoom, 0, zoom == 0 ? 0 : 1 << (zoom - 1));
        double latitude = tile.LatitudeDegrees(128) * Math.PI / 180;
        Assert.Equal(metres, tile.PixelMetres / Math.Cos(latitude), metres * 1e-9);
    }

    [Theory]
    [InlineData(3, 8, 0)]
    [InlineData(3, 0, -1)]
    [InlineData(23, 0, 0)]
    [InlineData(-1, 0, 0)]
    public void A_tile_outside_the_square_does_not_exist(int zoom, int x, int y) => Assert.False(new TileAddress(zoom, x, y).Exists);

    private static bool Near(double one, double other) => Math.Abs(one - other) < 1e-9;
}
