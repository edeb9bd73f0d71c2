using System.Collections.Immutable;

namespace Mastwright.Storage.Plans;

/// <summary>Where a key that stands in the wrong mapping belongs.</summary>
internal static class KeySuggestion
{
    /// <summary>The mappings of the format that know a key of this name.</summary>
    internal static ImmutableArray<string> Holders(string found) =>
        [.. ShapeWalk.Mappings(PlanKeys.Shape).Where(shape => shape.IndexOf(found) >= 0).Select(shape => shape.Name).Distinct()];
}
