using System.Collections.Immutable;

namespace Mastwright.Evidence;

/// <summary>The words for the kinds of entries, in stores and in commands.</summary>
public static class SiteLogKinds
{
    /// <summary>The word of each kind, in the order of the kinds.</summary>
    public static ImmutableArray<string> Words { get; } = ["fit-out", "firmware", "settings", "fault", "weather"];

    /// <summary>The word of a kind.</summary>
    public static string Word(this SiteLogKind kind) => Words[(int)kind];
}
