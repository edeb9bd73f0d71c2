using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Writers;

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

    /// <summary>Writes the picture beside and renames it, so that half a picture is never there.</summary>
    internal void Write(Drawing drawing)
    {
        string beside = Path + ".part";
        if (IsPng)
        {
            File.WriteAllBytes(beside, PngWriter.Write(drawing, PngScale));
        }
        else
        {
            File.WriteAllText(beside, SvgWriter.Write(drawing));
        }

        File.Move(beside, Path, overwrite: true);
    }
}
