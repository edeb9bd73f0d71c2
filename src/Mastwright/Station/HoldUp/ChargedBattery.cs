using Mastwright.Quantities;

namespace Mastwright.Station.HoldUp;

/// <summary>A battery in its place: its cells, its charger, where it stands and what is wanted of it.</summary>
public sealed record ChargedBattery
{
    /// <summary>The cells.</summary>
    public required BatteryPack Pack { get; init; }

    /// <summary>Age in years, zero or more.</summary>
    public required Estimate AgeYears { get; init; }

    /// <summary>Share of its charge when it takes over, 0 to 1.</summary>
    public required Estimate ChargeAtStart { get; init; }

    /// <summary>Its temperature in °C: coldest, on the whole, hottest.</summary>
    public required Estimate Celsius { get; init; }

    /// <summary>Whether <see cref="Celsius"/> is an assumption: then a year of weather knows better.</summary>
    public bool IsCelsiusAssumed { get; init; }

    /// <summary>The current in amperes that the charger gives to battery and loads together, greater than zero.</summary>
    public required double ChargerAmperes { get; init; }

    /// <summary>Efficiency of the charger, above 0 to 1.</summary>
    public required double ChargerEfficiency { get; init; }

    /// <summary>Voltage of the whole battery at which it is switched off; null when only the cells' own cut-off counts.</summary>
    public double? CutOffVolts { get; init; }

    /// <summary>Whether the charger stops where the cells are too cold; null when nobody said.</summary>
    public bool? StopsChargeInCold { get; init; }

    /// <summary>Hours that it is wanted to last.</summary>
    public required double WantedHours { get; init; }

    /// <summary>Whether something feeds the charger.</summary>
    public required bool IsFed { get; init; }

    /// <summary>Voltage under load at which it counts as empty: the cells' own cut-off, or the given one where that lies above.</summary>
    public double EmptyVolts => Math.Max(CutOffVolts ?? 0, Pack.Cell.CutOffVolts * Pack.Series);

    /// <summary>The most that the charger gives, in watts: its current at the battery's full voltage.</summary>
    public double ChargerWatts => ChargerAmperes * Pack.FullVolts;
}
