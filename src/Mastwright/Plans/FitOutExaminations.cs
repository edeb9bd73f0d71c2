using Mastwright.Station;
using Mastwright.Station.BoxClimate;
using Mastwright.Station.Sun;
using Mastwright.Station.Supply;

namespace Mastwright.Plans;

/// <summary>Every examination that a fit-out is put through besides its links: one line for each subject.</summary>
internal static class FitOutExaminations
{
    /// <summary>Examines the fit-out of a station.</summary>
    /// <param name="station">A site with its fit-out.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="chain">The station's radio chain.</param>
    /// <param name="catalogue">Catalogue rows, those of law among them.</param>
    /// <param name="horizonOf">The horizon of a station's ground; null where no ground is known.</param>
    internal static FitOutReport Of(LinkStation station, Plan plan, StationChainResult chain, StationCatalogue catalogue, Func<LinkStation, HorizonLine?> horizonOf)
    {
        (SupplyResult supply, BoxResult box) = StationBox.Of(station, plan, catalogue);
        SolarResult? solar = StationSolar.Of(station, supply, horizonOf);
        (Examination law, Examination exposure) = RadioLaw.Of(station, plan, chain, catalogue, StationBox.CelsiusOf(station, box));
        StandingResult standing = StandingStation.Of(station, plan, catalogue);
        return new(
            station,
            Examination.Of(
                law,
                exposure,
                StationSolar.Fed(supply.Examination, solar),
                solar?.Examination ?? Examination.Nothing,
                box.Examination,
                standing.Examination))
        {
            Chain = chain,
            Supply = supply,
            Solar = solar,
            Box = box,
            Mast = standing.Mast,
            Law = law,
            Exposure = exposure,
            Hazards = standing.Hazards,
            Earthing = standing.Earthing,
        };
    }
}
