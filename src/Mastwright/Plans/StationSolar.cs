using Mastwright.Station;
using Mastwright.Station.Sun;
using Mastwright.Station.Supply;

namespace Mastwright.Plans;

/// <summary>The solar panel of a site's fit-out in a plan, in the weather of its site and behind the horizon of its ground.</summary>
internal static class StationSolar
{
    /// <summary>Works it out; null where the fit-out has no panel.</summary>
    /// <param name="station">A site with its fit-out.</param>
    /// <param name="supply">Its supply.</param>
    /// <param name="horizonOf">The horizon of a place's ground; null where no ground is known.</param>
    internal static SolarResult? Of(LinkStation station, SupplyResult supply, Func<LinkStation, HorizonLine?> horizonOf)
    {
        if (station.FitOut?.Solar is not { } fit || station.Site is not { } site)
        {
            return null;
        }

        fit = fit with { Weather = site.Weather, Monthly = site.Climate };
        bool asksGround = fit.HorizonDegrees.IsEmpty && supply.Batteries.Length > 0 && (fit.Weather is not null || fit.Monthly is not null);
        return SolarExamination.Of(fit, supply.Batteries.FirstOrDefault(), new(station.Position.Point.LatitudeDegrees, station.Position.Point.LongitudeDegrees), station.Key, asksGround ? horizonOf(station) : null);
    }

    /// <summary>The supply with what a panel changes: its battery is fed.</summary>
    internal static Examination Fed(Examination supply, SolarResult? solar) =>
        solar is null ? supply : supply with { Findings = [.. supply.Findings.Where(finding => finding.Code != "battery-unfed")] };
}
