using System.Collections.Immutable;

namespace Mastwright.Storage.Ground;

/// <summary>A kind of file: how to tell it by its name, and how to open it.</summary>
/// <param name="Name">Name for a person.</param>
/// <param name="Endings">Endings of the file name, lower case, with the dot.</param>
/// <param name="Open">Reads the header of a file.</param>
internal sealed record GroundFileFormat(string Name, ImmutableArray<string> Endings, Func<string, GroundFile> Open)
{
    /// <summary>Every format that can be read. A new one is a class and a line here.</summary>
    internal static readonly ImmutableArray<GroundFileFormat> All =
    [
        new(".hgt height tile", [".hgt", ".hgt.zip", ".zip", ".hgt.gz", ".gz"], HgtFile.Open),
        new("GeoTIFF", [".tif", ".tiff"], TiffFile.Open),
        new("ESRI ASCII grid", [".asc"], AsciiGridFile.Open),
    ];

    /// <summary>The format of a file by its name; null when none fits.</summary>
    internal static GroundFileFormat? Of(string path) =>
        All.FirstOrDefault(format => format.Endings.Any(ending => path.EndsWith(ending, StringComparison.OrdinalIgnoreCase)));

    /// <summary>Opens a file by its format, with every fault turned into one clear complaint.</summary>
    /// <exception cref="GroundFileException">The file cannot be used.</exception>
    internal static GroundFile OpenFile(string path)
    {
        GroundFileFormat format = Of(path)
            ?? throw new GroundFileException(path, "its name ends in no format that is read", $"give {string.Join(", ", All.SelectMany(one => one.Endings))}");
        return Guard(path, format.Name, () => format.Open(path));
    }

    /// <summary>Runs a piece of reading; whatever a damaged file makes it throw becomes a complaint about the file.</summary>
    internal static T Guard<T>(string path, string formatName, Func<T> read)
    {
        try
        {
            return read();
        }
        catch (GroundFileException)
        {
            throw;
        }
        catch (EndOfStreamException fault)
        {
            throw new GroundFileException(path, "it ends too early", "it was cut off or has changed: download or make it again", fault);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            string found = fault is FileNotFoundException or DirectoryNotFoundException ? "there is no such file" : $"it cannot be read ({fault.Message})";
            throw new GroundFileException(path, found, "check the path and the rights on the file", fault);
        }
        catch (Exception fault)
        {
            throw new GroundFileException(path, $"it is not a sound {formatName} file ({fault.GetType().Name})", "download or make it again", fault);
        }
    }
}
