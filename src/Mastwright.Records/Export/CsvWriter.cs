using System.Text;
using Mastwright.Records.Store;

namespace Mastwright.Records.Export;

/// <summary>Delimited text of RFC 4180, with line feeds alone as line ends.</summary>
internal sealed class CsvWriter : ExportWriter
{
    private readonly StreamWriter writer;

    internal CsvWriter(Stream stream)
    {
        writer = new(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), 1 << 16, leaveOpen: true) { NewLine = "\n" };
        writer.WriteLine(string.Join(',', Columns.Select(column => column.Name)));
    }

    /// <inheritdoc/>
    public override void Dispose() => writer.Dispose();

    internal override void Write(IReadOnlyList<StoredRecord> records)
    {
        foreach (StoredRecord record in records)
        {
            for (int column = 0; column < Columns.Count; column++)
            {
                if (column > 0)
                {
                    writer.Write(',');
                }

                Cell(Columns[column].Value(record));
            }

            writer.WriteLine();
        }
    }

    internal override void End() => writer.Flush();

    private void Cell(object? value)
    {
        string text = Text(value);
        // A text that is there and empty is told from one that is not.
        bool quoted = text.AsSpan().IndexOfAny("\",\r\n") >= 0 || (value is string && text.Length == 0);
        writer.Write(quoted ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text);
    }
}
