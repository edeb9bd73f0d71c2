using Mastwright.Storage.Demo;

namespace Mastwright.Storage.Tests.Demo;

/// <summary>The demo writes itself out, whole, and leaves alone what somebody has changed.</summary>
[Collection(SkerrinFolder.Name)]
public sealed class SkerrinDemoTests(SkerrinFolder written) : IDisposable
{
    private readonly DirectoryInfo _copy = Copy(written.Path);

    public void Dispose() => _copy.Delete(recursive: true);

    [Fact]
    public void An_empty_folder_gets_everything()
    {
        Assert.Equal(["plan.yaml", "parts.yaml", "records.yaml", "README.md"], written.FirstTime.Written);
        Assert.Empty(written.FirstTime.LeftAlone);
        Assert.True(written.FirstTime.GroundWritten);
        Assert.Equal(Path.Combine(written.Path, "plan.yaml"), written.FirstTime.PlanPath);
        Assert.Equal(3_601 * 3_601 * 2, new FileInfo(PathOf("ground", "N46W019.hgt")).Length);
        Assert.Empty(new DirectoryInfo(written.Path).GetFiles("*.part", SearchOption.AllDirectories));
    }

    [Fact]
    public void The_second_time_writes_nothing()
    {
        SkerrinDemoFiles again = SkerrinDemo.WriteTo(_copy.FullName);
        Assert.Empty(again.Written);
        Assert.Empty(again.LeftAlone);
        Assert.False(again.GroundWritten);
    }

    [Fact]
    public void A_changed_plan_is_left_alone_and_a_missing_file_comes_back()
    {
        File.AppendAllText(PathOf("plan.yaml"), "# mine\n");
        File.Delete(PathOf("parts.yaml"));
        SkerrinDemoFiles changed = SkerrinDemo.WriteTo(_copy.FullName);
        Assert.Equal(["parts.yaml"], changed.Written);
        Assert.Equal(["plan.yaml"], changed.LeftAlone);
        Assert.EndsWith("# mine\n", File.ReadAllText(PathOf("plan.yaml")), StringComparison.Ordinal);
    }

    /// <summary>A file as an earlier version of the program wrote it is nobody's work.</summary>
    [Fact]
    public void A_file_of_an_earlier_version_is_replaced()
    {
        File.WriteAllText(PathOf("README.md"), "an earlier text\n");
        string earlier = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData("an earlier text\n"u8));
        IEnumerable<string> list = File.ReadAllLines(PathOf("written.txt"))
            .Select(line => line.EndsWith("README.md", StringComparison.Ordinal) ? $"{earlier}  README.md" : line);
        File.WriteAllLines(PathOf("written.txt"), [.. list]);
        Assert.Equal(["README.md"], SkerrinDemo.WriteTo(_copy.FullName).Written);
    }

    [Fact]
    public void Damaged_ground_is_not_taken_for_current()
    {
        Assert.True(SkerrinGround.IsCurrent(_copy.FullName));
        using (FileStream tile = File.OpenWrite(PathOf("ground", "N46W019.hgt")))
        {
            tile.Position = 1_000_000;
            tile.WriteByte(1);
        }

        Assert.False(SkerrinGround.IsCurrent(_copy.FullName));
    }

    private static DirectoryInfo Copy(string from)
    {
        DirectoryInfo to = Directory.CreateTempSubdirectory("skerrin-");
        foreach (string file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            string target = Path.Combine(to.FullName, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }

        return to;
    }

    private string PathOf(params string[] parts) => Path.Combine([_copy.FullName, .. parts]);
}
