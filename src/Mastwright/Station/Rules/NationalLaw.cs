using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Station.Rules;

/// <summary>What is taken for granted of a country whose own text was not read, where a law binds it to the rows.</summary>
internal static class NationalLaw
{
    internal static ImmutableArray<Assumption> Assumed(RadioRegion region) =>
        region.Assumes.Length == 0 ? [] : [new("national-law", region.Assumes, region.Law, "region")];
}
