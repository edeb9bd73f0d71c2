using Mastwright.Plans;
using Mastwright.Propagation;

namespace Mastwright.Reports.Paths;

/// <summary>How high each antenna of a link would have to stand, above the ground at its foot, in metres; null where 200 m are not enough.</summary>
/// <param name="From">Heights of the first station's antenna.</param>
/// <param name="To">Heights of the second station's antenna.</param>
internal sealed record MastHeights(EndHeights From, EndHeights To)
{
    internal static MastHeights Of(Assessment assessment, LinkReport link)
    {
        if (link.Path.Profile is not { } profile || link.Path.FromHeightMetres is not { } fromMetres || link.Path.ToHeightMetres is not { } toMetres)
        {
            return new(new(null, null, null), new(null, null, null));
        }

        double low = assessment.Settings.LowKFactor;
        double frequency = assessment.Settings.FrequencyHz;
        PathProfile back = profile.Reversed();
        return new(
            new(
                assessment.HeightForMargin(link, atStart: true),
                MastHeight.ForClearance(profile, toMetres.Median, frequency, PlanDefaults.UsualKFactor),
                MastHeight.ForClearance(profile, toMetres.Median, frequency, low)),
            new(
                assessment.HeightForMargin(link, atStart: false),
                MastHeight.ForClearance(back, fromMetres.Median, frequency, PlanDefaults.UsualKFactor),
                MastHeight.ForClearance(back, fromMetres.Median, frequency, low)));
    }
}

/// <summary>How high one antenna would have to stand, the other staying as it is.</summary>
/// <param name="ForMarginMetres">To reach the wanted margin in both directions.</param>
/// <param name="ForClearanceMetres">To clear 0.6 of the first Fresnel zone at k = 4/3.</param>
/// <param name="ForClearanceLowKMetres">To clear it at the plan's low k.</param>
internal sealed record EndHeights(double? ForMarginMetres, double? ForClearanceMetres, double? ForClearanceLowKMetres);
