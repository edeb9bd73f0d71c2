namespace Mastwright.Storage.Tests.Ground;

/// <summary>A folder of its own for a test, gone afterwards.</summary>
internal sealed class ScratchFolder : IDisposable
{
    internal ScratchFolder() => Root = Directory.CreateTempSubdirectory("mastwright-ground-").FullName;

    internal string Root { get; }

    internal string At(params string[] parts)
    {
        string path = System.IO.Path.Combine([Root, .. parts]);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(path)!);
        return path;
    }

    public void Dispose() => Directory.Delete(Root, recursive: true);
}
