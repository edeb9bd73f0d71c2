using System.Security.Cryptography;
using System.Text;

namespace Mastwright.Workbench.Hosting;

/// <summary>Where the server keeps what must outlive it: beside the user's other settings, readable by the user alone.</summary>
internal static class KeptFolder
{
    /// <summary>The folder, made when it is not there.</summary>
    /// <exception cref="IOException">It cannot be made.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be made.</exception>
    internal static string Of(WorkbenchOptions options)
    {
        string settings = Environment.GetFolderPath(Environment.SpecialFolder.ApplicationData, Environment.SpecialFolderOption.DoNotVerify);
        string folder = options.KeptFolder ?? Path.Combine(settings.Length > 0 ? settings : AppContext.BaseDirectory, "mastwright");
        Make(folder);
        return folder;
    }

    /// <summary>The folder of one plan below it; not made here.</summary>
    internal static string OfPlan(string keptFolder, string planPath) =>
        Path.Combine(keptFolder, "plans", Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(planPath)))[..24]);

    /// <summary>Makes a folder that the user alone may read, where it is not there.</summary>
    internal static void Make(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(folder);
        }
        else
        {
            Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }
    }

    /// <summary>Writes a file that the user alone may read, whole or not at all.</summary>
    internal static void Write(string path, ReadOnlySpan<byte> content)
    {
        string beside = $"{path}.{Guid.NewGuid():N}.part";
        FileStreamOptions options = new() { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        using (FileStream stream = new(beside, options))
        {
            stream.Write(content);
            stream.Flush(flushToDisk: true);
        }

        File.Move(beside, path, overwrite: true);
    }
}
