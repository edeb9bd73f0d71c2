using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Ground;
using Mastwright.Network.Reach;

namespace Mastwright.Plans;

/// <summary>What is to be said of a reach map once its losses are known.</summary>
public static class ReachFindings
{
    /// <summary>One finding for each tile that is missing or has a void, and one where no cover is known at all.</summary>
    /// <param name="station">The station of the map.</param>
    /// <param name="field">Its losses.</param>
    /// <param name="ground">The ground they were worked out over.</param>
    public static ImmutableArray<Finding> Of(LinkStation station, ReachField field, GroundExtent ground)
    {
        ArgumentNullException.ThrowIfNull(station);
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(ground);
        ImmutableArray<Finding>.Builder findings = ImmutableArray.CreateBuilder<Finding>();
        foreach (ReachGap gap in field.Gaps)
        {
            findings.Add(new()
            {
                Code = "reach-ground-missing",
                Subject = station.Subject,
                Verdict = Verdict.Unknown,
                Source = "ground files",
                Details = FindingDetails.Of(
                    ("name", station.Name),
                    ("what", gap.IsVoid ? "a void in" : "no tile"),
                    ("tile", gap.Tile),
                    ("cells", gap.Cells.ToString(CultureInfo.InvariantCulture)),
                    ("from", string.Create(CultureInfo.InvariantCulture, $"{gap.NearestMetres / 1000:0.0} km")),
                    ("bearing", string.Create(CultureInfo.InvariantCulture, $"{gap.BearingDegrees:0}°"))),
            });
        }

        if (!ground.HasCover && ground.HasBareGround)
        {
            findings.Add(new()
            {
                Code = "reach-without-cover",
                Subject = station.Subject,
                Verdict = Verdict.Unknown,
                Source = "docs/physics/prediction-error.md",
                Details = FindingDetails.Of(("name", station.Name)),
            });
        }

        return findings.ToImmutable();
    }
}
