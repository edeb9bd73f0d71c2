using Mastwright.Quantities;
using Mastwright.Station.Rules;

namespace Mastwright.Station.Supply;

/// <summary>What a fit-out's supply is computed from besides its parts.</summary>
public sealed record SupplyContext
{
    /// <summary>Where in the plan the fit-out stands.</summary>
    public required string PlanPath { get; init; }

    /// <summary>The rows of the catalogue.</summary>
    public required SupplyCatalogue Catalogue { get; init; }

    /// <summary>Power setting of the fit-out's radio at its connector, in dBm; null when the plan does not say.</summary>
    public double? ConductedPowerDbm { get; init; }

    /// <summary>How long the station is on the air in an hour; null when it is not known.</summary>
    public TrafficEstimate? Traffic { get; init; }

    /// <summary>Temperature in the box in °C: coldest, on the whole, hottest; null when the plan does not say.</summary>
    public Estimate? BoxCelsius { get; init; }
}
