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
            return Fault(source, exception);
        }
    }

    private static PlanProblem? Write(PlanSource source, string target)
    {
        string beside = $"{target}.{Guid.NewGuid():N}.tmp";
        try
        {
            using (FileStream stream = new(beside, FileMode.CreateNew, FileAccess.Write, FileShare.None))
            {
                stream.Write(source.Encode(source.Text));
                stream.Flush(flushToDisk: true);
            }

            if (!OperatingSystem.IsWindows())
            {
                File.SetUnixFileMode(beside, File.GetUnixFileMode(target));
            }

            File.Move(beside, target, overwrite: true);
            return null;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            File.Delete(beside);
            return Fault(source, exception);
        }
    }

    private static PlanProblem Fault(PlanSource source, Exception exception) =>
        new() { Code = "plan-file", File = source.Name, Message = "The file cannot be written: " + exception.Message, Wanted = "a file that may be written" };
}
