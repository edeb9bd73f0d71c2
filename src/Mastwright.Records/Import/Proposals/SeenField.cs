namespace Mastwright.Records.Import.Proposals;

/// <summary>A place that the first rows of a file have, with what stands there.</summary>
/// <param name="Place">The column, the path or the group.</param>
/// <param name="Words">Its name in lower-case words.</param>
/// <param name="Samples">What stands there in the first rows, without what is empty.</param>
internal sealed record SeenField(string Place, IReadOnlyList<string> Words, IReadOnlyList<string> Samples)
{
    internal static SeenField Of(string place, string name, IEnumerable<string> samples) => new(place, [.. Split(name)], [.. samples.Select(sample => sample.Trim()).Where(sample => sample.Length > 0)]);

    /// <summary>Whether one of the words is among these, or the whole name is.</summary>
    internal bool Has(params ReadOnlySpan<string> names)
    {
        string whole = string.Concat(Words);
        foreach (string name in names)
        {
            if (string.Equals(name, whole, StringComparison.Ordinal) || Words.Contains(name, StringComparer.Ordinal))
            {
                return true;
            }
        }

        return false;
    }

    private static IEnumerable<string> Split(string name)
    {
        int from = 0;
        for (int at = 0; at <= name.Length; at++)
        {
            bool camel = at > from && at < name.Length && char.IsUpper(name[at]) && char.IsLower(name[at - 1]);
            if (at == name.Length || camel || !char.IsLetterOrDigit(name[at]))
            {
                if (at > from)
                {
                    yield return name[from..at].ToLowerInvariant();
                }

                from = camel ? at : at + 1;
            }
        }
    }
}

/// <summary>What a look at a file has found: its form and the places in its rows.</summary>
/// <param name="Form">The form.</param>
/// <param name="Separator">Of delimited text: what separates the cells.</param>
/// <param name="Pattern">Of lines: a pattern that fits the first of them.</param>
/// <param name="Within">Of JSON: where the array is in the document.</param>
/// <param name="Each">Of JSON: where the receptions are in a value.</param>
/// <param name="Fields">The places.</param>
internal sealed record SeenFile(SourceForm Form, char Separator, string? Pattern, string? Within, string? Each, IReadOnlyList<SeenField> Fields);
