using System.Collections.Immutable;
using Mastwright.Station.Sun;

namespace Mastwright.Storage.Plans;

/// <summary>Binds the solar panel of a fit-out.</summary>
internal static class SolarBinder
{
    /// <summary>The panel; null when there is none, or a fault in it.</summary>
    internal static SolarFit? Bind(MappingReader fitOut)
    {
        string path = fitOut.PathOf(FitOutKeys.Solar);
        if (fitOut.Find(FitOutKeys.Solar) is not { } node || MappingReader.Open(fitOut.Binding, node, path, SolarKeys.Shape) is not { } reader)
        {
            return null;
        }

        int before = fitOut.Binding.Problems.Count;
        NumberShape angle = (NumberShape)((ListShape)SolarKeys.Horizon.Value).Item;
        ImmutableArray<double> horizon = [.. reader.List(SolarKeys.Horizon).Select(item => ScalarBinder.Number(reader.Binding, item.Node, item.Path, angle)).OfType<double>()];
        SolarFit fit = new()
        {
            PlanPath = path,
            PanelWatts = reader.Exact(SolarKeys.Panel) ?? 1,
            TiltDegrees = reader.Exact(SolarKeys.Tilt) ?? 0,
            AzimuthDegrees = reader.Exact(SolarKeys.Azimuth) ?? 0,
            LossShare = reader.Exact(SolarKeys.Losses) / 100,
            GroundReflects = reader.Exact(SolarKeys.GroundReflects) / 100,
            ControllerEfficiency = reader.Exact(SolarKeys.ControllerEfficiency) / 100,
            CoveredDays = reader.Number(SolarKeys.CoveredDays),
            BatteryRiseKelvin = reader.Exact(SolarKeys.BatteryRise),
            WantedHoursWithout = reader.Exact(SolarKeys.HoursWithout) / 3600,
            WantedDays = reader.Exact(SolarKeys.DaysWithoutSun) / 86_400,
            HorizonDegrees = horizon,
        };
        reader.Done();
        return fitOut.Binding.Problems.Count == before ? fit : null;
    }
}
