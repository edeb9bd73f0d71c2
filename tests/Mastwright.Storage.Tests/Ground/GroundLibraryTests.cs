using System.Collections.Immutable;
using BitMiracle.LibTiff.Classic;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Storage.Ground;

namespace Mastwright.Storage.Tests.Ground;

public sealed class GroundLibraryTests
{
    [Fact]
    public void Files_folders_and_globs_are_found()
    {
        using ScratchFolder folder = new();
        WriteTile(folder.At("ground", "N46W019.hgt"), 10);
        WriteTile(folder.At("ground", "more", "deep", "N46W018.hgt"), 20);
        File.WriteAllText(folder.At("ground", "notes.txt"), "no ground");

        Assert.Equal(2, Count(folder, "ground"));
        Assert.Equal(1, Count(folder, "ground/*.hgt"));
        Assert.Equal(2, Count(folder, "ground/**/*.hgt"));
        Assert.Equal(1, Count(folder, "ground/more/deep/N46W01?.hgt"));
        Assert.Equal(1, Count(folder, "ground/N46W019.hgt"));
    }

    [Fact]
    public void Folders_that_lead_in_a_circle_are_walked_once()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "platform: links need rights there");
        using ScratchFolder folder = new();
        WriteTile(folder.At("ground", "N46W019.hgt"), 10);
        Directory.CreateSymbolicLink(folder.At("ground", "one"), folder.At("ground"));
        Directory.CreateSymbolicLink(folder.At("ground", "two"), folder.Root);

        Assert.Equal(1, Count(folder, "ground"));
    }

    [Theory]
    [InlineData("../elsewhere/N46W019.hgt", "leaves the plan's folder")]
    [InlineData("/etc/passwd", "leaves the plan's folder")]
    [InlineData("ground/../../x/*.hgt", "leaves the plan's folder")]
    [InlineData("ground/none.hgt", "no height or cover file by that name")]
    [InlineData("ground/*.tif", "no height or cover file by that name")]
    [InlineData("notes.txt", "no format that is read")]
    public void A_path_that_cannot_be_used_is_one_problem(string pattern, string found)
    {
        using ScratchFolder folder = new();
        File.WriteAllText(folder.At("notes.txt"), "no ground");
        using GroundLibrary library = Open(folder, Source(pattern));

        GroundProblem problem = Assert.Single(library.Problems);
        Assert.Contains(found, problem.Found, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Right);
        Assert.Equal(0, library.FileCount);
    }

    [Fact]
    public void Files_outside_the_plans_folder_are_read_where_that_is_allowed()
    {
        using ScratchFolder folder = new();
        WriteTile(folder.At("ground", "N46W019.hgt"), 10);
        Directory.CreateDirectory(folder.At("plans", "x"));
        using GroundLibrary library = GroundLibrary.Open(folder.At("plans"), [Source("../ground")], [], new() { AllowOutside = true });

        Assert.Empty(library.Problems);
        Assert.Equal(1, library.FileCount);
    }

    [Fact]
    public void A_path_over_two_tiles_and_a_finer_raster_reads_the_finest_everywhere()
    {
        using ScratchFolder folder = new();
        WriteTile(folder.At("coarse", "N46W019.hgt"), 100);
        WriteTile(folder.At("coarse", "N46W018.hgt"), 200);
        GridFrame frame = GridFrame.Geographic(-18.2, 46.6, 0.0002, 0.0002, 1000, 1000, samplesAreAreas: true);
        TiffFixture.Write(folder.At("fine.tif"), frame, Enumerable.Repeat(150f, 1_000_000).ToArray(), Compression.LZW, Predictor.FLOATINGPOINT, 256, tiled: true);
        using GroundLibrary library = Open(folder, Source("coarse"), Source("fine.tif"));
        GeoPoint from = new(46.5, -18.4);
        GeoPoint to = new(46.5, -17.5);
        TerrainProfile profile = TerrainProfile.Extract(library.MosaicFor(from, to), from, to);

        Assert.Empty(library.Problems);
        Assert.True(profile.IsComplete);
        Assert.Equal(["coarse", "fine.tif"], profile.Sources.Select(source => source.Name));
        for (int i = 0; i < profile.Count; i++)
        {
            double longitude = profile.PointAt(i).LongitudeDegrees;
            double? expected = longitude is < -18.201 or (> -17.999 and < -17.998) ? null : longitude < -18.2 ? 100 : longitude < -18.0002 ? 150 : longitude > -17.9 ? 200 : null;
            if (expected is double height)
            {
                Assert.Equal(height, profile.HeightsMetres[i]);
            }
        }

        Assert.Equal(100, profile.HeightsMetres[0]);
    }

    [Fact]
    public void Pieces_of_one_file_join_without_a_seam()
    {
        using ScratchFolder folder = new();

        // One arc-second, so that the tile is read in bands; heights rise evenly with latitude, 1 m a row.
        short[] samples = new short[3601 * 3601];
        for (int i = 0; i < samples.Length; i++)
        {
            samples[i] = (short)(3600 - (i / 3601));
        }

        HgtWriter.Write(folder.At("N46W019.hgt"), samples, 3601);
        using GroundLibrary library = Open(folder, Source("N46W019.hgt"));
        GeoPoint from = new(46.1, -18.5);
        GeoPoint to = new(46.9, -18.4);
        TerrainProfile profile = TerrainProfile.Extract(library.MosaicFor(from, to), from, to, 11);

        Assert.True(profile.IsComplete);
        for (int i = 0; i < profile.Count; i++)
        {
            Assert.Equal((profile.PointAt(i).LatitudeDegrees - 46) * 3600, profile.HeightsMetres[i], 1e-3);
        }
    }

    [Fact]
    public void Tiles_of_a_raster_of_areas_join_without_a_seam()
    {
        using ScratchFolder folder = new();
        foreach (int west in (int[])[0, 1])
        {
            GridFrame frame = GridFrame.Utm(32, isNorth: true, 400_015 + (west * 30_000), 5_629_985, 30, 30, 1000, 1000, samplesAreAreas: true);
            float[] heights = new float[1_000_000];
            for (int i = 0; i < heights.Length; i++)
            {
                heights[i] = (float)((frame.OriginX + (i % 1000 * 30) - 400_000) / 100);
            }

            TiffFixture.Write(folder.At($"tile{west}.tif"), frame, heights, Compression.ADOBE_DEFLATE, Predictor.NONE, 128, tiled: true);
        }

        using GroundLibrary library = Open(folder, Source("*.tif"));
        GeoPoint from = UniversalTransverseMercator.ToGeo(new(32, true, 428_000, 5_610_000));
        GeoPoint to = UniversalTransverseMercator.ToGeo(new(32, true, 432_000, 5_611_000));
        TerrainProfile profile = TerrainProfile.Extract(library.MosaicFor(from, to), from, to, 7);
        for (int i = 0; i < profile.Count; i++)
        {
            double easting = UniversalTransverseMercator.FromGeo(profile.PointAt(i), 32, true).EastingMetres;
            Assert.Equal((easting - 400_000) / 100, profile.HeightsMetres[i], 1e-3);
        }
    }

    [Fact]
    public void A_tile_that_the_index_does_not_list_is_sea_and_a_listed_one_that_is_absent_is_missing()
    {
        using ScratchFolder folder = new();
        WriteTile(folder.At("N46W019.hgt"), 10);
        File.WriteAllText(folder.At("tiles.txt"), "# what the source has\nN46W019\nCopernicus_10_N47_00_W019_00_DEM\n");
        using GroundLibrary library = Open(folder, Source("N46W019.hgt") with { TileIndex = "tiles.txt" });
        GeoPoint site = new(46.5, -18.5);

        TerrainProfile west = Cut(library, site, new(46.5, -19.5));
        Assert.True(west.IsComplete);
        Assert.Equal(Zone.Sea, west.Zones[^1]);
        Assert.Equal(Zone.Coast, west.Zones[0]);
        Assert.Equal("N47W019", Assert.Single(Cut(library, site, new(47.5, -18.5)).Gaps).Tile);
        Assert.Equal(["N47W019"], library.MissingTiles(new(46.2, -19.9, 47.2, -18.2)).Select(tile => tile.Name));
    }

    [Fact]
    public void A_tile_index_that_names_no_tile_is_a_problem_with_its_line()
    {
        using ScratchFolder folder = new();
        WriteTile(folder.At("N46W019.hgt"), 10);
        File.WriteAllText(folder.At("tiles.txt"), "N46W019\nthe rest\n");
        using GroundLibrary library = Open(folder, Source("N46W019.hgt") with { TileIndex = "tiles.txt" });

        Assert.Contains("line 2, 'the rest'", Assert.Single(library.Problems).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_path_over_the_antimeridian_reads_the_tiles_of_both_sides_and_their_sea()
    {
        using ScratchFolder folder = new();
        WriteTile(folder.At("S17E179.hgt"), 40);
        WriteTile(folder.At("S17W180.hgt"), 0);
        using GroundLibrary library = Open(folder, Source("*.hgt"));
        TerrainProfile profile = Cut(library, new(-16.5, 179.6), new(-16.4, -179.6));

        Assert.True(profile.IsComplete);
        Assert.Equal((40.0, 0.0), (profile.HeightsMetres[0], profile.HeightsMetres[^1]));
        Assert.Equal((Zone.Coast, Zone.Sea), (profile.Zones[0], profile.Zones[^1]));
        Assert.Empty(library.MissingTiles(new GeoBounds(-16.6, 179.5, -16.4, -179.5)));
    }

    [Fact]
    public void A_site_outside_the_ground_is_missing_and_named()
    {
        using ScratchFolder folder = new();
        WriteTile(folder.At("N46W019.hgt"), 10);
        using GroundLibrary library = Open(folder, Source("N46W019.hgt"));

        TerrainProfile profile = Cut(library, new(10.5, 20.5), new(10.6, 20.6));
        GroundGap gap = Assert.Single(profile.Gaps);
        Assert.Equal(("N10E020", false), (gap.Tile, gap.IsVoid));
    }

    [Fact]
    public void A_tile_damaged_after_it_was_found_is_a_problem_when_it_is_read()
    {
        using ScratchFolder folder = new();
        WriteTile(folder.At("N46W019.hgt"), 10);
        using GroundLibrary library = Open(folder, Source("N46W019.hgt"));
        File.WriteAllBytes(folder.At("N46W019.hgt"), new byte[100]);

        Assert.False(Cut(library, new(46.4, -18.5), new(46.6, -18.5)).IsComplete);
        Assert.Contains("100 bytes", Assert.Single(library.Problems).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Memory_stays_within_the_cache_however_many_tiles_are_read()
    {
        using ScratchFolder folder = new();
        ImmutableArray<int> wests = [.. Enumerable.Range(0, 12)];
        foreach (int west in wests)
        {
            WriteTile(folder.At(GroundTile.OneDegree(10, west).Name + ".hgt"), west);
        }

        long limit = 16L << 20;
        using GroundLibrary library = GroundLibrary.Open(folder.Root, [Source("*.hgt")], [], new() { CacheBytes = limit });
        foreach (int west in wests)
        {
            Assert.Equal(west, library.MosaicFor(new(10.5, west + 0.5), new(10.5, west + 0.5)).HeightAt(new(10.5, west + 0.5)).Metres);
            Assert.InRange(library.CachedBytes, 1, limit);
        }
    }

    [Fact]
    public void Many_threads_read_the_same_heights_and_each_piece_once()
    {
        using ScratchFolder folder = new();
        for (int west = 0; west < 3; west++)
        {
            WriteTile(folder.At(GroundTile.OneDegree(10, west).Name + ".hgt"), 100 * west);
        }

        using GroundLibrary library = GroundLibrary.Open(folder.Root, [Source("*.hgt")], [], new() { CacheBytes = 16L << 20 });
        Parallel.For(0, 60, new ParallelOptions { MaxDegreeOfParallelism = 4 }, i =>
        {
            GeoPoint place = new(10.2 + (i % 7 * 0.1), (i % 3) + 0.5);
            GeoPoint next = new(10.25, ((i + 1) % 3) + 0.5);
            Assert.Equal(100 * (i % 3), library.MosaicFor(place, next).HeightAt(place).Metres);
        });
        Assert.Empty(library.Problems);
    }

    [Fact]
    public void Each_value_of_the_cache_is_made_once_for_all_who_wait()
    {
        BoundedCache<int, byte[]> cache = new(1_000_000, bytes => bytes.Length);
        int made = 0;
        Parallel.For(0, 64, new ParallelOptions { MaxDegreeOfParallelism = 8 }, _ => cache.Get(1, _ =>
        {
            Interlocked.Increment(ref made);
            Thread.Sleep(20);
            return new byte[10];
        }));

        Assert.Equal(1, made);
        Assert.Equal(10, cache.Bytes);
    }

    [Fact]
    public void Info_tells_range_voids_and_hash()
    {
        using ScratchFolder folder = new();
        short[] samples = new short[1201 * 1201];
        samples[0] = HgtWriter.Void;
        samples[7] = 321;
        samples[8] = -4;
        HgtWriter.Write(folder.At("N46W019.hgt"), samples, 1201);
        GridFrame frame = GridFrame.Geographic(-19, 47, 0.01, 0.01, 10, 10, samplesAreAreas: true);
        CoverTiffWriter.Write(folder.At("cover.tif"), frame, Enumerable.Repeat((byte)80, 100).ToArray());
        using GroundLibrary library = GroundLibrary.Open(
            folder.Root, [Source("N46W019.hgt") with { Datum = "EGM96" }], [new CoverSource { Name = "cover", Files = ["cover.tif"] }]);
        ImmutableArray<GroundFileInfo> info = library.Info(TestContext.Current.CancellationToken);

        Assert.Equal((-4.0, 321.0, "EGM96"), (info[0].Lowest, info[0].Highest, info[0].Datum));
        Assert.Equal(100.0 / (1201 * 1201), info[0].VoidPercent!.Value, 1e-12);
        Assert.Equal(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(folder.At("N46W019.hgt")))), info[0].Sha256);
        Assert.Equal((true, 80.0, 80.0, 0.0), (info[1].IsCover, info[1].Lowest, info[1].Highest, info[1].VoidPercent));
        Assert.Equal(new GeoBounds(46, -19, 47, -18).ToString(), info[0].Bounds.ToString());
    }

    [Fact]
    public void A_cover_source_of_heights_is_refused()
    {
        using ScratchFolder folder = new();
        WriteTile(folder.At("N46W019.hgt"), 10);
        using GroundLibrary library = GroundLibrary.Open(folder.Root, [], [new CoverSource { Name = "cover", Files = ["N46W019.hgt"] }]);

        Assert.Contains("not cover codes", Assert.Single(library.Problems).Found, StringComparison.Ordinal);
    }

    private static TerrainProfile Cut(GroundLibrary library, GeoPoint from, GeoPoint to) => TerrainProfile.Extract(library.MosaicFor(from, to), from, to);

    private static int Count(ScratchFolder folder, string pattern)
    {
        using GroundLibrary library = Open(folder, Source(pattern));
        Assert.Empty(library.Problems);
        return library.FileCount;
    }

    private static GroundLibrary Open(ScratchFolder folder, params ImmutableArray<HeightSource> sources) => GroundLibrary.Open(folder.Root, sources, []);

    private static HeightSource Source(string pattern) => new() { Name = pattern, Files = [pattern], Kind = HeightKind.BareEarth };

    private static void WriteTile(string path, int height)
    {
        short[] samples = new short[1201 * 1201];
        Array.Fill(samples, (short)height);
        HgtWriter.Write(path, samples, 1201);
    }
}
