using Mastwright.Station;

namespace Mastwright.Plans;

/// <summary>Every examination that a fit-out is put through besides its links: one line for each subject.</summary>
internal static class FitOutExaminations
{
    /// <summary>Examines the fit-out of a station.</summary>
    /// <param name="station">A site with its fit-out.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="chain">The station's radio chain.</param>
    /// <param name="catalogue">Catalogue rows, those of law among them.</param>
    internal static FitOutReport Of(LinkStation station, Plan plan, StationChainResult chain, StationCatalogue catalogue) => new(
        station,
        Examination.Of(
            RadioLaw.Of(station, plan, chain, catalogue),
            StationSupply.Of(station, plan, catalogue).Examination,
            StandingStation.Of(station, plan, catalogue)));
}
