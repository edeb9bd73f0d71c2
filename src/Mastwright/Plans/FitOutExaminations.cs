using Mastwright.Station;
using Mastwright.Station.BoxClimate;
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
    internal static FitOutReport Of(LinkStation station, Plan plan, StationChainResult chain, StationCatalogue catalogue)
    {
        (SupplyResult supply, BoxResult box) = StationBox.Of(station, plan, catalogue);
        StandingResult standing = StandingStation.Of(station, plan, catalogue);
        return new(
            station,
            Examination.Of(
                RadioLaw.Of(station, plan, chain, catalogue),
                supply.Examination,
                box.Examination,
                standing.Examination))
        {
            Chain = chain,
            Supply = supply,
            Box = box,
            Mast = standing.Mast,
        };
    }
}
