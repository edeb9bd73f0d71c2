using System.Text;

namespace Mastwright.Storage.Plans;

/// <summary>Puts a changed plan in the place of the old one: written beside, flushed, renamed.</summary>
internal static class PlanSaver
{
    /// <summary>Replaces a file that still has the hash it was read with; null when done.</summary>
    internal static PlanProblem? Replace(PlanSource source, string hashOnDisk)
    {
        // A link is followed, so that the link stays and the file it names is replaced.
        try
        {
            string target = File.ResolveLinkTarget(source.FullPath, returnFinalTarget: true)?.FullName ?? source.FullPath;
            byte[]? now = PlanSource.ReadBounded(source.Name, target, out PlanProblem? problem);
            if (now is null)
            {
                return problem;
            }

            return PlanSource.HashOf(now) == hashOnDisk
                ? Write(source, target)
                : new() { Code = "plan-changed", File = source.Name, Message = "The file has changed since it was read; nothing was written.", Wanted = "to read it again and repeat the change" };
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return Fault(source.Name, exception);
        }
    }

    /// <summary>Writes a file that must not be there yet; null when done.</summary>
    internal static PlanProblem? Create(string path, string text)
    {
        string full = Path.GetFullPath(path);
        PlanProblem taken = new() { Code = "plan-exists", File = path, Message = "There is a file of this name already; nothing was written.", Wanted = "another name" };
        if (Path.Exists(full))
        {
            return taken;
        }

        string beside = $"{full}.{Guid.NewGuid():N}.tmp";
        try
        {
            WriteNew(beside, Encoding.UTF8.GetBytes(text));
            File.Move(beside, full, overwrite: false);
            return null;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            Remove(beside);
            return Path.Exists(full) ? taken : Fault(path, exception);
        }
    }

    private static PlanProblem? Write(PlanSource source, string target)
    {
        string beside = $"{target}.{Guid.NewGuid():N}.tmp";
        try
        {
            WriteNew(beside, source.Encode(source.Text));
            if (!OperatingSystem.IsWindows())
            {
                File.SetUnixFileMode(beside, File.GetUnixFileMode(target));
            }

            File.Move(beside, target, overwrite: true);
            return null;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            Remove(beside);
            return Fault(source.Name, exception);
        }
    }

    private static void WriteNew(string path, byte[] bytes)
    {
        using FileStream stream = new(path, FileMode.CreateNew, FileAccess.Write, FileShare.None);
        stream.Write(bytes);
        stream.Flush(flushToDisk: true);
    }

    private static void Remove(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // What could not be written beside the plan cannot always be removed either; the plan itself is whole.
        }
    }

    private static PlanProblem Fault(string name, Exception exception) =>
        new() { Code = "plan-file", File = name, Message = "The file cannot be written: " + exception.Message, Wanted = "a file that may be written" };
}
