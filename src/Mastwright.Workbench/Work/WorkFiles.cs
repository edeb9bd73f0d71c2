using System.Text;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Writers;

namespace Mastwright.Workbench.Work;

/// <summary>What can be taken out of an answer: its document, its pictures as SVG and PNG, its tables as CSV, and files of its own.</summary>
internal static class WorkFiles
{
    private const double PngScale = 2;

    /// <summary>Names of the files of work that is done.</summary>
    internal static IEnumerable<string> Names(WorkItem item) => item.Answer is not { } answer
        ? []
        :
        [
            item.Work.Kind + ".json",
            .. answer.Pictures.SelectMany(picture => new[] { picture.Name + ".svg", picture.Name + ".png" }),
            .. answer.Tables.Select(table => table.Name + ".csv"),
            .. answer.Files.Select(file => file.Name),
        ];

    /// <summary>A file; null when the answer has none of that name.</summary>
    internal static (byte[] Content, string MediaType)? Of(WorkItem item, string name, bool isDark)
    {
        if (item.Answer is not { } answer)
        {
            return null;
        }

        string bare = Path.GetFileNameWithoutExtension(name);
        Theme theme = isDark ? Theme.Dark : Theme.Light;
        return Path.GetExtension(name) switch
        {
            ".json" when bare == item.Work.Kind => (Encoding.UTF8.GetBytes(answer.Json), "application/json"),
            ".svg" when Picture() is { } picture => (Encoding.UTF8.GetBytes(SvgWriter.Write(picture.Draw(theme))), "image/svg+xml"),
            ".png" when Picture() is { } picture => (PngWriter.Write(picture.Draw(theme), PngScale), "image/png"),
            ".csv" when answer.Tables.FirstOrDefault(table => table.Name == bare) is { } table => (Encoding.UTF8.GetBytes(table.ToCsv()), "text/csv; charset=utf-8"),
            _ => answer.Files.FirstOrDefault(file => file.Name == name) is { } file ? (file.Write(), file.MediaType) : null,
        };

        WorkPicture? Picture() => answer.Pictures.FirstOrDefault(picture => picture.Name == bare);
    }
}
