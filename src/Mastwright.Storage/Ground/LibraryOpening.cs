using Mastwright.Ground;

namespace Mastwright.Storage.Ground;

/// <summary>Gathers the files of sources while a library is opened.</summary>
internal sealed class LibraryOpening(SourcePatterns patterns)
{
    internal List<LibraryFile> Files { get; } = [];

    internal List<(string Source, TileIndex Index)> Indexes { get; } = [];

    internal List<GroundProblem> Problems { get; } = [];

    internal void Add(HeightSource source)
    {
        TileIndex? index = null;
        if (source.TileIndex.Length > 0)
        {
            Try(source.Name, source.TileIndex, () => index = TileIndex.Read(patterns.Resolve(source.TileIndex)));
        }

        if (index is not null)
        {
            Indexes.Add((source.Name, index));
        }

        foreach (string pattern in source.Files)
        {
            Try(source.Name, pattern, () => AddFiles(source.Name, patterns.Files(pattern), file => new(file, source.Name, isCover: false, source.Kind, source.Datum)));
        }
    }

    internal void Add(CoverSource source)
    {
        foreach (string pattern in source.Files)
        {
            Try(source.Name, pattern, () => AddFiles(source.Name, patterns.Files(pattern), file => file.CanBeCover
                ? new(file, source.Name, isCover: true, HeightKind.Unknown, "")
                : throw new GroundFileException(file.FilePath, "its samples are heights, not cover codes", "give a GeoTIFF of one unsigned byte a sample")));
        }
    }

    private void AddFiles(string sourceName, IReadOnlyList<string> paths, Func<GroundFile, LibraryFile> make)
    {
        foreach (string path in paths)
        {
            Try(sourceName, path, () => Files.Add(make(GroundFileFormat.OpenFile(path))));
        }
    }

    private void Try(string sourceName, string name, Action step)
    {
        try
        {
            step();
        }
        catch (GroundFileException fault)
        {
            Problems.Add(new(sourceName, fault.FilePath.Length > 0 ? fault.FilePath : name, fault.Found, fault.Right));
        }
    }
}
