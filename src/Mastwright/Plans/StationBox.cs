using System.Collections.Immutable;
using System.Globalization;
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
                YearLacks = !year.IsEmpty ? "" : Lacks(station),
            });

        // A temperature that the plan gives wins; else the one worked out takes the place of a default.
        return fitOut.Box.TemperatureCelsius is null && box.InsideCelsius is { } inside
            ? (StationSupply.Of(station, plan, catalogue, inside), box)
            : (supply, box);
    }

    /// <summary>What keeps a year of weather from the box.</summary>
    private static string Lacks(LinkStation station) => station.Site?.Weather is not { } weather ? "weather or climate at the site"
        : IsElsewhere(station, weather, out double kilometres)
            ? string.Create(CultureInfo.InvariantCulture, $"a weather file of the place ({weather.Name} is of {weather.Place}, {kilometres:0} km from here; further than {SunDefaults.WeatherKilometres:0} km it tells nothing of this box's year)")
            : $"humidity and wind in {weather.Name}";

    /// <summary>Whether a weather file is of a place too far away to tell of this one: the panel's own limit.</summary>
    private static bool IsElsewhere(LinkStation station, WeatherYear weather, out double kilometres)
    {
        kilometres = weather.Place?.KilometresTo(PlaceOf(station)) ?? 0;
        return kilometres > SunDefaults.WeatherKilometres;
    }

    private static SunSite PlaceOf(LinkStation station) => new(station.Position.Point.LatitudeDegrees, station.Position.Point.LongitudeDegrees);

    /// <summary>Temperature in the box of a site's fit-out in °C, from coldest to hottest: as the plan gives it, else as worked out; null when unknown.</summary>
    internal static Estimate? CelsiusOf(LinkStation station, BoxResult box) => station.FitOut?.Box.TemperatureCelsius ?? box.InsideCelsius;

    /// <summary>The year of weather around a box: that of the site's file, where it is of the place, else one made from its months' means; empty where neither is known.</summary>
    internal static (ImmutableArray<BoxHour> Hours, string Name, bool IsMade) YearAt(LinkStation station, BoxFit box)
    {
        if (station.Site is not { } site)
        {
            return ([], "", false);
        }

        if (site.Weather is { } weather)
        {
            return (IsElsewhere(station, weather, out _) ? [] : YearOf(weather), weather.Name, false);
        }

        return site.Climate is { } climate
            ? (MadeBoxYear.Of(climate, PlaceOf(station), station.Key, box.NightHumidity ?? BoxDefaults.NightHumidity), MadeBoxYear.Name, true)
            : ([], "", false);
    }

    /// <summary>A year of weather as a box meets it; empty where its damp or its wind is not known.</summary>
    private static ImmutableArray<BoxHour> YearOf(WeatherYear? weather) => weather is null || weather.Hours.Any(hour => double.IsNaN(hour.RelativeHumidity + hour.WindMetresPerSecond))
        ? []
        : [.. weather.Hours.Select(hour => new BoxHour(hour.Celsius, hour.RelativeHumidity, hour.Light.Direct, hour.Light.Diffuse, hour.Light.Global, hour.WindMetresPerSecond, double.IsNaN(hour.Sky) ? null : hour.Sky))];
}
