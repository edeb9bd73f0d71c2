using System.Collections.Immutable;

namespace Mastwright.Station.Sun;

/// <summary>The panel of a fit-out as a plan has it, with the weather that it stands in.</summary>
public sealed record SolarFit
{
    /// <summary>Where in the plan it stands.</summary>
    public required string PlanPath { get; init; }

    /// <summary>Rated power of the panel in watts.</summary>
    public required double PanelWatts { get; init; }

    /// <summary>Angle from level in degrees.</summary>
    public required double TiltDegrees { get; init; }

    /// <summary>Direction that it faces, in degrees clockwise from true north.</summary>
    public required double AzimuthDegrees { get; init; }

    /// <summary>The year of a weather file; null when the plan names none.</summary>
    public WeatherYear? Weather { get; init; }

    /// <summary>Two numbers a month in place of a file; null when the plan gives none.</summary>
    public MonthlyClimate? Monthly { get; init; }

    /// <summary>Share that the ground throws back, 0 to 1; null when not given.</summary>
    public double? GroundReflects { get; init; }

    /// <summary>Share lost to dirt, ageing and wiring, 0 to below 1; null when not given.</summary>
    public double? LossShare { get; init; }

    /// <summary>Efficiency of the charge controller, above 0 to 1; null when not given.</summary>
    public double? ControllerEfficiency { get; init; }

    /// <summary>Days in a row with snow or rime on the panel; null when not given.</summary>
    public double? CoveredDays { get; init; }

    /// <summary>Kelvin by which the battery is warmer than the air; null when not given.</summary>
    public double? BatteryRiseKelvin { get; init; }

    /// <summary>Hours a year without service that are borne; null when not given.</summary>
    public double? WantedHoursWithout { get; init; }

    /// <summary>Days that a full battery is to last without sun; null when not given.</summary>
    public double? WantedDays { get; init; }

    /// <summary>Elevations of the horizon in degrees, evenly spaced from north, clockwise; empty to take it from the ground.</summary>
    public ImmutableArray<double> HorizonDegrees { get; init; } = [];
}
