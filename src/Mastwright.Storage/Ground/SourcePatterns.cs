using System.IO.Enumeration;

namespace Mastwright.Storage.Ground;

/// <summary>From the files, folders and globs of a source to files, in the order of their names.</summary>
/// <remarks>
/// A folder stands for every file below it in a known format, hidden folders (with a leading dot) left out. In a glob, * and ? stand for characters of one name and ** for any
/// number of folders. A pattern that leaves the plan's folder is refused unless that is allowed.
/// </remarks>
internal sealed class SourcePatterns(string planFolder, bool allowOutside)
{
    private const int MostFiles = 100_000;
    private const int DeepestFolder = 16;

    private static readonly EnumerationOptions Quiet = new() { IgnoreInaccessible = true, RecurseSubdirectories = false };

    /// <summary>A folder that is a link is followed where the plan names it, not where it turns up below: it may lead in a circle.</summary>
    private static readonly EnumerationOptions RealFolders = new()
    {
        IgnoreInaccessible = true,
        AttributesToSkip = FileAttributes.Hidden | FileAttributes.System | FileAttributes.ReparsePoint,
    };

    private readonly string _root = Path.TrimEndingDirectorySeparator(Path.GetFullPath(planFolder));

    /// <summary>The full path of one file or folder that the plan names.</summary>
    /// <exception cref="GroundFileException">It leaves the plan's folder.</exception>
    internal string Resolve(string pattern)
    {
        if (pattern.Length == 0 || pattern.Contains('\0', StringComparison.Ordinal))
        {
            throw new GroundFileException(pattern, "it is no path", "give a file, a folder or a glob relative to the plan");
        }

        string full = Path.GetFullPath(pattern.Replace('\\', '/'), _root);
        bool isInside = full == _root || full.StartsWith(_root + Path.DirectorySeparatorChar, StringComparison.Ordinal);
        return isInside || allowOutside
            ? full
            : throw new GroundFileException(
                pattern, "it leaves the plan's folder", "keep ground files below the plan's folder, or allow files outside it on the command line");
    }

    /// <summary>The files of a pattern.</summary>
    /// <exception cref="GroundFileException">There is no such file, or the pattern is refused.</exception>
    internal IReadOnlyList<string> Files(string pattern)
    {
        string full = Resolve(pattern);
        if (File.Exists(full))
        {
            return [full];
        }

        List<string> found = [];
        if (Directory.Exists(full))
        {
            Collect(full, ["**", "*"], 0, 0, found);
            found.RemoveAll(file => GroundFileFormat.Of(file) is null);
        }
        else if (pattern.AsSpan().IndexOfAny('*', '?') >= 0)
        {
            string[] parts = full.Split(Path.DirectorySeparatorChar);
            int firstWild = Array.FindIndex(parts, part => part.AsSpan().IndexOfAny('*', '?') >= 0);
            string start = string.Join(Path.DirectorySeparatorChar, parts[..firstWild]);
            Collect(start.Length == 0 ? Path.DirectorySeparatorChar.ToString() : start, parts[firstWild..], 0, 0, found);
            found.RemoveAll(file => GroundFileFormat.Of(file) is null);
        }

        if (found.Count == 0)
        {
            throw new GroundFileException(pattern, "there is no height or cover file by that name", "check the path; it counts from the plan's folder");
        }

        found.Sort(StringComparer.Ordinal);
        return found;
    }

    private static void Collect(string folder, string[] parts, int part, int depth, List<string> found)
    {
        if (depth > DeepestFolder || !Directory.Exists(folder))
        {
            return;
        }

        if (parts[part] == "**")
        {
            if (part + 1 < parts.Length)
            {
                Collect(folder, parts, part + 1, depth, found);
            }

            foreach (string below in Directory.EnumerateDirectories(folder, "*", RealFolders))
            {
                if (!Path.GetFileName(below).StartsWith('.'))
                {
                    Collect(below, parts, part, depth + 1, found);
                }
            }

            return;
        }

        bool isLast = part == parts.Length - 1;
        foreach (string entry in isLast ? Directory.EnumerateFiles(folder, "*", Quiet) : Directory.EnumerateDirectories(folder, "*", Quiet))
        {
            if (!FileSystemName.MatchesSimpleExpression(parts[part], Path.GetFileName(entry), ignoreCase: true))
            {
                continue;
            }

            if (!isLast)
            {
                Collect(entry, parts, part + 1, depth + 1, found);
            }
            else if (found.Count >= MostFiles)
            {
                throw new GroundFileException(folder, $"it holds more than {MostFiles} files", "give a smaller folder or a narrower pattern");
            }
            else
            {
                found.Add(entry);
            }
        }
    }
}
