using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Propagation;

namespace Mastwright.Tests.Ground;

public sealed class TerrainProfileTests
{
    private static readonly Gen<GeoPoint> AnyPlace = Gen.Select(Gen.Double[-84, 84], Gen.Double[-180, 179.999], (latitude, longitude) => new GeoPoint(latitude, longitude));

    [Fact]
    public void Points_are_equidistant_and_no_further_apart_than_the_source()
    {
        GroundMosaic mosaic = GroundMosaic.Of([GroundSamples.Tile(46, -19, 1201, (_, _) => 10)]);
        TerrainProfile profile = TerrainProfile.Extract(mosaic, new(46.2, -18.8), new(46.5, -18.3));

        double source = mosaic.Heights[0].ResolutionMetres;
        Assert.Equal((int)Math.Ceiling(profile.LengthMetres / source) + 1, profile.Count);
        Assert.InRange(profile.StepMetres, source * (1 - (1.0 / profile.Count)), source);
        Assert.Equal(profile.LengthMetres, profile.DistanceMetres(profile.Count - 1));
        Assert.Equal(profile.LengthMetres - profile.StepMetres, profile.DistanceMetres(profile.Count - 2), 1e-6);
    }

    [Fact]
    public void A_third_arc_second_is_93_metres_along_the_meridian_in_the_middle_latitudes() =>
        // A degree of latitude at 45° is 111,132 m (WGS 84; NGA.STND.0036): 3″ is 92.6 m.
        Assert.Equal(92.61, GroundSamples.Tile(44, 0, 1201, (_, _) => 0).ResolutionMetres, 0.02);

    [Fact]
    public void Positions_between_the_nodes_stay_within_a_centimetre_of_the_geodesic() =>
        Gen.Select(AnyPlace, Gen.Double[0, 360], Gen.Double[2_000, 300_000], Gen.Double[10, 120]).Sample(
            (from, bearing, length, step) =>
            {
                GeoPoint to = Geodesic.Direct(from, bearing, length);
                ProfileTrack track = ProfileTrack.Along(from, Geodesic.Inverse(from, to), (int)Math.Ceiling(length / step));
                for (int i = 0; i <= track.Steps; i += 7)
                {
                    GeoPoint exact = Geodesic.Direct(from, Geodesic.Inverse(from, to).InitialBearingDegrees, length * i / track.Steps);
                    if (Math.Abs(exact.LatitudeDegrees) < 85)
                    {
                        Assert.True(Geodesic.Inverse(exact, track.PointNear(i)).DistanceMetres < 0.005);
                    }
                }
            },
            iter: 100);

    [Fact]
    public void Near_the_pole_positions_stay_within_five_centimetres()
    {
        GeoPoint from = new(88.2, 10);
        GeoPoint to = new(88.4, 179);
        GeodesicSegment segment = Geodesic.Inverse(from, to);
        ProfileTrack track = ProfileTrack.Along(from, segment, (int)(segment.DistanceMetres / 30));
        for (int i = 0; i <= track.Steps; i++)
        {
            GeoPoint exact = Geodesic.Direct(from, segment.InitialBearingDegrees, segment.DistanceMetres * i / track.Steps);
            Assert.True(Geodesic.Inverse(exact, track.PointNear(i)).DistanceMetres < 0.05);
        }
    }

    [Fact]
    public void Heights_of_a_bilinear_ground_are_exact()
    {
        // Bilinear interpolation gives back a + b·lat + c·lon + d·lat·lon; the error is that of single-precision samples.
        static double Ground(double latitude, double longitude) => 200 + (100 * (latitude - 46)) + (50 * (longitude + 19)) + (30 * (latitude - 46) * (longitude + 19));
        GroundMosaic mosaic = GroundMosaic.Of([GroundSamples.Tile(46, -19, 301, Ground), GroundSamples.Tile(46, -18, 301, Ground)]);
        TerrainProfile profile = TerrainProfile.Extract(mosaic, new(46.9, -18.9), new(46.1, -17.1));

        Assert.True(profile.IsComplete);
        for (int i = 0; i < profile.Count; i++)
        {
            GeoPoint point = profile.PointAt(i);
            Assert.Equal(Ground(point.LatitudeDegrees, point.LongitudeDegrees), profile.HeightsMetres[i], 1e-4);
        }
    }

    [Fact]
    public void A_profile_walked_back_is_the_same_profile()
    {
        GroundMosaic mosaic = GroundMosaic.Of([GroundSamples.Tile(46, -19, 601, Hills)]);
        TerrainProfile there = TerrainProfile.Extract(mosaic, new(46.2, -18.8), new(46.7, -18.3));
        TerrainProfile back = TerrainProfile.Extract(mosaic, there.To, there.From);

        Assert.Equal(there.Count, back.Count);
        for (int i = 0; i < there.Count; i++)
        {
            Assert.Equal(there.HeightsMetres[i], back.HeightsMetres[back.Count - 1 - i], 1e-3);
        }
    }

    [Fact]
    public void A_path_over_the_antimeridian_reads_both_sides()
    {
        static double Ground(double latitude, double longitude) => 500 + (100 * (longitude < 0 ? longitude + 360 - 180 : longitude - 180));
        GroundMosaic mosaic = GroundMosaic.Of([GroundSamples.Tile(-17, 179, 301, Ground), GroundSamples.Tile(-17, -180, 301, Ground)]);
        TerrainProfile profile = TerrainProfile.Extract(mosaic, new(-16.5, 179.4), new(-16.5, -179.4));

        Assert.True(profile.IsComplete);
        Assert.Equal(440, profile.HeightsMetres[0], 1e-3);
        Assert.Equal(560, profile.HeightsMetres[^1], 1e-3);
        for (int i = 1; i < profile.Count; i++)
        {
            Assert.True(profile.HeightsMetres[i] > profile.HeightsMetres[i - 1]);
        }
    }

    [Fact]
    public void A_void_is_filled_from_the_coarser_source()
    {
        GroundWindow fine = GroundSamples.Tile(46, -19, 601, (latitude, _) => latitude is > 46.4 and < 46.5 ? double.NaN : 100, "fine");
        GroundWindow coarse = GroundSamples.Tile(46, -19, 101, (_, _) => 80, "coarse");
        TerrainProfile profile = TerrainProfile.Extract(GroundMosaic.Of([coarse, fine]), new(46.2, -18.5), new(46.7, -18.5));

        Assert.True(profile.IsComplete);
        Assert.Equal(["fine", "coarse"], profile.Sources.Select(source => source.Name));
        Assert.Equal(100, profile.HeightsMetres[0]);
        Assert.Equal(80, profile.HeightsMetres[profile.Count / 2]);
        Assert.Equal(fine.ResolutionMetres, profile.StepMetres, 0.1);
    }

    [Fact]
    public void A_void_that_nothing_fills_and_an_absent_tile_are_named_with_their_stretch()
    {
        GroundWindow tile = GroundSamples.Tile(46, -19, 301, (latitude, _) => latitude is > 46.4 and < 46.5 ? double.NaN : 100);
        TerrainProfile profile = TerrainProfile.Extract(GroundMosaic.Of([tile]), new(46.2, -18.5), new(47.2, -18.5));

        Assert.Equal(["N46W019", "N47W019"], profile.Gaps.Select(gap => gap.Tile));
        Assert.Equal([true, false], profile.Gaps.Select(gap => gap.IsVoid));
        double degree = Geodesic.Inverse(new(46.2, -18.5), new(47.2, -18.5)).DistanceMetres;
        Assert.Equal(degree * 0.8, profile.Gaps[1].FromMetres, 2 * profile.StepMetres);
        Assert.Equal(profile.LengthMetres, profile.Gaps[1].ToMetres);
        Assert.Throws<ArgumentException>(() => PathProfiles.From(profile));
        Assert.Equal(["ground-void", "ground-missing"], ProfileReview.Gaps(profile, "a → b").Select(finding => finding.Code));
        Assert.Contains("no ground file for N47W019", Mastwright.Findings.FindingSentences.Text(ProfileReview.Gaps(profile, "a → b")[1]), StringComparison.Ordinal);
    }

    [Fact]
    public void An_absent_tile_is_sea_only_where_the_tile_index_says_so()
    {
        GroundWindow tile = GroundSamples.Tile(46, -19, 301, (_, _) => 100);
        GroundMosaic mosaic = GroundMosaic.Of([tile]).With([GroundTile.OneDegree(47, -19)], CoverTable.Empty, sea: null);
        TerrainProfile profile = TerrainProfile.Extract(mosaic, new(46.8, -18.5), new(47.2, -18.5));

        Assert.True(profile.IsComplete);
        Assert.Equal(0, profile.HeightsMetres[^1]);
        Assert.Equal(Zone.Sea, profile.Zones[^1]);
        Assert.Equal(Zone.Inland, profile.Zones[0]);
        Assert.Equal(profile.LengthMetres / 2, profile.DistanceToCoastFromMetres!.Value, 2 * profile.StepMetres);
        Assert.Equal(0, profile.DistanceToCoastToMetres);
    }

    [Fact]
    public void The_seam_between_tiles_of_areas_is_interpolated_across_both()
    {
        static double Ground(double latitude, double longitude) => 1000 * (longitude - 8);
        GroundWindow west = GroundSamples.Areas(8, 47, 0.01, 100, 100, Ground, "west");
        GroundWindow east = GroundSamples.Areas(9, 47, 0.01, 100, 100, Ground, "east");
        TerrainProfile profile = TerrainProfile.Extract(GroundMosaic.Of([west, east]), new(46.5, 8.9), new(46.5, 9.1), 10);

        // The geodesic bows north; the ground depends on longitude alone.
        for (int i = 0; i < profile.Count; i++)
        {
            Assert.Equal(Ground(0, profile.PointAt(i).LongitudeDegrees), profile.HeightsMetres[i], 1e-3);
        }
    }

    [Fact]
    public void The_outer_half_cell_of_an_area_tile_without_a_neighbour_keeps_its_sample()
    {
        GroundMosaic mosaic = GroundMosaic.Of([GroundSamples.Areas(8, 47, 0.01, 100, 100, (_, longitude) => longitude)]);

        Assert.Equal(8.005, mosaic.HeightAt(new(46.5, 8.001)).Metres, 1e-5);
        Assert.Equal(double.NaN, mosaic.HeightAt(new(46.5, 7.999)).Metres);
    }

    [Fact]
    public void Cover_is_that_of_the_nearest_sample_and_its_height_comes_from_the_table()
    {
        GroundWindow ground = GroundSamples.Tile(46, -19, 301, (_, _) => 150);
        GroundWindow cover = GroundSamples.Cover(-19, 47, 0.001, 1000, 1000, (latitude, _) => latitude > 46.5 ? (byte)10 : (byte)30);
        CoverTable table = CoverTable.Of([new(10, "trees", CoverClass.UrbanOrTrees, 15, "", ""), new(30, "grass", CoverClass.Open, 0, "", "")]);
        TerrainProfile profile = TerrainProfile.Extract(GroundMosaic.Of([ground, cover]).With([], table, sea: null), new(46.4, -18.5), new(46.6, -18.5));

        Assert.Equal(0, profile.CoverHeightsMetres[0]);
        Assert.Equal(15, profile.CoverHeightsMetres[^1]);
        Assert.Equal(CoverClass.UrbanOrTrees, profile.CoverClasses[^1]);
        int change = profile.CoverCodes.IndexOf((byte)10);
        Assert.Equal(profile.LengthMetres / 2, profile.DistanceMetres(change), profile.StepMetres);
    }

    [Fact]
    public void Over_a_surface_model_the_cover_is_not_added_again()
    {
        GroundWindow ground = GroundSamples.Tile(46, -19, 301, (_, _) => 150, kind: HeightKind.Surface);
        GroundWindow cover = GroundSamples.Cover(-19, 47, 0.01, 100, 100, (_, _) => 10);
        CoverTable table = CoverTable.Of([new(10, "trees", CoverClass.UrbanOrTrees, 15, "", "")]);
        TerrainProfile profile = TerrainProfile.Extract(GroundMosaic.Of([ground, cover]).With([], table, sea: null), new(46.4, -18.5), new(46.6, -18.5));

        Assert.True(profile.HasSurface);
        Assert.Equal(CoverClass.UrbanOrTrees, profile.CoverClasses[3]);
        Assert.Equal(-1, profile.CoverHeightsMetres.IndexOfAnyExcept(0));
    }

    [Fact]
    public void The_loss_models_get_the_same_points()
    {
        GroundMosaic mosaic = GroundMosaic.Of([GroundSamples.Tile(46, -19, 301, Hills)]);
        TerrainProfile ground = TerrainProfile.Extract(mosaic, new(46.2, -18.8), new(46.3, -18.7));
        PathProfile profile = PathProfiles.From(ground);

        Assert.Equal(ground.Count, profile.Count);
        Assert.Equal(ground.LengthMetres, profile.LengthMetres);
        Assert.True(ground.HeightsMetres.SequenceEqual(profile.HeightsMetres));
    }

    [Fact]
    public void One_place_is_no_path() =>
        Assert.Throws<ArgumentException>(() => TerrainProfile.Extract(GroundMosaic.Empty, new(46, 8), new(46, 8)));

    [Fact]
    public void Too_fine_a_step_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => TerrainProfile.Extract(GroundMosaic.Empty, new(46, 8), new(47, 8), 0.5));

    [Fact]
    public void A_profile_never_fails_wherever_it_lies() =>
        Gen.Select(AnyPlace, AnyPlace).Where((from, to) => Geodesic.Inverse(from, to).DistanceMetres > 1).Sample(
            (from, to) =>
            {
                GroundMosaic mosaic = GroundMosaic.Of([GroundSamples.Tile(0, 0, 3, (_, _) => 5)]);
                TerrainProfile profile = TerrainProfile.Extract(mosaic, from, to, Geodesic.Inverse(from, to).DistanceMetres / 200);
                Assert.InRange(profile.Count, 200, 202);
            },
            iter: 200);

    private static double Hills(double latitude, double longitude) =>
        300 + (200 * Math.Sin(40 * latitude)) + (100 * Math.Cos(55 * longitude));
}
