using System.Runtime.Versioning;

namespace Mastwright.Tests.EndToEnd.Guides;

/// <summary>eng/check-tools asks for the version that the build needs, not only for the program.</summary>
[SupportedOSPlatform("linux")]
public sealed class CheckToolsTests
{
    [Theory]
    [InlineData("v18.20.4", 2)]
    [InlineData("v9.11.2", 2)]
    [InlineData("v20.0.0", 0)]
    [InlineData("v100.1.0", 0)]
    public void Node_must_be_20_or_later(string version, int code)
    {
        using TemporaryFolder folder = new();
        folder.Write("node", $"#!/bin/sh\necho {version}\n");
        folder.Write("npm", "#!/bin/sh\n");
        foreach (string name in (string[])["node", "npm"])
        {
            File.SetUnixFileMode(folder.File(name), UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }

        Dictionary<string, string> environment = new(StringComparer.Ordinal) { ["PATH"] = folder.Path + ":" + Environment.GetEnvironmentVariable("PATH") };
        ProgramRun run = ProgramRun.Start(Path.Combine(TestPlaces.Repository, "eng", "check-tools"), folder.Path, environment).EndsWith(code);
        Assert.Equal(code == 0, run.Error.Length == 0);
        if (code != 0)
        {
            Assert.Contains("Node.js 20 or later", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
            Assert.Contains(version, run.Error, StringComparison.Ordinal);
        }
    }
}
