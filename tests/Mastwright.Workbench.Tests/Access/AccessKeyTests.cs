using Mastwright.Tests.EndToEnd;
using Mastwright.Workbench.Access;

namespace Mastwright.Tests.Workbench.Access;

public sealed class AccessKeyTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void The_key_shown_opens_and_another_does_not()
    {
        AccessKey.Make(folder.Path, out string shown);
        AccessKey kept = AccessKey.Read(folder.Path)!;
        Assert.True(kept.IsOpenedBy(shown));
        Assert.True(kept.IsOpenedBy(shown.ToUpperInvariant().Replace("-", " ", StringComparison.Ordinal)));
        Assert.False(kept.IsOpenedBy(shown[..^1]));
        Assert.False(kept.IsOpenedBy(""));
    }

    [Fact]
    public void Only_a_hash_is_kept_and_only_for_the_user()
    {
        AccessKey.Make(folder.Path, out string shown);
        string file = Directory.GetFiles(folder.Path).Single();
        Assert.DoesNotContain(shown.Replace("-", "", StringComparison.Ordinal), File.ReadAllText(file).Replace("-", "", StringComparison.Ordinal), StringComparison.Ordinal);
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
        }
    }

    [Fact]
    public void A_new_key_shuts_the_old_one_out()
    {
        AccessKey first = AccessKey.Make(folder.Path, out string old);
        AccessKey second = AccessKey.Make(folder.Path, out _);
        Assert.False(second.IsOpenedBy(old));
        Assert.NotEqual(first.Stamp, second.Stamp);
    }

    [Theory]
    [InlineData("")]
    [InlineData("pbkdf2-sha256 0 00 00")]
    [InlineData("pbkdf2-sha256 210000 zz 00")]
    [InlineData("plain secret")]
    public void A_damaged_file_holds_no_key(string text)
    {
        folder.Write("access-key", text);
        Assert.Null(AccessKey.Read(folder.Path));
    }
}
