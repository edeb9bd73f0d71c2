namespace Mastwright.Storage.Ground;

/// <summary>A file that is still being downloaded: NAME.part, and NAME.part-version with the server's mark of which version it is.</summary>
internal sealed class PartFile(string path)
{
    private readonly string _part = path + ".part";
    private readonly string _version = path + ".part-version";

    /// <summary>Bytes held of a version that can be gone on with; nothing without its mark.</summary>
    internal (long Bytes, string Version) Held()
    {
        FileInfo part = new(_part);
        FileInfo version = new(_version);
        return part.Exists && part.Length > 0 && version.Exists && version.Length is > 0 and < 1_000
            ? (part.Length, File.ReadAllText(_version))
            : (0, "");
    }

    /// <summary>Opens the part for writing from a byte on, and notes the version.</summary>
    internal FileStream OpenAt(long start, string version)
    {
        File.WriteAllText(_version, version);
        FileStream file = new(_part, FileMode.OpenOrCreate, FileAccess.Write, FileShare.None);
        file.SetLength(start);
        file.Position = start;
        return file;
    }

    /// <summary>Gives the part its name if it is a sound tile; else drops it and says why.</summary>
    internal string Keep()
    {
        try
        {
            // Under its own name, which the reader goes by, but in a folder that no source looks into.
            string folder = Path.Combine(Path.GetDirectoryName(path)!, ".checking-" + Path.GetFileName(path));
            Directory.CreateDirectory(folder);
            string named = Path.Combine(folder, Path.GetFileName(path));
            File.Move(_part, named, overwrite: true);
            try
            {
                GroundFile file = GroundFileFormat.OpenFile(named);
                file.ReadHeights(0, 0, Math.Min(file.PieceColumns, file.Frame.Columns), Math.Min(file.PieceRows, file.Frame.Rows));
                File.Move(named, path, overwrite: false);
                return "";
            }
            finally
            {
                Directory.Delete(folder, recursive: true);
                File.Delete(_version);
            }
        }
        catch (GroundFileException fault)
        {
            Drop();
            return $"what the server sent is no tile: {fault.Found}";
        }
    }

    /// <summary>Forgets what was held.</summary>
    internal void Drop()
    {
        File.Delete(_part);
        File.Delete(_version);
    }
}
