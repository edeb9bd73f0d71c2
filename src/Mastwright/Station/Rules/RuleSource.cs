namespace Mastwright.Station.Rules;

/// <summary>Where a row of law comes from, and how it was read.</summary>
/// <param name="Document">Name and number of the document.</param>
/// <param name="Edition">Edition, version or date of the text; "unknown" where the copy read did not tell.</param>
/// <param name="Clause">Clause, table or annex.</param>
/// <param name="Read">Day on which it was read, as year-month-day; empty when it is from memory.</param>
/// <param name="How">In what form it was read, such as "table quoted in a public copy"; may be empty.</param>
/// <param name="FromMemory">Whether nobody held the text: no verdict that rests on the row is then better than unknown.</param>
public sealed record RuleSource(string Document, string Edition, string Clause, string Read, string How = "", bool FromMemory = false)
{
    /// <summary>What stands in place of an edition that the copy read did not tell.</summary>
    public const string UnknownEdition = "unknown";

    /// <summary>Whether the edition of the text is known.</summary>
    public bool EditionKnown => !string.Equals(Edition, UnknownEdition, StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether a verdict may rest on the row: its text was read, in an edition that is known.</summary>
    public bool IsFirm => !FromMemory && EditionKnown;

    /// <summary>Document and clause alone, for a sentence.</summary>
    public string Short => Clause.StartsWith('(') ? Document + Clause : Join(Document, Clause);

    /// <summary>Document, edition, clause and how it was read.</summary>
    public override string ToString() =>
        Join(Document, EditionKnown ? Edition : "edition not known", Clause, FromMemory ? "from memory" : $"read {Read}", How);

    private static string Join(params ReadOnlySpan<string> parts)
    {
        List<string> said = [];
        foreach (string part in parts)
        {
            if (part.Length > 0)
            {
                said.Add(part);
            }
        }

        return string.Join(", ", said);
    }
}
