using System.Collections.Immutable;
using System.Text;
using Mastwright.Propagation;
using Mastwright.Storage.Air;
using Mastwright.Storage.Plans;
using Mastwright.Storage.Tests.Plans;

namespace Mastwright.Storage.Tests.Air;

public sealed class RefractivityFolderTests
{
    [Theory]
    [InlineData("DN50.TXT", "N050.TXT", "itu")]
    [InlineData("dn50.txt", "n050.txt", "itu/")]
    public void Both_maps_are_read_whatever_the_case_of_their_names(string gradient, string surface, string named)
    {
        using PlanFolderFixture folder = new();
        folder.Write("itu/" + gradient, MapFolder.Gradient);
        folder.Write("itu/" + surface, MapFolder.Surface);

        RefractivityMaps maps = RefractivityFolder.Load(folder.Folder, named, false, out ImmutableArray<PlanProblem> problems)!;

        // 46.5° N is row 29; 18° W is column 228, 12 from the end.
        Assert.Empty(problems);
        Assert.Equal(30 + (0.25 * 29) + (0.05 * 12), maps.Gradient.At(new(46.5, -18)), 1e-6);
        Assert.Equal(390 - (0.5 * 29), maps.Surface.At(new(46.5, -18)), 1e-6);
    }

    [Fact]
    public void Maps_beside_the_plan_are_read_too()
    {
        using PlanFolderFixture folder = new();
        folder.Write("DN50.TXT", MapFolder.Gradient);
        folder.Write("N050.TXT", MapFolder.Surface);

        Assert.NotNull(RefractivityFolder.Load(folder.Folder, ".", false, out ImmutableArray<PlanProblem> problems));
        Assert.Empty(problems);
    }

    /// <summary>What is wrong with one of the two files, where it is told, and words that help.</summary>
    public static TheoryData<string?, int, string> Breakages => new()
    {
        { null, 0, "There is no such file. Wanted the digital map DN50.TXT" },
        { "", 0, "The map has 0 lines of numbers. Wanted 121 lines (90° N to 90° S) of 241 numbers" },
        { MapFolder.Text((_, _) => 45, rows: 120), 0, "The map has 120 lines" },
        { MapFolder.Text((_, _) => 45, rows: 122), 122, "more lines than its 121 latitudes" },
        { MapFolder.Text((_, _) => 45, columns: 240), 1, "The line has 240 numbers. Wanted 121 lines" },
        { MapFolder.Text((_, _) => 45, columns: 242), 1, "The line has 242 numbers" },
        { MapFolder.Gradient.Replace(" 3.0750000e+01", " x", StringComparison.Ordinal), 1, "This is not a number. Found 'x'" },
        { MapFolder.Text((row, column) => row == 7 && column == 3 ? 157 : 45), 8, "This is not a fall of refractivity ΔN. Found '1.5700000e+02'; wanted a value from 1 to 156 N-units/km." },
        { MapFolder.Text((row, _) => row == 3 ? double.NaN : 45), 4, "Found 'NaN'" },
        { MapFolder.Surface, 1, "This is not a fall of refractivity ΔN" },
    };

    [Theory]
    [MemberData(nameof(Breakages))]
    public void A_file_that_is_no_map_gives_one_problem_that_names_it(string? text, int line, string words)
    {
        using PlanFolderFixture folder = new();
        folder.Write("itu/N050.TXT", MapFolder.Surface);
        if (text is not null)
        {
            folder.Write("itu/DN50.TXT", text);
        }

        Assert.Null(RefractivityFolder.Load(folder.Folder, "itu", false, out ImmutableArray<PlanProblem> problems));

        PlanProblem problem = Assert.Single(problems);
        Assert.Equal(("air-map", "itu/DN50.TXT", line, "air/maps"), (problem.Code, problem.File, problem.Line, problem.Path));
        Assert.Contains(words, problem.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_that_is_missing_a_file_or_outside_is_told()
    {
        using PlanFolderFixture outside = new();
        outside.Write("DN50.TXT", MapFolder.Gradient);
        outside.Write("N050.TXT", MapFolder.Surface);
        using PlanFolderFixture folder = new();
        folder.Write("afile", "");
        File.CreateSymbolicLink(Path.Combine(folder.Folder, "link"), outside.Folder);

        Assert.Contains("no such folder", One("nowhere"), StringComparison.Ordinal);
        Assert.Contains("This is a file", One("afile"), StringComparison.Ordinal);
        Assert.Contains("outside", One("../x"), StringComparison.Ordinal);
        Assert.Contains("outside", One("link"), StringComparison.Ordinal);
        Assert.NotNull(RefractivityFolder.Load(folder.Folder, "link", true, out _));
        Assert.NotNull(RefractivityFolder.Load(folder.Folder, outside.Folder, true, out _));

        string One(string name)
        {
            Assert.Null(RefractivityFolder.Load(folder.Folder, name, false, out ImmutableArray<PlanProblem> problems));
            return Assert.Single(problems).ToString();
        }
    }

    [Fact]
    public void A_file_larger_than_any_map_is_not_read()
    {
        using PlanFolderFixture folder = new();
        folder.Write("itu/DN50.TXT", "");
        folder.Write("itu/N050.TXT", MapFolder.Surface);
        using (FileStream huge = File.OpenWrite(Path.Combine(folder.Folder, "itu", "DN50.TXT")))
        {
            huge.SetLength(1L << 32);
        }

        Assert.Null(RefractivityFolder.Load(folder.Folder, "itu", false, out ImmutableArray<PlanProblem> problems));
        Assert.Contains("larger than 16 MiB; a map takes under one", Assert.Single(problems).Message, StringComparison.Ordinal);
    }

    /// <summary>A few bytes of a sound map changed, cut or doubled, and random bytes: a map within its bounds or one problem, never an exception.</summary>
    [Fact]
    public void Damaged_maps_are_read_or_refused_and_never_crash()
    {
        byte[] sound = Encoding.UTF8.GetBytes(MapFolder.Gradient);
        Gen<byte[]> damaged = Gen.Select(Gen.Int[0, sound.Length - 1], Gen.Byte.Array[0, 20], Gen.Int[0, 40], (at, bytes, cut) =>
            (byte[])[.. sound.AsSpan(0, at), .. bytes, .. sound.AsSpan(Math.Min(at + cut, sound.Length))]);
        Gen.OneOf(damaged, Gen.Byte.Array[0, 2000]).Sample(
            bytes =>
            {
                RefractivityMap? map = RefractivityMapFile.Parse(Encoding.Latin1.GetString(bytes), "DN50.TXT", RefractivityQuantity.Gradient, out PlanProblem? problem);
                Assert.NotEqual(map is null, problem is null);
                Assert.True(map is null || map.At(new(46, -18)) is >= 1 and <= 156);
                Assert.True(problem is null || (problem.File == "DN50.TXT" && !problem.ToString().Any(char.IsControl)));
            },
            iter: 500);
    }
}
