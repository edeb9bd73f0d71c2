namespace Mastwright.Storage.Plans;

/// <summary>The folder of a plan: files that the plan names stay inside it, unless the command line allows more.</summary>
internal sealed class PlanFolder(string folder, bool allowOutside)
{
    /// <summary>Full path of the folder.</summary>
    internal string Folder { get; } = System.IO.Path.GetFullPath(folder);

    /// <summary>Why a file or pattern of files may not be named; null when it may.</summary>
    internal string? Refusal(string relative)
    {
        if (relative.Contains('\\', StringComparison.Ordinal))
        {
            return "Write '/' between folders, so that the plan reads the same on every machine.";
        }

        if (allowOutside)
        {
            return null;
        }

        if (System.IO.Path.IsPathRooted(relative) || (relative.Length > 1 && relative[1] == ':'))
        {
            return "The file is outside the plan's folder: name it relative to the plan.";
        }

        int depth = 0;
        foreach (string step in relative.Split('/'))
        {
            depth += step switch { ".." => -1, "" or "." => 0, _ => 1 };
            if (depth < 0)
            {
                return "The file is outside the plan's folder; move it inside, or allow files outside on the command line.";
            }
        }

        return null;
    }

    /// <summary>The full path of one file; null with why when it may not be read. Links are followed and held to the folder too.</summary>
    internal string? Resolve(string relative, out string refusal)
    {
        if (Refusal(relative) is { } reason)
        {
            refusal = reason;
            return null;
        }

        try
        {
            string full = System.IO.Path.GetFullPath(System.IO.Path.Combine(Folder, relative));
            refusal = "The file is a link to a place outside the plan's folder.";
            return allowOutside || IsBelow(Real(full), Real(Folder)) ? full : null;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            refusal = "The file cannot be reached: " + exception.Message;
            return null;
        }
    }

    private static bool IsBelow(string path, string folder) =>
        path.StartsWith(folder.EndsWith(System.IO.Path.DirectorySeparatorChar) ? folder : folder + System.IO.Path.DirectorySeparatorChar, StringComparison.Ordinal);

    /// <summary>The path with every link on the way followed, at most 40 of them.</summary>
    private static string Real(string full)
    {
        string real = System.IO.Path.GetPathRoot(full) ?? "";
        Queue<string> steps = new(full[real.Length..].Split(System.IO.Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries));
        int links = 0;
        while (steps.TryDequeue(out string? step))
        {
            string next = System.IO.Path.Combine(real, step);
            string? target = new FileInfo(next).LinkTarget ?? new DirectoryInfo(next).LinkTarget;
            if (target is null)
            {
                real = next;
                continue;
            }

            if (++links > 40)
            {
                throw new IOException("too many links, one to another");
            }

            string whole = System.IO.Path.GetFullPath(System.IO.Path.Combine(real, target));
            real = System.IO.Path.GetPathRoot(whole) ?? "";
            steps = new(whole[real.Length..].Split(System.IO.Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries).Concat(steps));
        }

        return real;
    }
}
