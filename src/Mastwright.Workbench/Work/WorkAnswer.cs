using System.Collections.Immutable;
using System.Text;
using Mastwright.Findings;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Workbench.Work;

/// <summary>What work came to: the document of the command line, and the same as pictures, tables and sentences.</summary>
public sealed record WorkAnswer
{
    /// <summary>The document, in the shape of <c>--json</c>.</summary>
    public required string Json { get; init; }

    /// <summary>What it says in short, sentence by sentence.</summary>
    public ImmutableArray<string> Sentences { get; init; } = [];

    /// <summary>What it was made from, for pages that do more with it; null for none.</summary>
    public object? Source { get; init; }

    /// <summary>Whether the sentences are a verdict to be posted to others.</summary>
    public bool IsVerdict { get; init; }

    public ImmutableArray<WorkPicture> Pictures { get; init; } = [];

    public ImmutableArray<WorkTable> Tables { get; init; } = [];

    /// <summary>Further files that can be taken out.</summary>
    public ImmutableArray<WorkFile> Files { get; init; } = [];

    public ImmutableArray<Ledger> Ledgers { get; init; } = [];

    public ImmutableArray<Finding> Findings { get; init; } = [];

    public ImmutableArray<Assumption> Assumptions { get; init; } = [];
}

/// <summary>A picture of an answer.</summary>
/// <param name="Name">Name of its file, without an ending.</param>
/// <param name="Title">What it shows, for those who do not see it.</param>
/// <param name="Draw">Draws it.</param>
public sealed record WorkPicture(string Name, string Title, Func<Theme, Drawing> Draw);

/// <summary>A file of an answer.</summary>
/// <param name="Name">Its name, with its ending.</param>
/// <param name="MediaType">Its kind.</param>
/// <param name="Write">Makes its content.</param>
public sealed record WorkFile(string Name, string MediaType, Func<byte[]> Write);

/// <summary>A table of an answer.</summary>
/// <param name="Name">Name of its file, without an ending.</param>
/// <param name="Title">What it lists, and what its columns mean.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">Its rows.</param>
public sealed record WorkTable(string Name, string Title, ImmutableArray<WorkColumn> Columns, ImmutableArray<WorkRow> Rows)
{
    /// <summary>Whether it is folded together on the page until it is wanted.</summary>
    public bool IsLong { get; init; }

    /// <summary>Delimited text of RFC 4180.</summary>
    public string ToCsv()
    {
        StringBuilder text = new();
        Line(Columns.Select(column => column.Head));
        foreach (WorkRow row in Rows)
        {
            Line(row.Cells);
        }

        return text.ToString();

        void Line(IEnumerable<string> cells) => text.AppendJoin(',', cells.Select(Cell)).Append('\n');
    }

    // A spreadsheet reads a hyphen as a minus, and a true minus as a word.
    private static string Cell(string text)
    {
        string plain = text.Replace('−', '-');
        return plain.AsSpan().IndexOfAny("\",\r\n") >= 0 ? $"\"{plain.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : plain;
    }
}

/// <summary>A column.</summary>
/// <param name="Head">Its head, with the unit.</param>
/// <param name="IsNumber">Whether it is set to the right.</param>
public sealed record WorkColumn(string Head, bool IsNumber = false);

/// <summary>A row.</summary>
/// <param name="Cells">Its cells as text, as many as there are columns.</param>
public sealed record WorkRow(ImmutableArray<string> Cells)
{
    /// <summary>The verdict that stands before its first cell; null for none.</summary>
    public Verdict? Verdict { get; init; }

    /// <summary>Where its first cell leads; null for nowhere.</summary>
    public string? Address { get; init; }
}
