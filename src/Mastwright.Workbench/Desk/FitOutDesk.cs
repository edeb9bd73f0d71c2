using System.Collections.Immutable;
using Mastwright.Plans;
using Mastwright.Reports.Sessions;

namespace Mastwright.Workbench.Desk;

/// <summary>One fit-out with everything that was worked out of it, for a page and for the API.</summary>
/// <param name="Report">The plan with that fit-out in use.</param>
/// <param name="FitOut">What was worked out of the fit-out.</param>
/// <param name="Elements">Its elements.</param>
public sealed record FitOutDesk(PlanReport Report, FitOutReport FitOut, ImmutableArray<StationElement> Elements)
{
    /// <summary>The fit-out of a site in a reading of the plan; null where the plan has no such fit-out.</summary>
    /// <param name="view">The reading.</param>
    /// <param name="site">Key of the site.</param>
    /// <param name="fitOut">Key of the fit-out.</param>
    /// <param name="chosen">Fit-outs of other sites that stand in for those in use.</param>
    internal static FitOutDesk? Of(PlanView view, string site, string fitOut, IReadOnlyDictionary<string, string> chosen)
    {
        if (view.Session is not { } session || session.Plan.Sites.FirstOrDefault(one => one.Key == site) is not { } place || place.FitOuts.All(one => one.Key != fitOut))
        {
            return null;
        }

        Dictionary<string, string> asked = new(chosen, StringComparer.Ordinal);
        asked.Remove(site);
        if (place.InUse != fitOut)
        {
            asked[site] = fitOut;
        }

        PlanReport report = view.Report(asked);
        return report.FitOuts.FirstOrDefault(one => one.Station.Key == site) is { } found ? new(report, found, StationElements.Of(report, found)) : null;
    }

    /// <summary>The fit-out of a station that is named as SITE or SITE/FIT-OUT; null with what is wrong.</summary>
    internal static FitOutDesk? Find(PlanView view, PlanSession session, string station, out string problem)
    {
        if (StationChoice.Find(session.Plan, station, out problem) is not { } found)
        {
            return null;
        }

        if (found.FitOut is null)
        {
            problem = $"'{station}' is a neighbour, of which the plan knows no fit-out";
            return null;
        }

        return Of(view, found.Key, found.FitOut.Key, ImmutableDictionary<string, string>.Empty);
    }
}
