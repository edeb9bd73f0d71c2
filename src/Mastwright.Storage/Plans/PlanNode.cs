namespace Mastwright.Storage.Plans;

/// <summary>What a value is.</summary>
internal enum PlanNodeKind
{
    /// <summary>One piece of text.</summary>
    Scalar,

    /// <summary>Keys and values.</summary>
    Mapping,

    /// <summary>A list.</summary>
    Sequence,
}

/// <summary>How a scalar is written.</summary>
internal enum PlanQuoting
{
    /// <summary>Without quotes.</summary>
    Plain,

    /// <summary>In single quotes.</summary>
    Single,

    /// <summary>In double quotes.</summary>
    Double,
}

/// <summary>One value of a plan file and the characters it is written with.</summary>
internal sealed class PlanNode
{
    /// <summary>The file that it stands in.</summary>
    internal required PlanSource Source { get; init; }

    /// <summary>What it is.</summary>
    internal required PlanNodeKind Kind { get; init; }

    /// <summary>Index of its first character in the source's text.</summary>
    internal required int Start { get; init; }

    /// <summary>Index after its last character.</summary>
    internal int End { get; set; }

    /// <summary>Line from 1.</summary>
    internal required int Line { get; init; }

    /// <summary>Column from 1.</summary>
    internal required int Column { get; init; }

    /// <summary>The text of a scalar, quotes resolved.</summary>
    internal string Text { get; init; } = "";

    /// <summary>How a scalar is written.</summary>
    internal PlanQuoting Quoting { get; init; }

    /// <summary>Whether a mapping or a list is written in braces or brackets.</summary>
    internal bool Flow { get; init; }

    /// <summary>Whether what stands here was refused as it was read: its value is not known, and nothing more is said of it.</summary>
    internal bool IsRefused { get; init; }

    /// <summary>Whether keys of the mapping may stand elsewhere, so that none counts as missing.</summary>
    internal bool LacksKeys { get; set; }

    /// <summary>Entries of a mapping, in their order.</summary>
    internal List<PlanEntry> Entries { get; } = [];

    /// <summary>Items of a list, in their order.</summary>
    internal List<PlanNode> Items { get; } = [];

    /// <summary>Whether nothing stands here: a key without a value.</summary>
    internal bool IsEmpty => Kind == PlanNodeKind.Scalar && Quoting == PlanQuoting.Plain && Text is "" or "~" or "null";

    /// <summary>The value of a key; null when the mapping does not have it.</summary>
    internal PlanNode? Find(string key)
    {
        foreach (PlanEntry entry in Entries)
        {
            if (entry.Key == key)
            {
                return entry.Value;
            }
        }

        return null;
    }
}

/// <summary>A key and its value.</summary>
/// <param name="Key">The key.</param>
/// <param name="Start">Index of the key's first character.</param>
/// <param name="End">Index after the key's last character.</param>
/// <param name="Line">Line of the key from 1.</param>
/// <param name="Column">Column of the key from 1.</param>
/// <param name="Value">The value.</param>
internal sealed record PlanEntry(string Key, int Start, int End, int Line, int Column, PlanNode Value);
