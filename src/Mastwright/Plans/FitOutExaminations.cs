using Mastwright.Station;

namespace Mastwright.Plans;

/// <summary>Every examination that a fit-out is put through besides its links: one line for each subject.</summary>
internal static class FitOutExaminations
{
    /// <summary>Examines the fit-out of a station.</summary>
    /// <param name="station">A site with its fit-out.</param>
    internal static FitOutReport Of(LinkStation station) => new(station, Examination.Nothing);
}
