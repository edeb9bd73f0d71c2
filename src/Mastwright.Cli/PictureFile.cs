using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Writers;
using Mastwright.Storage.Files;

namespace Mastwright.Cli;

/// <summary>Where a picture goes, and in which form: by the file's ending.</summary>
internal sealed record PictureFile(string Path, bool IsDark, bool IsPng, string? Problem)
{
    private const double PngScale = 2;

    internal static PictureFile? Of(string? path, bool isDark)
    {
        if (path is null)
        {
            return null;
        }

        bool isPng = path.EndsWith(".png", StringComparison.OrdinalIgnoreCase);
        bool isSvg = path.EndsWith(".svg", StringComparison.OrdinalIgnoreCase);
        string? folder = System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(path));
        string? problem = (isPng || isSvg, Directory.Exists(folder)) switch
        {
            (false, _) => $"--picture: '{path}' ends neither in .svg nor in .png",
            (_, false) => $"--picture: there is no folder '{folder}'",
            _ => null,
        };
        return new(path, isDark, isPng, problem);
    }

    /// <summary>Writes the picture; half a picture is never there. False, and told on the error output, when it cannot be written.</summary>
    internal bool Write(Drawing drawing)
    {
        try
        {
            if (IsPng)
            {
                WholeFile.Write(Path, PngWriter.Write(drawing, PngScale));
            }
            else
            {
                WholeFile.Write(Path, SvgWriter.Write(drawing));
            }

            return true;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            Console.Error.WriteLine($"{Path}: cannot be written: {fault.Message}");
            return false;
        }
    }
}
