using Mastwright.Station;

namespace Mastwright.Plans;

/// <summary>What was worked out of one fit-out besides its links and its radio chain.</summary>
/// <param name="Station">The site with the fit-out that was examined.</param>
/// <param name="Examination">Ledgers, findings and assumptions.</param>
public sealed record FitOutReport(LinkStation Station, Examination Examination);
