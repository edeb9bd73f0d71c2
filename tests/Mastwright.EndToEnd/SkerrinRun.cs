using System.Collections.Concurrent;
using Mastwright.Tests.EndToEnd;

[assembly: AssemblyFixture(typeof(SkerrinRun))]

namespace Mastwright.Tests.EndToEnd;

/// <summary>The demo, run once in a folder that all tests read and none changes.</summary>
public sealed class SkerrinRun : IDisposable
{
    private readonly TemporaryFolder folder = new();
    private readonly Lazy<ProgramRun> demo;
    private readonly ConcurrentDictionary<string, Lazy<ProgramRun>> runs = new(StringComparer.Ordinal);

    public SkerrinRun() => demo = new(() => ProgramRun.Of(folder.Path, "demo").EndsWith(0));

    /// <summary>What the demo wrote on its output.</summary>
    internal ProgramRun Demo => demo.Value;

    /// <summary>The folder that the demo was started in.</summary>
    internal string Start => Demo.ExitCode == 0 ? folder.Path : "";

    /// <summary>The demo's own folder, with plan, parts and ground.</summary>
    internal string Folder => Path.Combine(Start, "skerrin-demo");

    /// <summary>The height tile of the demo.</summary>
    internal string HeightTile => Path.Combine(Folder, "ground", "N46W019.hgt");

    /// <summary>What a command line answers in that folder; each is run once.</summary>
    internal ProgramRun Run(string line)
    {
        ProgramRun run = runs.GetOrAdd(line, one => new(() => ProgramRun.Of(Start, one.Split(' ')))).Value;
        Assert.True(run.ExitCode <= 1, run.Error);
        return run;
    }

    public void Dispose() => folder.Dispose();
}
