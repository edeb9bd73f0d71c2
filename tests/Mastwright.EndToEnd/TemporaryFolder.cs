namespace Mastwright.Tests.EndToEnd;

/// <summary>A folder of the test's own, removed at its end.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("mastwright-test-").FullName;

    public string File(string name) => System.IO.Path.Combine(Path, name);

    public string Write(string name, string text)
    {
        string path = File(name);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(path)!);
        System.IO.File.WriteAllText(path, text);
        return path;
    }

    /// <summary>Shortens a file to its first bytes.</summary>
    public void Cut(string name, long bytes)
    {
        using FileStream stream = new(File(name), FileMode.Open, FileAccess.Write);
        stream.SetLength(bytes);
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
