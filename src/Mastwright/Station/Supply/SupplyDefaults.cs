using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.Supply;

/// <summary>Every value that supply and hold-up use when nobody gave it: one place, each listed as an <see cref="Assumption"/> where it is used.</summary>
public static class SupplyDefaults
{
    /// <summary>Temperature around a cable in °C.</summary>
    public const double CableCelsius = 40;

    /// <summary>Pairs that a passive injector feeds.</summary>
    public const int InjectorPairs = 2;

    /// <summary>Share of time that a radio transmits.</summary>
    public const double TransmitShare = 0.01;

    /// <summary>Share of time that a board is busy.</summary>
    public const double BusyShare = 0.1;

    /// <summary>Heat that a still-air surface sheds, in W/(m²·K): convection and radiation together.</summary>
    public const double SurfaceWattsPerSquareMetreKelvin = 10;

    /// <summary>Charge current that a charger adds to its loads, as a share of the battery's capacity an hour.</summary>
    public const double ChargeRate = 0.2;

    /// <summary>Hours that a battery is wanted to last.</summary>
    public const double WantedHours = 24;

    /// <summary>Hours in which an emptied battery is wanted to be full again.</summary>
    public const double WantedRechargeHours = 24;

    /// <summary>Share of a rating above which its headroom is called tight.</summary>
    public const double WantedShareOfRating = 0.8;

    /// <summary>Share by which a voltage is to stay above the least that is needed, or it is called tight.</summary>
    public const double WantedVoltageMargin = 0.05;

    /// <summary>How much more than the peak current a fuse is to carry, as a factor.</summary>
    public const double FuseFactor = 1.25;

    /// <summary>Temperature of a box outdoors in °C.</summary>
    public static Estimate BoxCelsius => Estimate.Of(-10, 15, 40);

    /// <summary>Age of a battery in years: what it is to last over.</summary>
    public static Estimate BatteryYears => Estimate.Between(0, 5);

    /// <summary>Share of its charge that a battery has when it takes over.</summary>
    public static Estimate ChargeAtStart => Estimate.Of(0.9, 0.95, 1);

    internal static Assumption Box(string planPath) => new(
        "box-temperature", "box between -10 and 40 °C, 15 °C on the whole", "common practice for a temperate coast", planPath + "/box/temperature");

    internal static Assumption Cable(string path) => new("cable-temperature", "power cable in 40 °C", "common practice for a bundle in a warm loft or in the sun", path + "/temperature");

    internal static Assumption Pairs(string path) => new("injector-pairs", "the injector feeds two of the four pairs", "common practice", path + "/pairs");

    internal static Assumption SourceVolts(string path, PowerClassRow row) => new(
        "source-voltage", FormattableString.Invariant($"the source gives {row.SourceLeastVolts:0.#} V, the least that {row.Key} allows"), row.Source, path + "/voltage");

    internal static Assumption Transmit(string path) => new("transmit-share", "the radio transmits for 1 % of the time", "common practice", path + "/transmit-share");

    internal static Assumption Busy(string path) => new("busy-share", "the board is busy for 10 % of the time", "common practice", path + "/busy-share");

    internal static Assumption Awake(string path) => new("sleep-share", "it never sleeps", "assumed: the most that it can draw", path + "/sleep-share");

    internal static Assumption Boot(string path) => new("load-boot", "it takes no more while it starts than at its peak", "assumed", path + "/boot");

    internal static Assumption Series(string path) => new("battery-series", "one cell, or one row of cells side by side, in series", "assumed", path + "/series");

    internal static Assumption Parallel(string path) => new("battery-parallel", "no cells side by side", "assumed", path + "/parallel");

    internal static Assumption Kind(string path, ConverterRow? row) => new("converter-kind", $"a {row?.Name ?? "step-down converter"} ({ConverterRow.Buck})", "common practice", path + "/kind");

    internal static Assumption RadioPower(string path, double dbm) => new(
        "radio-power-for-supply", FormattableString.Invariant($"the radio is set to {dbm:0.#} dBm, the most that its row of the catalogue has"), "assumed", path);

    internal static Assumption Arrester(string path) => new("arrester-resistance", "no resistance in the surge arrester of the data cable", "assumed", path);

    internal static Assumption Age(string path) => new("battery-age", "battery from new to 5 years old", "common practice", path + "/age");

    internal static Assumption Charge(string path) => new("battery-charge", "battery charged to 90 to 100 % when it takes over", "common practice", path + "/charge");

    internal static Assumption Wanted(string path) => new("hold-up-wanted", "a battery is wanted to last 24 h", "common practice", path + "/hold");

    internal static Assumption Charger(string path, double amperes) => new(
        "charger-current", FormattableString.Invariant($"charger of {amperes:0.00} A: a fifth of the capacity an hour beside the loads"), "common practice", path + "/charger");
}
