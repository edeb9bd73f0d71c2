namespace Mastwright.Tests.EndToEnd.Published;

/// <summary>A copy of the published program in a folder of its own. MASTWRIGHT_PUBLISHED names what ./test has published.</summary>
public sealed class MovedProgram : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public MovedProgram()
    {
        string published = Environment.GetEnvironmentVariable("MASTWRIGHT_PUBLISHED") is { Length: > 0 } given
            ? given
            : throw new InvalidOperationException("MASTWRIGHT_PUBLISHED names no published program; ./test publishes one and sets it.");
        string home = folder.File("program");
        foreach (string file in Directory.EnumerateFiles(published, "*", SearchOption.AllDirectories))
        {
            string target = Path.Combine(home, Path.GetRelativePath(published, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            System.IO.File.Copy(file, target);
        }

        File = Path.Combine(home, "mastwright");
    }

    /// <summary>The program's file.</summary>
    internal string File { get; }

    /// <summary>Folder to start it in.</summary>
    internal string Folder => folder.Path;

    public void Dispose() => folder.Dispose();
}
