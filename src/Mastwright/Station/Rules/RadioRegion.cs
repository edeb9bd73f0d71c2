using System.Collections.Immutable;

namespace Mastwright.Station.Rules;

/// <summary>A place whose law the catalogue knows.</summary>
/// <param name="Key">Key, as a plan writes it: "EU".</param>
/// <param name="Name">Name in a sentence: "the European Union".</param>
/// <param name="Covers">Other ways in which a plan may write it: country codes.</param>
/// <param name="Law">What the rows come down to: the law behind the standards.</param>
/// <param name="Exposure">Key of the region whose limits of exposure hold here; the same when left out.</param>
/// <param name="Note">What to watch for; may be empty.</param>
public sealed record RadioRegion(string Key, string Name, ImmutableArray<string> Covers, string Law, string Exposure, string Note = "")
{
    /// <summary>Key of the region whose rows are held against it, besides its own; the same when it has its own only.</summary>
    public string Rows { get; init; } = Key;

    /// <summary>What of its law was not read, so that no verdict is better than unknown; empty when the rows are its law.</summary>
    public string Unread { get; init; } = "";

    /// <summary>What is assumed of a country's own law, listed with every verdict; may be empty.</summary>
    public string Assumes { get; init; } = "";

    /// <summary>Where it says that adjacent rows may be used as one band; empty when that was not read.</summary>
    public string Adjacent { get; init; } = "";

    /// <summary>Whether the rows under a key are held against it.</summary>
    public bool HasRowsOf(string key) => string.Equals(Key, key, StringComparison.OrdinalIgnoreCase) || string.Equals(Rows, key, StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether a plan's word means this region.</summary>
    public bool Is(string word) =>
        string.Equals(Key, word, StringComparison.OrdinalIgnoreCase) || Covers.Any(other => string.Equals(other, word, StringComparison.OrdinalIgnoreCase));

    /// <summary>The key.</summary>
    public override string ToString() => Key;
}

/// <summary>A place whose law was not read, so that nothing is said of it.</summary>
/// <param name="Key">Country code.</param>
/// <param name="Name">Name in a sentence.</param>
/// <param name="Reason">Which text is wanted, and why it is missing.</param>
public sealed record MissingRegion(string Key, string Name, string Reason);

/// <summary>A condition under which a radio was approved.</summary>
/// <param name="Key">Key of the row.</param>
/// <param name="Region">Key of its region.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="Text">The condition in our own words, a whole sentence.</param>
/// <param name="Source">Document, edition, clause, and how it was read.</param>
public sealed record ApprovalCondition(string Key, string Region, ApprovalSubject Subject, string Text, RuleSource Source);

/// <summary>What a condition of approval is about.</summary>
public enum ApprovalSubject
{
    /// <summary>Type and gain of the antenna.</summary>
    Antenna,

    /// <summary>An amplifier outside the radio.</summary>
    Amplifier,
}
