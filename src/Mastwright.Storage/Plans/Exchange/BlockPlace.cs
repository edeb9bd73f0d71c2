namespace Mastwright.Storage.Plans.Exchange;

/// <summary>Where entries can be added to a mapping at the top of a plan, written in block style.</summary>
internal sealed record BlockPlace
{
    private string key = "";
    private bool isNew;

    /// <summary>Index in the text at which whole lines go in.</summary>
    internal int Index { get; private init; }

    /// <summary>Blanks before each entry's key.</summary>
    internal int Indent { get; private init; } = 2;

    /// <summary>Why nothing can be added; null when it can.</summary>
    internal PlanProblem? Refusal { get; private init; }

    /// <summary>The line that begins the mapping, when the plan does not have it yet.</summary>
    internal string Heading(string newLine) => isNew ? $"{key}:{newLine}" : "";

    /// <summary>The place at the end of a mapping, or at the end of the plan when the mapping is not there.</summary>
    internal static BlockPlace Of(PlanText plan, string key)
    {
        PlanNode root = plan.Root;
        PlanEntry? entry = root.Entries.Find(entry => entry.Key == key);
        if (root.Flow || (entry is not null && (entry.Value.Flow || (entry.Value.Kind != PlanNodeKind.Mapping && !(entry.Value.IsEmpty && entry.Value.Text.Length == 0)))))
        {
            return new()
            {
                Refusal = new()
                {
                    Code = "plan-style",
                    File = plan.Source.Name,
                    Line = entry?.Line ?? root.Line,
                    Column = entry?.Column ?? root.Column,
                    Path = key,
                    Message = $"'{key}' is not written with one entry below the other, so nothing can be added to it.",
                    Wanted = $"'{key}:' with its entries indented on the lines below",
                },
            };
        }

        if (entry is null)
        {
            return new() { key = key, isNew = true, Index = EndOfContent(plan.Text, root.End) };
        }

        return entry.Value.Kind == PlanNodeKind.Mapping
            ? new() { Index = NextLine(plan.Text, entry.Value.End), Indent = entry.Value.Entries[0].Column - 1 }
            : new() { Index = NextLine(plan.Text, entry.End) };
    }

    /// <summary>A new mapping goes to the end of the text, but before a line that ends the document.</summary>
    private static int EndOfContent(string text, int after)
    {
        int line = NextLine(text, after);
        while (line < text.Length)
        {
            if (text.AsSpan(line).StartsWith("..."))
            {
                return line;
            }

            int next = NextLine(text, line);
            if (next == line)
            {
                break;
            }

            line = next;
        }

        return text.Length;
    }

    private static int NextLine(string text, int from)
    {
        int end = text.IndexOf('\n', from);
        return end < 0 ? text.Length : end + 1;
    }
}
