using System.Collections.Frozen;

namespace Mastwright.Findings;

/// <summary>The one table of English sentences for findings: what was found and what to do.</summary>
public static class FindingSentences
{
    private static readonly FrozenDictionary<string, (string Text, string Advice)> Table =
        FindingSentenceTable.Entries.ToFrozenDictionary(entry => entry.Code, entry => (entry.Text, entry.Advice), StringComparer.Ordinal);

    /// <summary>Every code that has a sentence.</summary>
    public static IEnumerable<string> Codes => Table.Keys;

    /// <summary>The sentence that says what was found, with the finding's details in place.</summary>
    public static string Text(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return Fill(Entry(finding.Code).Text, finding);
    }

    /// <summary>The sentence that says what to do; empty when there is nothing to do.</summary>
    public static string Advice(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding.Verdict == Verdict.Ok ? "" : Fill(Entry(finding.Code).Advice, finding);
    }

    private static (string Text, string Advice) Entry(string code) =>
        Table.TryGetValue(code, out (string Text, string Advice) entry) ? entry : (code, "");

    private static string Fill(string template, Finding finding)
    {
        foreach ((string name, string value) in finding.Details)
        {
            template = template.Replace("{" + name + "}", value, StringComparison.Ordinal);
        }

        return template;
    }
}
