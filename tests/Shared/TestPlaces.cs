namespace Mastwright.Tests;

/// <summary>Where the tests find the repository and the reference folder.</summary>
internal static class TestPlaces
{
    /// <summary>Root folder of the repository: the nearest folder above the test program that holds the solution.</summary>
    public static string Repository { get; } = FindRepository();

    /// <summary>
    /// A file or folder below the reference folder (MASTWRIGHT_REFERENCE, else ../shared/reference beside the repository).
    /// Skips the test when it is absent, or fails it where CI is set.
    /// </summary>
    public static string Reference(params string[] parts)
    {
        string root = Environment.GetEnvironmentVariable("MASTWRIGHT_REFERENCE") is { Length: > 0 } given
            ? given
            : Path.Combine(Repository, "..", "shared", "reference");
        string path = Path.GetFullPath(Path.Combine([root, .. parts]));
        if (!Path.Exists(path))
        {
            string reason = $"reference: '{string.Join('/', parts)}' is not in the reference folder (MASTWRIGHT_REFERENCE)";
            if (Environment.GetEnvironmentVariable("CI") is { Length: > 0 })
            {
                Assert.Fail(reason);
            }

            Assert.Skip(reason);
        }

        return path;
    }

    private static string FindRepository()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Mastwright.slnx")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("The tests run from inside the repository.");
    }
}
