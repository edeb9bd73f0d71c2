namespace Mastwright.Storage.Ground;

/// <summary>A height or cover file cannot be used: which one, what was found, and what would be right.</summary>
public sealed class GroundFileException : Exception
{
    /// <summary>Makes an empty complaint.</summary>
    public GroundFileException()
        : this("", "it cannot be used", "")
    {
    }

    /// <summary>Makes a complaint about a file nobody named.</summary>
    public GroundFileException(string message)
        : this("", message, "")
    {
    }

    /// <summary>Makes a complaint about a file nobody named, with its cause.</summary>
    public GroundFileException(string message, Exception innerException)
        : this("", message, "", innerException)
    {
    }

    /// <summary>Makes a complaint about a file.</summary>
    /// <param name="file">The file as the plan or the caller names it.</param>
    /// <param name="found">What is wrong with it.</param>
    /// <param name="right">What would be right.</param>
    /// <param name="innerException">The cause, if there is one.</param>
    public GroundFileException(string file, string found, string? right, Exception? innerException = null)
        : base(right?.Length > 0 ? $"{file}: {found}; {right}" : $"{file}: {found}", innerException)
    {
        FilePath = file;
        Found = found;
        Right = right ?? "";
    }

    /// <summary>The file.</summary>
    public string FilePath { get; } = "";

    /// <summary>What is wrong with it.</summary>
    public string Found { get; } = "";

    /// <summary>What would be right.</summary>
    public string Right { get; } = "";
}
