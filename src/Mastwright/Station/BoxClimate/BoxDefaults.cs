using Mastwright.Findings;

namespace Mastwright.Station.BoxClimate;

/// <summary>Every value of the box that is used when nobody gave it: one place, each listed as assumed where it is used.</summary>
public static class BoxDefaults
{
    /// <summary>Sun square to its beam on a clear day, in W/m²: common practice; IEC 60068-2-5 tests with 1120 (from memory).</summary>
    public const double SunWattsPerSquareMetre = 1000;

    /// <summary>Share of sun and of open sky that comes through to a box in the shade: what is scattered and reflected. Common practice.</summary>
    public const double ShadedShare = 0.2;

    /// <summary>Relative humidity of a damp cold night, as a share: common practice.</summary>
    public const double NightHumidity = 0.95;

    /// <summary>Share of a weather station's wind, measured 10 m above open ground, that reaches a box: common practice.</summary>
    public const double WindShare = 0.5;

    /// <summary>Kelvins by which the air of a clear day swings about its mean, up at 15 h and down at 3 h: from memory, as in <see cref="Sun.MonthlyClimate"/>.</summary>
    public const double ClearDaySwingKelvin = 5;

    /// <summary>Temperature in °C at which a box is shut.</summary>
    public const double ShutCelsius = 20;

    /// <summary>Relative humidity at which a box is shut, as a share.</summary>
    public const double ShutHumidity = 0.5;

    /// <summary>Kelvins to a rating within which a part is called tight: common practice.</summary>
    public const double TightKelvin = 5;

    /// <summary>Suction in kPa of the dust test of IEC 60529, clause 13.4, category 1 (20 mbar; from memory).</summary>
    public const double DustTestKilopascals = 2;

    /// <summary>Head of water in kPa of the test under water of IEC 60529, numeral 7: 1 m.</summary>
    public const double UnderWaterTestKilopascals = 9.81;

    internal static Assumption Sun(string path) => new(
        "box-sun", FormattableString.Invariant($"in the hottest hour a sun of {SunWattsPerSquareMetre:0} W/m² on the box's broadest side, and no wind"), "common practice", path + "/sun");

    internal static Assumption Open(string path) => new("box-open", "the box sees the whole sun and the whole sky", "assumed", path + "/sun");

    internal static Assumption Shaded(string path) => new(
        "box-shaded", FormattableString.Invariant($"a box in the shade still meets {ShadedShare * 100:0} % of sun and open sky"), "common practice", path + "/sun");

    internal static Assumption Mounting(string path) => new("box-mounting", "the box has its back against a wall", "assumed", path + "/mounting");

    internal static Assumption Night(string path) => new(
        "box-night", FormattableString.Invariant($"in the coldest night a clear sky, no wind and a humidity of {NightHumidity * 100:0} %"), "common practice", path + "/night-humidity");

    internal static Assumption Heat(string path) => new(
        "box-heat", "everything behind the last cable of the supply stands in the box, and all that it takes turns into heat there", "assumed", path + "/heat");

    internal static Assumption Rise(BoxPart part) => new("box-part-rise", "a part no warmer than the air in the box", "assumed", part.PlanPath + "/rise");

    internal static Assumption Wind(string path) => new(
        "box-wind", FormattableString.Invariant($"{WindShare * 100:0} % of the weather file's wind at the box"), "common practice", path);

    internal static Assumption MadeYear(string path, double humidity) => new(
        "box-made-year",
        FormattableString.Invariant($"through the year the months' light and air, {humidity * 100:0} % humid in each day's coldest hour, a sky between overcast and clear by the day's light, and no wind"),
        "common practice", path + "/night-humidity");

    internal static Assumption MadeOutside(string path) => new(
        "box-made-outside", "the coldest and the hottest air outside of a year made from the months' means", "common practice", path + "/outside");

    internal static Assumption Sky(string path) => new("box-sky", "a clear sky in every hour whose sky the weather file does not tell, by day and by night", "on the cold side", path);

    internal static Assumption Shut(string path) => new(
        "box-shut", FormattableString.Invariant($"the box is shut at {ShutCelsius:0} °C and {ShutHumidity * 100:0} %"), "assumed", path);
}
