namespace Mastwright.Storage.Plans;

/// <summary>Where a new key of a mapping goes, and what stands around its value.</summary>
internal static class KeyInsertion
{
    /// <summary>The index, the text before the value and the text after it, for a key after the last of a mapping that has some.</summary>
    internal static (int Index, string Lead, string Tail) Of(string text, PlanNode mapping, string key)
    {
        if (mapping.Flow)
        {
            // Right behind the last value, so that a blank before the brace stays where it is.
            PlanEntry last = mapping.Entries[^1];
            return (Math.Max(last.Value.End, last.End), $", {key}: ", "");
        }

        string newLine = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        int end = text.IndexOf('\n', Math.Max(mapping.End, mapping.Entries[^1].End));
        string indent = new(' ', mapping.Entries[0].Column - 1);
        return end < 0
            ? (text.Length, $"{newLine}{indent}{key}: ", "")
            : (end + 1, $"{indent}{key}: ", newLine);
    }
}
