using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Storage.Ground;
using Mastwright.Tests;

namespace Mastwright.Storage.Tests.Ground;

/// <summary>Real tiles against the heights that GDAL 3.6.2 reads from them.</summary>
public sealed class RealTilesTests
{
    /// <summary>Samples nearest to random places: read with GDAL 3.6.2, gdallocationinfo -geoloc (-wgs84 for the UTM grid).</summary>
    public static TheoryData<string, string> NearestSamples => new()
    {
        { "N38W028.SRTMGL3.hgt.zip", "38.74179,-27.3771,147; 38.94245,-27.20481,0; 38.57394,-27.45624,0" },
        { "N44W072.hgt.gz", "44.1596,-71.23427,420; 44.13877,-71.20285,389; 44.1267,-71.38255,906; 44.8714,-71.99823,473; 44.21548,-71.79054,461; 44.87241,-71.01758,393" },
        { "N50E011.hgt.zip", "50.29879,11.89374,563; 50.16596,11.36119,514; 50.06514,11.1457,538; 50.60311,11.30136,568; 50.67793,11.00338,425; 50.02287,11.9751,538" },
        { "N49E016.hgt", "49.84488,16.7498,503; 49.78774,16.01807,533; 49.57852,16.36618,591; 49.04673,16.00908,416; 49.95518,16.18092,267; 49.7484,16.10805,695" },
        { "N46E008.dted_srtm3.tif", "46.85969,8.79723,1429; 46.9458,8.03663,1110; 46.34074,8.09118,2565; 46.91809,8.61083,431; 46.9242,8.33996,1672; 46.17748,8.3168,423" },
        { "boulder_co_srtmgl3.asc", "40.15426,-105.35365,2338; 40.11886,-105.46923,2660; 40.18924,-105.4318,2287; 40.1409,-105.45932,2655; 40.19997,-105.53891,2616" },
        { "bigtujunga_srtm1_utm11.tif", "34.34031,-117.98447,1746; 34.29416,-118.15024,1146; 34.28357,-118.29791,474; 34.37878,-118.04847,1884; 34.36576,-118.19992,1517" },
    };

    /// <summary>Heights between samples: read with GDAL 3.6.2, gdalwarp -r bilinear -ot Float64 -et 0 onto one pixel of the source's size around the place.</summary>
    public static TheoryData<string, string> Bilinear => new()
    {
        { "N38W028.SRTMGL3.hgt.zip", "38.672627,-27.25285,107.280415999998; 38.660865,-27.15472,228.89323200001; 38.704853,-27.189235,559.882248000017; 38.726115,-27.3326,677.034720000076; 38.663607,-27.329043,0" },
        { "N44W072.hgt.gz", "44.826852,-71.575481,357.045107839954; 44.223239,-71.876198,327.405263679864; 44.947709,-71.372567,550.232114560034; 44.39668,-71.422897,470.13557760003" },
        { "N50E011.hgt.zip", "50.117792,11.144255,397.363315199988; 50.816126,11.308482,425.229345919997; 50.5816,11.180726,458.406208000096; 50.372398,11.638913,633.913317120046" },
        { "N49E016.hgt", "49.427592,16.6804,557.305215999881; 49.585562,16.314147,562.378041600052; 49.299767,16.453184,292.175304320116; 49.698994,16.794379,511.181205439972" },
        { "N46E008.dted_srtm3.tif", "46.118066,8.980175,814.570167999906; 46.757141,8.418123,1967.71454271959; 46.488963,8.151985,2424.91504320008; 46.668216,8.039207,2304.86200000028" },
        { "boulder_co_srtmgl3.asc", "40.128708,-105.376531,2408.10079814687; 40.161541,-105.412027,2313.52152839514; 40.145376,-105.434761,2521.67179657555; 40.202528,-105.383526,2208.67212436313" },
        { "bigtujunga_srtm1_utm11.tif", "34.4055697225281,-118.093449642894,1529.00145193926; 34.2841368942136,-118.024079096687,1414.10514630971; 34.3487470105001,-118.194148712217,1470.61889106714; 34.2529099083502,-118.277212161097,595.619264157026" },
    };

    [Theory, MemberData(nameof(NearestSamples))]
    public void The_nearest_sample_is_the_one_that_a_general_library_reads(string file, string places)
    {
        GroundWindow window = Whole(file);
        foreach ((GeoPoint point, double height) in Parse(places))
        {
            (double column, double row) = window.Frame.Locate(point);
            Assert.Equal(height, window.Heights[((int)Math.Round(row) * window.Frame.Columns) + (int)Math.Round(column)]);
        }
    }

    [Theory, MemberData(nameof(Bilinear))]
    public void Heights_between_samples_are_those_of_a_general_library(string file, string places)
    {
        using GroundLibrary library = Open(file);
        foreach ((GeoPoint point, double height) in Parse(places))
        {
            // GDAL rounds the step of a decimal grid in its own places: a millimetre of height is a few millimetres on the ground.
            Assert.Equal(height, library.MosaicFor(point, point).HeightAt(point).Metres, 2e-3);
        }
    }

    [Fact]
    public void A_void_of_a_real_tile_is_missing_and_named()
    {
        using GroundLibrary library = Open("N46E008.dted_srtm3.tif");
        GeoPoint from = new(46.287938, 8.70);
        GeoPoint to = new(46.287938, 8.76);
        TerrainProfile profile = TerrainProfile.Extract(library.MosaicFor(from, to), from, to);

        // GDAL reads the nodata value -32767 at 46.287938, 8.729445.
        Assert.False(profile.IsComplete);
        Assert.All(profile.Gaps, gap => Assert.True(gap.IsVoid));
        Assert.Equal("N46E008.dted_srtm3.tif", profile.Gaps[0].Tile);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_sea_of_the_library_is_the_sea_of_its_heights(bool packed)
    {
        string file = TestPlaces.Reference("terrain", "N38W028.SRTMGL3.hgt.zip");
        using ScratchFolder folder = new();
        if (packed)
        {
            File.Copy(file, folder.At("N38W028.hgt.zip"));
        }
        else
        {
            System.IO.Compression.ZipFile.ExtractToDirectory(file, folder.Root);
        }

        using GroundLibrary library = GroundLibrary.Open(folder.Root, [new HeightSource { Name = "azores", Files = ["."] }], []);
        GeoPoint from = new(38.70, -27.30);
        GeoPoint to = new(38.55, -27.95);
        SeaMap sea = library.MosaicFor(from, to).Sea!;
        GroundMosaic whole = library.MosaicFor(new GeoBounds(38, -28, 39, -27));
        SeaMap same = SeaMap.FromMosaic(whole, LatticeBounds.Along(from, to, SeaMap.CoastalReachMetres).Rounded());

        Assert.True(sea.HasSea);
        Gen.Select(Gen.Double[38, 39], Gen.Double[-28, -27]).Sample((latitude, longitude) =>
            sea.IsBesideSea(latitude, longitude) == same.IsBesideSea(latitude, longitude)
            && sea.DistanceToSeaMetres(latitude, longitude) == same.DistanceToSeaMetres(latitude, longitude));

        // From the island of Terceira over open water towards the west: land, then sea to the end.
        TerrainProfile profile = TerrainProfile.Extract(library.MosaicFor(from, to), from, to);
        Assert.Equal((Zone.Sea, 0.0), (profile.Zones[^1], profile.DistanceToCoastToMetres!.Value));
        Assert.InRange(profile.DistanceToCoastFromMetres!.Value, 3_000, 15_000);
        Assert.Contains(Zone.Inland, profile.Zones.ToArray());
        Assert.Contains(Zone.Coast, profile.Zones.ToArray());
    }

    [Fact]
    public void The_grid_of_each_real_tile_is_what_its_publisher_says()
    {
        Assert.Equal((1201, 1201, false), Shape("N50E011.hgt.zip"));
        Assert.Equal((1201, 1201, false), Shape("N46E008.dted_srtm3.tif"));
        Assert.Equal((1197, 643, true), Shape("bigtujunga_srtm1_utm11.tif"));
        Assert.Equal((240, 144, true), Shape("boulder_co_srtmgl3.asc"));

        static (int, int, bool) Shape(string file)
        {
            GridFrame frame = GroundFileFormat.OpenFile(TestPlaces.Reference("terrain", file)).Frame;
            return (frame.Columns, frame.Rows, frame.SamplesAreAreas);
        }
    }

    private static GroundWindow Whole(string file)
    {
        GroundFile opened = GroundFileFormat.OpenFile(TestPlaces.Reference("terrain", file));
        return GroundWindow.FromHeights(opened.Frame, opened.ReadHeights(0, 0, opened.Frame.Columns, opened.Frame.Rows), file);
    }

    private static GroundLibrary Open(string file)
    {
        string path = TestPlaces.Reference("terrain", file);
        GroundLibrary library = GroundLibrary.Open(
            Path.GetDirectoryName(path)!, [new HeightSource { Name = "real", Files = [file], Kind = HeightKind.BareEarth, Datum = "EGM96" }], []);
        Assert.Empty(library.Problems);
        return library;
    }

    private static ImmutableArray<(GeoPoint Point, double Height)> Parse(string places) =>
    [
        .. places.Split(';').Select(place => place.Split(',').Select(number => double.Parse(number, System.Globalization.CultureInfo.InvariantCulture)).ToArray())
            .Select(numbers => (new GeoPoint(numbers[0], numbers[1]), numbers[2])),
    ];
}
