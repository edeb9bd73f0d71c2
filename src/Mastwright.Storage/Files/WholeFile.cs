using System.Text;

namespace Mastwright.Storage.Files;

/// <summary>Writes files that are whole or not there.</summary>
public static class WholeFile
{
    /// <summary>Writes a file beside its place, flushes it to the disk and moves it there, over whatever was there.</summary>
    /// <exception cref="IOException">The file cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be written.</exception>
    public static void Write(string path, ReadOnlySpan<byte> content)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        using WrittenBeside target = new(path);
        target.Stream.Write(content);
        target.Keep();
    }

    /// <summary>Writes text as UTF-8, in the same way.</summary>
    /// <inheritdoc cref="Write(string, ReadOnlySpan{byte})"/>
    public static void Write(string path, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        Write(path, Encoding.UTF8.GetBytes(text));
    }

    /// <summary>Writes what a piece of work gives, in the same way; nothing stays of it where the work throws.</summary>
    /// <inheritdoc cref="Write(string, ReadOnlySpan{byte})"/>
    public static void Write(string path, Action<Stream> work)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(work);
        using WrittenBeside target = new(path);
        work(target.Stream);
        target.Keep();
    }
}
