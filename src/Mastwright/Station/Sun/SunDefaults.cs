using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Station.Sun;

/// <summary>Every value that the solar year uses when nobody gave it: one place, each listed as an <see cref="Assumption"/> where it is used.</summary>
public static class SunDefaults
{
    /// <summary>Temperature in °C of a panel's cells under 800 W/m² at 20 °C.</summary>
    public const double NominalCellCelsius = 45;

    /// <summary>Change of a silicon panel's power with each kelvin, as a share.</summary>
    public const double PowerPerKelvin = -0.004;

    /// <summary>Share lost to dirt, ageing, wiring and the spread of panels.</summary>
    public const double LossShare = 0.10;

    /// <summary>Share of the light that the ground throws back.</summary>
    public const double GroundReflects = 0.2;

    /// <summary>Efficiency of a charge controller that follows the panel's best voltage.</summary>
    public const double ControllerEfficiency = 0.92;

    /// <summary>Days in a year on which snow or rime lies on the panel.</summary>
    public const double CoveredDays = 0;

    /// <summary>Kelvin by which a battery in its box is warmer than the air.</summary>
    public const double BatteryRiseKelvin = 3;

    /// <summary>Hours a year without service that are borne.</summary>
    public const double WantedHoursWithout = 8.76;

    /// <summary>Days that a full battery is to last without sun.</summary>
    public const double WantedDays = 5;

    /// <summary>Years that are drawn from the months' means.</summary>
    public const int MadeYears = 9;

    /// <summary>Kilometres to the place of a weather file beyond which it says nothing of a station: common practice for sites of one height and one climate; hills and coasts want nearer ones.</summary>
    public const double WeatherKilometres = 50;

    internal static Assumption Panel(string path) => new(
        "solar-panel-behaviour", "panel: cells at 45 °C under 800 W/m² and 20 °C, -0.4 % of power for each kelvin, a tenth lost to dirt, ageing and wiring", "common practice for silicon", path);

    internal static Assumption Reflects(string path) => new("ground-reflects", "ground that throws back a fifth of the light", "common practice", path + "/ground-reflects");

    internal static Assumption Controller(string path) => new("solar-controller", "charge controller of 92 % that follows the panel's best voltage", "common practice", path + "/controller-efficiency");

    internal static Assumption Covered(string path) => new("solar-covered-days", "no day with snow or rime on the panel", "assumed", path + "/covered-days");

    internal static Assumption Rise(string path) => new("solar-battery-rise", "battery 3 K warmer than the air around its box", "assumed", path + "/battery-rise");

    internal static Assumption Wanted(string path) => new("solar-hours-wanted", "8.8 hours a year without service are borne (one in a thousand)", "common practice", path + "/hours-without");

    internal static Assumption Autonomy(string path) => new("solar-days-wanted", "a full battery is to last 5 days without sun", "common practice", path + "/days-without-sun");

    internal static Assumption Level(string path) => new("solar-horizon", "a level horizon: no ground was found around the station", "assumed", path);

    internal static Assumption Elsewhere(string path, WeatherYear weather) => new(
        "solar-weather-place", $"weather and sun of {weather.Place}, as {weather.Name} says", "the weather file", path);

    internal static Assumption Lightless(string path, WeatherYear weather, ImmutableArray<int> days) => new(
        "solar-lightless-days",
        $"{(days.Length == 1 ? "a day" : FormattableString.Invariant($"{days.Length} days"))} without any light though the sun rises ({string.Join(", ", days.Take(6).Select(WeatherYear.DateOf))}{(days.Length > 6 ? " and more" : "")}), taken as {weather.Name} has them: the darkest cloud lets some through, so its record may have a gap there",
        "the weather file",
        path);

    internal static Assumption Offset(string path, WeatherYear weather, double statedHours) => new(
        "solar-weather-moment",
        FormattableString.Invariant($"light of {weather.Name} {Beside(weather.Moment - WeatherYear.MiddleOfHour)}, where its parts fit the sun best; the file says that its light is off by {statedHours:0.####} h"),
        "the weather file's own light",
        path);

    private static string Beside(double hours) => hours == 0 ? "in the middle of its hours" : FormattableString.Invariant($"{Math.Abs(hours):0.##} h {(hours > 0 ? "after" : "before")} the middle of its hours");

    internal static Assumption Weather(string path) => new(
        "solar-made-weather", FormattableString.Invariant($"{MadeYears} made years: the months' mean light and temperature as given, the days' own spread and order drawn"), "drawn from the station's key; day to day correlation 0.3, from memory", path);
}
