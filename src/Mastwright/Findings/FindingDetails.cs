using System.Collections.Immutable;

namespace Mastwright.Findings;

/// <summary>Words and numbers for a finding's sentence.</summary>
internal static class FindingDetails
{
    internal static ImmutableSortedDictionary<string, string> Of(params ReadOnlySpan<(string Name, string Value)> details)
    {
        ImmutableSortedDictionary<string, string>.Builder builder = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach ((string name, string value) in details)
        {
            builder[name] = value;
        }

        return builder.ToImmutable();
    }
}
