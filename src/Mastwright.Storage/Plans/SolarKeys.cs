using Mastwright.Quantities;

namespace Mastwright.Storage.Plans;

/// <summary>Keys of a solar panel.</summary>
internal static class SolarKeys
{
    private static readonly QuantityShape Share = new(Dimension.Percent, 0, 95, "10 %");

    internal static readonly KeyShape Panel = new("panel", new QuantityShape(Dimension.Wattage, 0.1, 5000, "20 W"), "Rated power of the panel, under 1000 W/m² with its cells at 25 °C.", Required: true);
    internal static readonly KeyShape Tilt = new("tilt", new QuantityShape(Dimension.Angle, 0, 90, "60°"), "Angle from level: 0° lies flat, 90° stands upright. Steep sheds snow and serves the winter.", Required: true);
    internal static readonly KeyShape Azimuth = new("azimuth", new QuantityShape(Dimension.Angle, 0, 360, "180°"), "Direction that it faces, from true north by east.", Required: true);
    internal static readonly KeyShape Losses = new("losses", Share, "Lost to dirt, ageing, wiring.");
    internal static readonly KeyShape GroundReflects = new("ground-reflects", Share, "Share of the light that the ground throws back: 20 % grass, 70 % snow.");
    internal static readonly KeyShape ControllerEfficiency = new("controller-efficiency", new QuantityShape(Dimension.Percent, 10, 100, "92 %"), "Efficiency of the charge controller; of one that only switches, some 75 %.");
    internal static readonly KeyShape CoveredDays = new("covered-days", new NumberShape(0, 365), "Days in a row with snow or rime on the panel; they are put where they empty the battery most.");
    internal static readonly KeyShape BatteryRise = new("battery-rise", new QuantityShape(Dimension.TemperatureDifference, -20, 40, "3 K"), "How much warmer the battery is than the air.");
    internal static readonly KeyShape HoursWithout = new("hours-without", new QuantityShape(Dimension.Time, 0, 31_536_000, "9 h"), "Time without service in a year that is borne.");
    internal static readonly KeyShape DaysWithoutSun = new("days-without-sun", new QuantityShape(Dimension.Time, 0, 31_536_000, "5 d"), "Time that a full battery is to last without sun.");
    internal static readonly KeyShape Horizon = new("horizon", new ListShape(new NumberShape(-5, 89)), "Elevations of the horizon in degrees, evenly spaced from north by east, as seen from the panel; without it from the ground, without trees and houses.");

    internal static readonly MappingShape Shape = new(
        "solar panel", Panel, Tilt, Azimuth, Losses, GroundReflects, ControllerEfficiency, CoveredDays, BatteryRise, HoursWithout, DaysWithoutSun, Horizon);
}
