using System.Text;
using Mastwright.Storage.Ground;

namespace Mastwright.Storage.Tests.Ground;

public sealed class AsciiGridFileTests
{
    private const string Sound = "ncols 3\nnrows 2\nxllcorner 8\nyllcorner 46\ncellsize 0.5\nNODATA_value -9999\n1 2 3\n4.5 -9999 6e1\n";

    [Fact]
    public void A_grid_of_corners_has_its_first_sample_half_a_cell_inside()
    {
        using ScratchFolder folder = new();
        GroundFile file = Open(folder, Sound);

        Assert.Equal((8.25, 46.75, 3, 2, true), (file.Frame.OriginX, file.Frame.OriginY, file.Frame.Columns, file.Frame.Rows, file.Frame.SamplesAreAreas));
        Assert.Equal([1, 2, 3, 4.5f, float.NaN, 60], file.ReadHeights(0, 0, 3, 2));
        Assert.Equal([3, 60], file.ReadHeights(2, 0, 1, 2));
    }

    [Fact]
    public void Centres_oblong_cells_windows_line_ends_and_upper_case_are_read()
    {
        using ScratchFolder folder = new();
        GroundFile file = Open(folder, "NCOLS 2\r\nNROWS 1\r\nXLLCENTER 8\r\nYLLCENTER 46\r\nDX 0.5\r\nDY 0.25\r\n7\t8");

        Assert.Equal((8.0, 46.0, 0.5, 0.25), (file.Frame.OriginX, file.Frame.OriginY, file.Frame.StepX, file.Frame.StepY));
        Assert.Equal([7, 8], file.ReadHeights(0, 0, 2, 1));
    }

    [Fact]
    public void A_projection_file_beside_it_makes_it_utm()
    {
        using ScratchFolder folder = new();
        File.WriteAllText(folder.At("grid.prj"), "PROJCS[\"WGS_1984_UTM_Zone_33S\",GEOGCS[...]]");
        GroundFile file = Open(folder, "ncols 1\nnrows 1\nxllcorner 400000\nyllcorner 6500000\ncellsize 30\n5\n");

        Assert.Equal((33, false, 400_015.0), (file.Frame.UtmZone, file.Frame.IsNorth, file.Frame.OriginX));
    }

    [Theory]
    [InlineData("ncols 3\nnrows 2\nxllcorner 8\nyllcorner 46\ncellsize 0.5\n1 2 3\n4 5\n", "it was cut off")]
    [InlineData("ncols 3\nnrows 2\nxllcorner 8\nyllcorner 46\ncellsize 0.5\n1 2 3\n4 five 6\n", "'five'")]
    [InlineData("nrows 2\nxllcorner 8\nyllcorner 46\ncellsize 0.5\n1 2 3\n", "no ncols")]
    [InlineData("ncols 3\nnrows 2\nxllcorner 400000\nyllcorner 46\ncellsize 30\n1 2 3\n4 5 6\n", ".prj")]
    [InlineData("ncols 99999\nnrows 99999\nxllcorner 8\nyllcorner 46\ncellsize 0.5\n1 2 3\n", "too many")]
    [InlineData("ncols 3.5\nnrows 2\nxllcorner 8\nyllcorner 46\ncellsize 0.5\n1 2 3\n", "ncols is 3.5")]
    [InlineData("ncols 3\nnrows 2\nxllcorner 8\nyllcorner 46\ncellsize 0\n1 2 3 4 5 6\n", "steps of a grid")]
    [InlineData("", "no ncols")]
    public void A_wrong_grid_is_told_with_what_would_be_right(string text, string found)
    {
        using ScratchFolder folder = new();
        GroundFileException fault = Assert.Throws<GroundFileException>(() => Open(folder, text) is { } file ? file.ReadHeights(0, 0, file.Frame.Columns, file.Frame.Rows) : []);

        Assert.Contains(found, fault.Message, StringComparison.Ordinal);
        Assert.Contains("grid.asc", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_word_without_end_is_refused_without_being_held()
    {
        using ScratchFolder folder = new();
        GroundFile file = Open(folder, "ncols 3\nnrows 2\nxllcorner 8\nyllcorner 46\ncellsize 0.5\n1 " + new string('1', 5_000_000));
        Assert.Contains("65,536", Assert.Throws<GroundFileException>(() => file.ReadHeights(0, 0, 3, 2)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Another_projection_is_refused()
    {
        using ScratchFolder folder = new();
        File.WriteAllText(folder.At("grid.prj"), "PROJCS[\"Some conic\",GEOGCS[...]]");
        Assert.Contains("not UTM", Assert.Throws<GroundFileException>(() => Open(folder, Sound)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Mutated_grids_and_random_bytes_never_crash()
    {
        using ScratchFolder folder = new();
        Mutations.NeverCrash(folder.At("mutated.asc"), [Encoding.ASCII.GetBytes(Sound)], iterations: 1_000);
        Mutations.RandomBytesAreRefused(folder.At("random.asc"), [[], Encoding.ASCII.GetBytes("ncols 5\nnrows ")]);
    }

    private static GroundFile Open(ScratchFolder folder, string text)
    {
        File.WriteAllText(folder.At("grid.asc"), text);
        return GroundFileFormat.OpenFile(folder.At("grid.asc"));
    }
}
