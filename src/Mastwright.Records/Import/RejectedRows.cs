using System.Globalization;
using System.Text;

namespace Mastwright.Records.Import;

/// <summary>Rows that are no records: counted by reason, and kept as they were in a file beside, which is made with the first of them.</summary>
/// <param name="path">The file; one that is there is written over. Null where they are only counted.</param>
public sealed class RejectedRows(string? path) : IDisposable
{
    private readonly SortedDictionary<string, long> reasons = new(StringComparer.Ordinal);
    private StreamWriter? writer;

    /// <summary>Where the rows are, once there are any.</summary>
    public string Path => path ?? "";

    /// <summary>How many rows each reason has met.</summary>
    public IReadOnlyDictionary<string, long> Reasons => reasons;

    /// <summary>How many rows in all.</summary>
    public long Count => reasons.Values.Sum();

    internal void Add(string file, long line, string reason, ReadOnlySpan<char> row)
    {
        reasons[reason] = reasons.GetValueOrDefault(reason) + 1;
        if (path is null)
        {
            return;
        }

        if (writer is null)
        {
            writer = new(path, append: false, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
            writer.WriteLine("file,line,reason,row");
        }

        writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Quoted(file)},{line},{Quoted(reason)},{Quoted(row.ToString())}"));
    }

    internal void Flush() => writer?.Flush();

    /// <summary>Closes the file.</summary>
    public void Dispose() => writer?.Dispose();

    private static string Quoted(string text) => $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
