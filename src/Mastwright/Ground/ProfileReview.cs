using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;

namespace Mastwright.Ground;

/// <summary>Reviews a profile for ground that nobody knows.</summary>
public static class ProfileReview
{
    /// <summary>One finding for each stretch without a height: no tile, or a void that nothing fills.</summary>
    /// <param name="profile">The profile.</param>
    /// <param name="subject">What the profile is of, such as a pair of stations.</param>
    public static ImmutableArray<Finding> Gaps(TerrainProfile profile, string subject)
    {
        ArgumentNullException.ThrowIfNull(profile);
        ArgumentNullException.ThrowIfNull(subject);
        return
        [
            .. profile.Gaps.Select(gap => new Finding
            {
                Code = gap.IsVoid ? "ground-void" : "ground-missing",
                Subject = subject,
                Verdict = Verdict.Unknown,
                Source = "ground files",
                Details = ImmutableSortedDictionary<string, string>.Empty
                    .Add("tile", gap.Tile)
                    .Add("from", string.Create(CultureInfo.InvariantCulture, $"{gap.FromMetres / 1000:0.00} km"))
                    .Add("to", string.Create(CultureInfo.InvariantCulture, $"{gap.ToMetres / 1000:0.00} km")),
            }),
        ];
    }
}
