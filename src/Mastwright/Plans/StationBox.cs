using System.Collections.Immutable;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.BoxClimate;
using Mastwright.Station.Sun;
using Mastwright.Station.Supply;

namespace Mastwright.Plans;

/// <summary>The box of a site's fit-out in a plan, and its supply at the temperatures that the box comes to.</summary>
public static class StationBox
{
    /// <summary>Works out both: the supply's heat warms the box, the box's temperature tells how the supply's battery lasts.</summary>
    /// <param name="station">A site with its fit-out.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="catalogue">Catalogue rows.</param>
    /// <exception cref="ArgumentException">The station is a neighbour.</exception>
    public static (SupplyResult Supply, BoxResult Box) Of(LinkStation station, Plan plan, StationCatalogue catalogue)
    {
        ArgumentNullException.ThrowIfNull(station);
        FitOut fitOut = station.FitOut ?? throw new ArgumentException("A neighbour has no box in a plan.", nameof(station));
        SupplyResult supply = StationSupply.Of(station, plan, catalogue);
        (ImmutableArray<BoxHour> year, string yearName, bool isMade) = fitOut.Box.IsDescribed ? YearAt(station, fitOut.Box) : ([], "", false);
        BoxResult box = fitOut.Antenna.Indoors && !fitOut.Box.IsDescribed
            ? BoxResult.Nothing
            : BoxExamination.Of(new()
            {
                FitOutPath = station.FitOutPath,
                Box = fitOut.Box,
                SupplyHeat = BoxHeat.Of(fitOut.Supply, supply),
                Catalogue = catalogue,
                Year = year,
                YearSource = yearName,
                IsMadeYear = isMade,
                YearLacks = !year.IsEmpty ? "" : station.Site?.Weather is { } weather ? $"humidity and wind in {weather.Name}" : "weather or climate at the site",
            });

        // A temperature that the plan gives wins; else the one worked out takes the place of a default.
        return fitOut.Box.TemperatureCelsius is null && box.InsideCelsius is { } inside
            ? (StationSupply.Of(station, plan, catalogue, inside), box)
            : (supply, box);
    }

    /// <summary>Temperature in the box of a site's fit-out in °C, from coldest to hottest: as the plan gives it, else as worked out; null when unknown.</summary>
    internal static Estimate? CelsiusOf(LinkStation station, BoxResult box) => station.FitOut?.Box.TemperatureCelsius ?? box.InsideCelsius;

    /// <summary>The year of weather around a box: that of the site's file, else one made from its months' means; empty where neither is known.</summary>
    internal static (ImmutableArray<BoxHour> Hours, string Name, bool IsMade) YearAt(LinkStation station, BoxFit box)
    {
        if (station.Site is not { } site)
        {
            return ([], "", false);
        }

        if (site.Weather is { } weather)
        {
            return (YearOf(weather), weather.Name, false);
        }

        SunSite place = new(station.Position.Point.LatitudeDegrees, station.Position.Point.LongitudeDegrees);
        return site.Climate is { } climate
            ? (MadeBoxYear.Of(climate, place, station.Key, box.NightHumidity ?? BoxDefaults.NightHumidity), MadeBoxYear.Name, true)
            : ([], "", false);
    }

    /// <summary>A year of weather as a box meets it; empty where its damp or its wind is not known.</summary>
    internal static ImmutableArray<BoxHour> YearOf(WeatherYear? weather) => weather is null || weather.Hours.Any(hour => double.IsNaN(hour.RelativeHumidity + hour.WindMetresPerSecond))
        ? []
        : [.. weather.Hours.Select(hour => new BoxHour(hour.Celsius, hour.RelativeHumidity, hour.Light.Direct, hour.Light.Diffuse, hour.Light.Global, hour.WindMetresPerSecond, double.IsNaN(hour.Sky) ? null : hour.Sky))];
}
