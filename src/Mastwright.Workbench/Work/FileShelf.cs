using System.Security.Cryptography;
using Mastwright.Workbench.Hosting;

namespace Mastwright.Workbench.Work;

/// <summary>Files that pages have sent and that wait for what they were sent for, in the workbench's own folder.</summary>
internal sealed class FileShelf
{
    /// <summary>Most bytes of one file.</summary>
    internal const long MostBytes = 4L << 30;
    private static readonly TimeSpan KeptFor = TimeSpan.FromDays(7);

    private readonly string folder;

    /// <summary>Opens the shelf; what nobody came back for in a week goes.</summary>
    public FileShelf(WorkShelf work, TimeProvider time)
    {
        folder = Path.Combine(work.Folder, "files");
        KeptFolder.Make(folder);
        foreach (string old in Directory.EnumerateFiles(folder).Where(file => time.GetUtcNow().UtcDateTime - File.GetLastWriteTimeUtc(file) > KeptFor))
        {
            File.Delete(old);
        }
    }

    /// <summary>Takes a file whole; one that breaks off leaves nothing.</summary>
    /// <exception cref="IOException">It cannot be written.</exception>
    internal async Task<string> Take(string name, Stream content, CancellationToken cancellation)
    {
        string id = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(8));
        string part = Place(id) + ".part";
        try
        {
            FileStream stream = new(part, FileMode.CreateNew, FileAccess.Write);
            await using (stream.ConfigureAwait(false))
            {
                await content.CopyToAsync(stream, cancellation).ConfigureAwait(false);
            }

            await File.WriteAllTextAsync(Place(id) + ".name", Path.GetFileName(name.Replace('\\', '/')), cancellation).ConfigureAwait(false);
            File.Move(part, Place(id));
            return id;
        }
        finally
        {
            File.Delete(part);
        }
    }

    /// <summary>Where a file is, and the name it came with; null where it is not there.</summary>
    internal (string Path, string Name)? Find(string? id) =>
        id is { Length: 16 } && id.All(char.IsAsciiHexDigitLower) && File.Exists(Place(id)) && File.Exists(Place(id) + ".name") ? (Place(id), File.ReadAllText(Place(id) + ".name")) : null;

    /// <summary>A file that belongs to one that was sent: its mapping, its rejected rows.</summary>
    internal string Beside(string id, string ending) => Place(id) + ending;

    internal void Drop(string id)
    {
        foreach (string ending in (string[])["", ".name", ".mapping"])
        {
            File.Delete(Place(id) + ending);
        }
    }

    private string Place(string id) => Path.Combine(folder, id);
}
