using System.Globalization;
using System.IO.Compression;
using System.Text;

namespace Mastwright.Tests.EndToEnd.Commands;

/// <summary>Wrong plans and files: one clear error each, exit code 2, no crash, no hang, nothing half written.</summary>
public sealed class BadInputTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_tile_that_was_cut_off_is_named_with_its_size()
    {
        SmallPlan.Write(folder);
        folder.Cut("ground/N46W019.hgt", 100_001);
        Check().IsRefusedWith("N46W019.hgt", "100,001 bytes", "2,884,802");
    }

    [Fact]
    public void A_tile_of_the_wrong_size_is_named_with_the_right_ones()
    {
        SmallPlan.Write(folder);
        folder.Cut("ground/N46W019.hgt", 2_000_000);
        Check().IsRefusedWith("N46W019.hgt", "2,000,000 bytes", "25,934,402");
    }

    [Fact]
    public void A_zip_that_would_unpack_to_far_more_than_a_tile_is_refused()
    {
        SmallPlan.Write(folder, SmallPlan.Text.Replace("ground/*.hgt", "ground/*.zip", StringComparison.Ordinal));
        using (ZipArchive zip = ZipFile.Open(folder.File("ground/N46W019.hgt.zip"), ZipArchiveMode.Create))
        using (Stream entry = zip.CreateEntry("N46W019.hgt", CompressionLevel.Fastest).Open())
        {
            byte[] zeros = new byte[1 << 20];
            for (int i = 0; i < 200; i++)
            {
                entry.Write(zeros);
            }
        }

        Check().IsRefusedWith("N46W019.hgt.zip", "2,884,802");
    }

    [Fact]
    public void A_compressed_tile_that_breaks_off_is_named()
    {
        SmallPlan.Write(folder, SmallPlan.Text.Replace("ground/*.hgt", "ground/*.gz", StringComparison.Ordinal));
        using (GZipStream packed = new(File.Create(folder.File("ground/N46W019.hgt.gz")), CompressionLevel.Fastest))
        {
            packed.Write(SmallPlan.Tile(wallMetres: 300));
        }

        folder.Cut("ground/N46W019.hgt.gz", 2_000);
        Check().IsRefusedWith("N46W019.hgt.gz");
    }

    [Theory]
    [InlineData("../elsewhere/*.hgt")]
    [InlineData("/etc/*.hgt")]
    [InlineData("ground/../../elsewhere/*.hgt")]
    public void A_file_outside_the_plans_folder_is_refused(string files)
    {
        SmallPlan.Write(folder, SmallPlan.Text.Replace("ground/*.hgt", files, StringComparison.Ordinal));
        Check().IsRefusedWith("plan.yaml:5:14", "ground/heights/1/files", "outside the plan's folder");
    }

    [Theory]
    [InlineData("height: 12 m}", "height: NaN m}", "sites/west/fit-outs/pole/antenna/height")]
    [InlineData("height: 12 m}", "height: 1e300 km}", "1e300 km")]
    [InlineData("height: 12 m}", "height: 6}", "has no unit")]
    [InlineData("height: 12 m}", "height: 6 dB}", "such as")]
    [InlineData("frequency: 869.525 MHz", "frequency: 0 Hz", "modem/frequency")]
    [InlineData("46.40, -18.70", "146.40, -18.70", "latitude")]
    [InlineData("in-use: pole", "in-usee: pole", "Did you mean 'in-use'?")]
    [InlineData("in-use: pole", "in-use: mast", "pole")]
    [InlineData("mastwright: 1", "mastwright: 99", "99")]
    public void A_wrong_value_is_named_with_its_line(string right, string wrong, string part)
    {
        int at = SmallPlan.Text.IndexOf(right, StringComparison.Ordinal);
        int line = 1 + SmallPlan.Text[..at].Count(c => c == '\n');
        SmallPlan.Write(folder, SmallPlan.Text.Replace(right, wrong, StringComparison.Ordinal));
        Check().IsRefusedWith(part, string.Create(CultureInfo.InvariantCulture, $"plan.yaml:{line}:"));
    }

    [Fact]
    public void All_errors_come_in_one_go()
    {
        SmallPlan.Write(folder, SmallPlan.Text
            .Replace("gain: 5 dBi", "gain: 5", StringComparison.Ordinal)
            .Replace("bandwidth", "bandwidht", StringComparison.Ordinal)
            .Replace("power: 14 dBm, noise", "power: 14 dBi, noise", StringComparison.Ordinal));
        ProgramRun run = Check();
        run.IsRefusedWith("Did you mean 'bandwidth'?", "antenna/gain", "radio/power");
        Assert.All(run.ErrorLines, line => Assert.StartsWith("plan.yaml:", line, StringComparison.Ordinal));
    }

    [Fact]
    public void A_site_outside_the_ground_is_unknown_and_names_the_tile()
    {
        SmallPlan.Write(folder, SmallPlan.Text.Replace("46.41, -18.60", "47.41, -18.60", StringComparison.Ordinal));
        ProgramRun run = Check().EndsWith(0);
        Assert.Contains("unknown", run.Output, StringComparison.Ordinal);
        Assert.Contains("N47W019", run.Output, StringComparison.Ordinal);
        ProgramRun.Of(folder.Path, "check", "plan.yaml", "--fail-on", "unknown").EndsWith(1);
    }

    [Fact]
    public void Two_stations_at_one_place_are_told_and_not_judged()
    {
        SmallPlan.Write(folder, SmallPlan.Text.Replace("46.41, -18.60", "46.40, -18.70", StringComparison.Ordinal));
        ProgramRun run = Check().EndsWith(0);
        Assert.Contains("plan.yaml:20:15: neighbours/east/position", run.Error, StringComparison.Ordinal);
        Assert.Contains("unknown", run.Output, StringComparison.Ordinal);
        ProgramRun.Of(folder.Path, "path", "plan.yaml", "west", "east", "--picture", "none.svg").EndsWith(2);
        Assert.False(File.Exists(folder.File("none.svg")));
    }

    [Fact]
    public void A_path_over_the_antimeridian_is_the_short_way()
    {
        SmallPlan.Write(folder, SmallPlan.Text
            .Replace("46.40, -18.70", "46.40, 179.95", StringComparison.Ordinal)
            .Replace("46.41, -18.60", "46.41, -179.95", StringComparison.Ordinal));
        SmallPlan.WriteTile(folder, "N46E179.hgt");
        SmallPlan.WriteTile(folder, "N46W180.hgt");
        ProgramRun run = Check().EndsWith(0);
        Assert.Contains(run.Lines, line => line.Contains("west ~ east", StringComparison.Ordinal) && line.Contains(" 7.8 ", StringComparison.Ordinal) && line.Contains("● ok", StringComparison.Ordinal));
    }

    [Fact]
    public void A_plan_of_a_hundred_thousand_lines_is_read()
    {
        StringBuilder text = new(SmallPlan.Text);
        for (int i = 0; i < 25_000; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  n{i}:\n    position: {46.1 + (i % 250 * 0.003):0.000}, {-18.9 + (i / 250 * 0.008):0.000}\n    height: 6 m\n    gain: 2 dBi\n");
        }

        SmallPlan.Write(folder, text.ToString());
        ProgramRun.Of(folder.Path, "sites", "export", "plan.yaml", "all.csv").EndsWith(0);
        Assert.Equal(25_003, File.ReadLines(folder.File("all.csv")).Count());

        SmallPlan.Write(folder, text.Append("  last: {position: nowhere, height: 6 m}\n").ToString());
        Check().IsRefusedWith("plan.yaml:100024:", "neighbours/last/position");
    }

    [Fact]
    public void A_plan_of_a_hundred_megabytes_is_refused_unread()
    {
        string plan = SmallPlan.Write(folder);
        using (FileStream stream = new(plan, FileMode.Append))
        {
            stream.Write("# "u8);
            byte[] filler = new byte[1 << 20];
            Array.Fill(filler, (byte)'x');
            for (int i = 0; i < 100; i++)
            {
                stream.Write(filler);
            }
        }

        Check().IsRefusedWith("plan.yaml", "16 MiB");
    }

    [Theory]
    [InlineData("")]
    [InlineData("mastwright: 1\n\tname: x\n")]
    [InlineData("a: &x 1\nb: *x\n")]
    [InlineData("[[[[[[[[")]
    [InlineData("\0\u0001\u0002")]
    public void Text_that_is_no_plan_is_refused_with_its_place(string text)
    {
        folder.Write("plan.yaml", text);
        Check().IsRefusedWith("plan.yaml:");
    }

    [Fact]
    public void A_folder_in_place_of_a_plan_is_refused()
    {
        Directory.CreateDirectory(folder.File("plan.yaml"));
        Check().IsRefusedWith("plan.yaml");
    }

    [Fact]
    public void A_plan_without_ground_files_says_which_pattern_found_none()
    {
        folder.Write("plan.yaml", SmallPlan.Text);
        Check().IsRefusedWith("ground/*.hgt");
    }

    private ProgramRun Check() => ProgramRun.Of(folder.Path, "check", "plan.yaml");
}
