using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Radio;
using Mastwright.Station.Rules;
using Mastwright.Station.Supply;

namespace Mastwright.Plans;

/// <summary>The supply of a site's fit-out in a plan.</summary>
public static class StationSupply
{
    /// <summary>Computes it.</summary>
    /// <param name="station">A site with its fit-out.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="catalogue">The rows that parts are looked up in.</param>
    /// <param name="boxCelsius">Temperature in the box as worked out, in °C; null for the one that the plan gives.</param>
    /// <exception cref="ArgumentException">The station is a neighbour.</exception>
    public static SupplyResult Of(LinkStation station, Plan plan, StationCatalogue catalogue, Estimate? boxCelsius = null)
    {
        ArgumentNullException.ThrowIfNull(station);
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(catalogue);
        FitOut fitOut = station.FitOut ?? throw new ArgumentException("A neighbour has no supply in a plan.", nameof(station));
        return SupplyChain.Compute(fitOut.Supply, new()
        {
            PlanPath = station.FitOutPath,
            Catalogue = catalogue.Supply,
            ConductedPowerDbm = fitOut.Radio.ConductedPowerDbm?.Median,
            Traffic = ModemSettingCheck.TryValidate(plan.Modem, out _)
                ? TrafficEstimate.Of(station.Traffic ?? plan.Traffic, Airtime.Compute(plan.Modem).TotalSeconds, StationDefaults.Join(station.PlanPath, "traffic"))
                : null,
            BoxCelsius = boxCelsius ?? fitOut.Box.TemperatureCelsius,
        });
    }
}
