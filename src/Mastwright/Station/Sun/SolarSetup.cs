using Mastwright.Station.HoldUp;

namespace Mastwright.Station.Sun;

/// <summary>A panel, a battery and what they feed, in a year of weather.</summary>
public sealed record SolarSetup
{
    /// <summary>The panel.</summary>
    public required SolarPanel Panel { get; init; }

    /// <summary>The battery.</summary>
    public required BatteryPack Pack { get; init; }

    /// <summary>Share of the battery's new capacity that is left with age, 0 to 1.</summary>
    public required double AgeFactor { get; init; }

    /// <summary>Mean power out of the battery in watts, zero or more.</summary>
    public required double LoadWatts { get; init; }

    /// <summary>Greatest power out of it in watts.</summary>
    public required double PeakWatts { get; init; }

    /// <summary>Voltage at which it is switched off, or its loads give up.</summary>
    public required double CutOffVolts { get; init; }

    /// <summary>The weather.</summary>
    public required WeatherYear Weather { get; init; }

    /// <summary>Where it stands.</summary>
    public required SunSite Place { get; init; }

    /// <summary>The horizon there.</summary>
    public HorizonLine Horizon { get; init; } = HorizonLine.Level;

    /// <summary>Days in a row on which snow or rime lies on the panel, where they empty the battery most; zero or more.</summary>
    public double CoveredDays { get; init; } = SunDefaults.CoveredDays;

    /// <summary>Kelvin by which the battery is warmer than the air.</summary>
    public double BatteryRiseKelvin { get; init; } = SunDefaults.BatteryRiseKelvin;

    /// <summary>Efficiency of the charge controller, above 0 to 1.</summary>
    public double ControllerEfficiency { get; init; } = SunDefaults.ControllerEfficiency;
}
