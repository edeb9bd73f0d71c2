using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Exposure;
using Mastwright.Station.Rules;

namespace Mastwright.Plans;

/// <summary>A fit-out held against the radio rules of its region, and against the limits of exposure of the place.</summary>
internal static class RadioLaw
{
    internal static (Examination Rules, Examination Exposure) Of(LinkStation station, Plan plan, StationChainResult chain, StationCatalogue catalogue, Estimate? boxCelsius)
    {
        FitOut fitOut = station.FitOut!;
        RadioRegion? region = catalogue.Law.Region(plan.Region);
        RadioRulesResult? rules = Rules(station, plan, chain, catalogue, boxCelsius);
        Examination exposure = RfExposure.Examine(new()
        {
            PlanPath = station.FitOutPath,
            Region = region,
            Place = plan.Region,
            Book = catalogue.Law,
            FrequencyHz = plan.Modem.FrequencyHz,
            EirpDbm = chain.RadiatedPower?.EirpDbm,
            MissingToSend = chain.MissingToSend,
            AntennaLengthMetres = fitOut.Antenna.LengthMetres,
            People = fitOut.People,
            Traffic = rules?.Traffic,
        });
        return (rules?.Examination ?? Examination.Nothing, exposure);
    }

    /// <summary>The station held against the radio rules of the plan's region; null where the region is unknown.</summary>
    internal static RadioRulesResult? Rules(LinkStation station, Plan plan, StationChainResult chain, StationCatalogue catalogue, Estimate? boxCelsius) =>
        catalogue.Law.Region(plan.Region) is not { } region ? null : RadioRules.Examine(new()
        {
            PlanPath = station.FitOutPath,
            TrafficPath = StationDefaults.Join(station.PlanPath, "traffic"),
            Region = region,
            Book = catalogue.Law,
            Modem = plan.Modem,
            Radio = station.FitOut!.Radio,
            BoxCelsius = boxCelsius,
            Chain = chain,
            Traffic = station.Traffic ?? plan.Traffic,
        });
}
