namespace Mastwright.Storage.Jobs;

/// <summary>Where a machine keeps what programs can make again.</summary>
public static class CacheFolder
{
    private const string Name = "mastwright";

    /// <summary>
    /// The program's folder: below XDG_CACHE_HOME where that is set to a full path (XDG Base Directory Specification), else
    /// ~/Library/Caches on macOS, the local application data on Windows, and ~/.cache elsewhere. It need not be there yet.
    /// </summary>
    public static string Usual { get; } = Of(Environment.GetEnvironmentVariable("XDG_CACHE_HOME"), Environment.GetFolderPath(Environment.SpecialFolder.UserProfile));

    /// <summary>The folder for a setting of XDG_CACHE_HOME and a home folder; where there is no home, one below the folder for temporary files.</summary>
    internal static string Of(string? xdgCacheHome, string home)
    {
        if (!string.IsNullOrEmpty(xdgCacheHome) && Path.IsPathFullyQualified(xdgCacheHome))
        {
            return Path.Combine(xdgCacheHome, Name);
        }

        if (OperatingSystem.IsWindows())
        {
            return Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData), Name, "cache");
        }

        return home.Length == 0
            ? Path.Combine(Path.GetTempPath(), Name)
            : Path.Combine(home, OperatingSystem.IsMacOS() ? Path.Combine("Library", "Caches") : ".cache", Name);
    }
}
