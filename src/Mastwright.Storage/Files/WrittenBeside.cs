namespace Mastwright.Storage.Files;

/// <summary>A file that is written beside its final name, flushed to the disk and renamed; deleted when that does not come to pass.</summary>
internal sealed class WrittenBeside : IDisposable
{
    private readonly string _path;
    private readonly string _beside;
    private bool _kept;

    internal WrittenBeside(string path)
    {
        _path = Path.GetFullPath(path);
        _beside = $"{_path}.{Guid.NewGuid():N}.part";
        Stream = new(_beside, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None, 1 << 16);
    }

    internal FileStream Stream { get; }

    /// <summary>Puts the file under its final name, over whatever was there.</summary>
    internal void Keep()
    {
        Stream.Flush(flushToDisk: true);
        Stream.Dispose();
        File.Move(_beside, _path, overwrite: true);
        _kept = true;
    }

    /// <summary>Drops what was not kept.</summary>
    public void Dispose()
    {
        Stream.Dispose();
        if (!_kept)
        {
            File.Delete(_beside);
        }
    }
}
