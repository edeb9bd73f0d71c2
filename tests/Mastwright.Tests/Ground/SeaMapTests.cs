using Mastwright.Geodesy;
using Mastwright.Ground;

namespace Mastwright.Tests.Ground;

public sealed class SeaMapTests
{
    private static readonly CoverTable Table = CoverTable.Of(
        [new(80, "water", CoverClass.Water, 0, "", ""), new(30, "grass", CoverClass.Open, 0, "", "")]);

    /// <summary>An island's west half is sea, its east half rises 10 m a hundredth of a degree; a lake lies inland at 40 m.</summary>
    private static double Coast(double latitude, double longitude) =>
        longitude < -18.5 ? 0 : longitude is > -18.45 and < -18.43 ? 40 : 2 + ((longitude + 18.5) * 1000);

    [Fact]
    public void Land_is_coastal_up_to_100_metres_and_inland_above()
    {
        TerrainProfile profile = Cut(GroundMosaic.Of([GroundSamples.Tile(46, -19, 601, Coast)]), new(46.5, -18.7), new(46.5, -18.2));

        for (int i = 0; i < profile.Count; i++)
        {
            double longitude = profile.PointAt(i).LongitudeDegrees;
            double height = profile.HeightsMetres[i];
            Zone expected = longitude < -18.502 ? Zone.Sea : height <= 100 ? Zone.Coast : Zone.Inland;
            if (Math.Abs(longitude + 18.5) > 0.002)
            {
                Assert.Equal(expected, profile.Zones[i]);
            }
        }

        double toCoast = Geodesic.Inverse(new(46.5, -18.5), new(46.5, -18.2)).DistanceMetres;
        Assert.Equal(0, profile.DistanceToCoastFromMetres);
        Assert.Equal(toCoast, profile.DistanceToCoastToMetres!.Value, 3 * 100.0);
    }

    [Fact]
    public void Low_land_more_than_50_kilometres_from_the_sea_is_inland()
    {
        // A plain of 20 m; the sea lies west of 8.2° E.
        GroundMosaic mosaic = GroundMosaic.Of(
            [GroundSamples.Tile(53, 8, 301, (_, longitude) => longitude < 8.2 ? 0 : 20), GroundSamples.Tile(53, 9, 301, (_, _) => 20)]);
        GeoPoint from = new(53.5, 8.3);
        GeoPoint to = new(53.5, 9.9);
        TerrainProfile profile = Cut(mosaic, from, to);

        int last = profile.Zones.LastIndexOf(Zone.Coast);
        double fromSea = Geodesic.Inverse(new(53.5, 8.2), profile.PointAt(last)).DistanceMetres;
        Assert.Equal(50_000, fromSea, 600.0);
        Assert.Equal(Zone.Inland, profile.Zones[^1]);
        Assert.Equal(Zone.Coast, profile.Zones[0]);
        Assert.Null(profile.DistanceToCoastFromMetres);
    }

    [Fact]
    public void A_lake_is_not_sea_however_the_cover_calls_it()
    {
        GroundWindow ground = GroundSamples.Tile(46, -19, 601, Coast);
        GroundWindow cover = GroundSamples.Cover(-19, 47, 0.001, 1000, 1000, (_, longitude) => longitude < -18.5 || longitude is > -18.45 and < -18.43 ? (byte)80 : (byte)30);
        TerrainProfile profile = Cut(GroundMosaic.Of([ground, cover]), new(46.5, -18.48), new(46.5, -18.41));

        int lake = profile.CoverCodes.IndexOf((byte)80);
        Assert.True(lake > 0);
        Assert.Equal(Zone.Coast, profile.Zones[lake]);
        Assert.Equal(-1, profile.Zones.IndexOf(Zone.Sea));
    }

    [Fact]
    public void A_small_basin_at_sea_level_is_not_joined_to_the_sea()
    {
        GroundWindow ground = GroundSamples.Tile(46, -19, 601, (latitude, longitude) =>
            longitude < -18.5 || (Math.Abs(latitude - 46.5) < 0.015 && longitude is > -18.4 and < -18.37) ? 0 : 20);
        TerrainProfile profile = Cut(GroundMosaic.Of([ground]), new(46.5, -18.45), new(46.5, -18.3));

        Assert.True(profile.HeightsMetres.IndexOf(0) > 0);
        Assert.Equal(-1, profile.Zones.IndexOf(Zone.Sea));
    }

    [Fact]
    public void Low_land_beside_the_sea_that_the_cover_calls_grass_is_land()
    {
        GroundWindow ground = GroundSamples.Tile(46, -19, 601, (_, longitude) => longitude < -18.5 ? 0 : 0.2);
        GroundWindow cover = GroundSamples.Cover(-19, 47, 0.001, 1000, 1000, (_, longitude) => longitude < -18.5 ? (byte)80 : (byte)30);
        TerrainProfile profile = Cut(GroundMosaic.Of([ground, cover]), new(46.5, -18.6), new(46.5, -18.4));

        Assert.Equal(Zone.Sea, profile.Zones[0]);
        Assert.Equal(Zone.Coast, profile.Zones[^1]);
    }

    [Fact]
    public void Water_that_touches_a_tile_left_to_the_sea_is_sea_however_small()
    {
        // A creek of some 2 km² at the tile's eastern edge.
        GroundWindow ground = GroundSamples.Tile(46, -19, 601, (latitude, longitude) => longitude > -18.02 && Math.Abs(latitude - 46.5) < 0.008 ? 0 : 20);
        GroundMosaic mosaic = GroundMosaic.Of([ground]).With([GroundTile.OneDegree(46, -18)], Table, sea: null);
        GeoPoint from = new(46.5, -18.1);
        GeoPoint to = new(46.5, -18.005);
        SeaMap sea = SeaMap.FromMosaic(mosaic, LatticeBounds.Along(from, to, 20_000));
        TerrainProfile profile = TerrainProfile.Extract(mosaic.With(mosaic.SeaTiles, Table, sea), from, to);

        Assert.Equal(Zone.Sea, profile.Zones[^1]);
        Assert.Equal(Zone.Coast, profile.Zones[0]);
    }

    [Fact]
    public void The_nearest_sea_is_found_over_the_antimeridian()
    {
        LatticeBounds bounds = LatticeBounds.Along(new(-16.5, 179.9), new(-16.5, -179.9), 30_000);
        SeaCell[] cells = new SeaCell[bounds.Count];
        for (int i = 0; i < cells.Length; i++)
        {
            cells[i] = bounds.PointAt(i).LongitudeDegrees < 0 ? SeaCell.OpenSea : SeaCell.Land;
        }

        SeaMap map = SeaMap.Build(bounds, cells);
        Assert.Equal(Geodesic.Inverse(new(-16.5, 179.9), new(-16.5, 180)).DistanceMetres, map.DistanceToSeaMetres(-16.5, 179.9), 600.0);
        Assert.Equal(0, map.DistanceToSeaMetres(-16.5, -179.95), 600.0);
    }

    [Fact]
    public void A_point_of_the_lattice_knows_its_tile() =>
        Gen.Select(Gen.Double[-89, 89], Gen.Double[-180, 179.9]).Sample((latitude, longitude) =>
        {
            LatticeBounds bounds = LatticeBounds.Along(new(latitude, longitude), new(latitude, longitude), 5_000).Rounded();
            for (int i = 0; i < bounds.Count; i += 97)
            {
                GeoPoint point = bounds.PointAt(i);
                (int south, int west) = bounds.TileCorner(i);
                GroundTile tile = GroundTile.OneDegree(south, west);
                int inTile = bounds.IndexInTile(i);
                Assert.Equal(point.LatitudeDegrees, Math.Min(90, tile.SouthDegrees + (inTile / SeaMap.PointsPerDegree / (double)SeaMap.PointsPerDegree)), 0.005);
                double east = tile.WestDegrees + (inTile % SeaMap.PointsPerDegree / (double)SeaMap.PointsPerDegree);
                Assert.Equal(0, Math.IEEERemainder(east - point.LongitudeDegrees, 360), 1e-9);
            }
        });

    private static TerrainProfile Cut(GroundMosaic mosaic, GeoPoint from, GeoPoint to)
    {
        SeaMap sea = SeaMap.FromMosaic(mosaic, LatticeBounds.Along(from, to, SeaMap.CoastalReachMetres));
        return TerrainProfile.Extract(mosaic.With([], Table, sea), from, to);
    }
}
