using Mastwright.Storage.Demo;

namespace Mastwright.Storage.Tests.Demo;

/// <summary>The demo writes itself out, whole, and leaves alone what somebody has changed.</summary>
public sealed class SkerrinDemoTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("skerrin-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void The_demo_is_written_once_and_a_changed_plan_is_left_alone()
    {
        SkerrinDemoFiles first = SkerrinDemo.WriteTo(_folder.FullName);
        Assert.Equal(["plan.yaml", "parts.yaml", "README.md"], first.Written);
        Assert.Empty(first.LeftAlone);
        Assert.True(first.GroundWritten);
        Assert.Equal(PathOf("plan.yaml"), first.PlanPath);
        Assert.Equal(3_601 * 3_601 * 2, new FileInfo(PathOf("ground", "N46W019.hgt")).Length);
        Assert.Empty(_folder.GetFiles("*.part", SearchOption.AllDirectories));

        SkerrinDemoFiles again = SkerrinDemo.WriteTo(_folder.FullName);
        Assert.Empty(again.Written);
        Assert.Empty(again.LeftAlone);
        Assert.False(again.GroundWritten);

        File.AppendAllText(PathOf("plan.yaml"), "# mine\n");
        File.Delete(PathOf("parts.yaml"));
        SkerrinDemoFiles changed = SkerrinDemo.WriteTo(_folder.FullName);
        Assert.Equal(["parts.yaml"], changed.Written);
        Assert.Equal(["plan.yaml"], changed.LeftAlone);
        Assert.EndsWith("# mine\n", File.ReadAllText(PathOf("plan.yaml")), StringComparison.Ordinal);

        // A file as an earlier version of the program wrote it is nobody's work, and is replaced.
        File.WriteAllText(PathOf("README.md"), "an earlier text\n");
        string list = File.ReadAllText(PathOf("written.txt"));
        string earlier = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData("an earlier text\n"u8));
        File.WriteAllText(PathOf("written.txt"), string.Join('\n', list.Split('\n').Select(line => line.EndsWith("README.md", StringComparison.Ordinal) ? $"{earlier}  README.md" : line)));
        Assert.Equal(["README.md"], SkerrinDemo.WriteTo(_folder.FullName).Written);
    }

    [Fact]
    public void Damaged_ground_is_not_taken_for_current()
    {
        Assert.True(SkerrinGround.WriteTo(_folder.FullName));
        Assert.True(SkerrinGround.IsCurrent(_folder.FullName));
        using (FileStream tile = File.OpenWrite(PathOf("ground", "N46W019.hgt")))
        {
            tile.Position = 1_000_000;
            tile.WriteByte(1);
        }

        Assert.False(SkerrinGround.IsCurrent(_folder.FullName));
    }

    private string PathOf(params string[] parts) => Path.Combine([_folder.FullName, .. parts]);
}
