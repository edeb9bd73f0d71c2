using Mastwright.Quantities;

namespace Mastwright.Station.HoldUp;

/// <summary>A catalogue row: a type of battery cell.</summary>
public sealed record CellRow
{
    /// <summary>Its key, such as "li-ion".</summary>
    public required string Key { get; init; }

    /// <summary>What a person reads.</summary>
    public required string Name { get; init; }

    /// <summary>Capacity of one cell in ampere-hours, where the plan gives none; greater than zero.</summary>
    public required double AmpereHours { get; init; }

    /// <summary>Nominal voltage of one cell.</summary>
    public required double NominalVolts { get; init; }

    /// <summary>Voltage at which one cell is full.</summary>
    public required double FullVolts { get; init; }

    /// <summary>Voltage under load below which one cell is not to be discharged.</summary>
    public required double CutOffVolts { get; init; }

    /// <summary>Voltage of one cell at rest by state of charge, 0 to 1; rising.</summary>
    public required LinearCurve RestVolts { get; init; }

    /// <summary>Usable share of the capacity by temperature in °C; rising.</summary>
    public required RangeCurve CapacityByCelsius { get; init; }

    /// <summary>Internal resistance of one new cell at 25 °C times its capacity, in ohm·ampere-hours.</summary>
    public required double OhmAmpereHours { get; init; }

    /// <summary>Internal resistance by temperature in °C, as a factor on that at 25 °C; falling.</summary>
    public required LinearCurve ResistanceByCelsius { get; init; }

    /// <summary>Internal resistance when a fifth of the capacity is gone, as a factor on that of a new cell: 1 or more.</summary>
    public required double AgedResistanceFactor { get; init; }

    /// <summary>Hours over which its capacity was measured.</summary>
    public required double RatedHours { get; init; }

    /// <summary>Exponent of Peukert's law, 1 or more.</summary>
    public required double PeukertExponent { get; init; }

    /// <summary>The most charge current by temperature in °C, as a share of the capacity an hour; 0 where it must not be charged.</summary>
    public required LinearCurve ChargeRateByCelsius { get; init; }

    /// <summary>The temperature in °C below which it must not be charged.</summary>
    public required double ChargeLeastCelsius { get; init; }

    /// <summary>The least temperature in °C at which it may be discharged.</summary>
    public required double DischargeLeastCelsius { get; init; }

    /// <summary>The highest temperature in °C that it bears.</summary>
    public required double MostCelsius { get; init; }

    /// <summary>The most discharge current that lasts, as a share of the capacity an hour.</summary>
    public required double MostDischargeRate { get; init; }

    /// <summary>Years at 25 °C after which four fifths of the capacity are left.</summary>
    public required Estimate LifeYears { get; init; }

    /// <summary>Charge that is kept of the charge that is put in, 0 to 1.</summary>
    public required double ChargeEfficiency { get; init; }

    /// <summary>How much longer a full charge takes than at full current throughout, because the current tapers off: 1 or more.</summary>
    public required Estimate ChargeTaper { get; init; }

    /// <summary>Document, "common practice" or "from memory".</summary>
    public required string Source { get; init; }
}
