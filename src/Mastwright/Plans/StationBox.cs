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
        BoxResult box = fitOut.Antenna.Indoors && !fitOut.Box.IsDescribed
            ? BoxResult.Nothing
            : BoxExamination.Of(new()
            {
                FitOutPath = station.FitOutPath,
                Box = fitOut.Box,
                SupplyHeat = BoxHeat.Of(fitOut.Supply, supply),
                Catalogue = catalogue,
                Year = YearOf(station.Site?.Weather),
                YearSource = station.Site?.Weather?.Name ?? "",
            });

        // A temperature that the plan gives wins; else the one worked out takes the place of a default.
        return fitOut.Box.TemperatureCelsius is null && box.InsideCelsius is { } inside
            ? (StationSupply.Of(station, plan, catalogue, inside), box)
            : (supply, box);
    }

    /// <summary>Temperature in the box of a site's fit-out in °C, from coldest to hottest: as the plan gives it, else as worked out; null when unknown.</summary>
    internal static Estimate? CelsiusOf(LinkStation station, BoxResult box) => station.FitOut?.Box.TemperatureCelsius ?? box.InsideCelsius;

    /// <summary>A year of weather as a box meets it; empty where its damp or its wind is not known.</summary>
    internal static ImmutableArray<BoxHour> YearOf(WeatherYear? weather) => weather is null || weather.Hours.Any(hour => double.IsNaN(hour.RelativeHumidity + hour.WindMetresPerSecond))
        ? []
        : [.. weather.Hours.Select(hour => new BoxHour(hour.Celsius, hour.RelativeHumidity, hour.Light.Direct, hour.Light.Diffuse, hour.Light.Global, hour.WindMetresPerSecond, double.IsNaN(hour.Sky) ? null : hour.Sky))];
}
