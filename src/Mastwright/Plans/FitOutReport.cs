using Mastwright.Station;
using Mastwright.Station.BoxClimate;
using Mastwright.Station.Mast;
using Mastwright.Station.Sun;
using Mastwright.Station.Supply;

namespace Mastwright.Plans;

/// <summary>What was worked out of one fit-out besides its links and its radio chain.</summary>
/// <param name="Station">The site with the fit-out that was examined.</param>
/// <param name="Examination">Ledgers, findings and assumptions.</param>
public sealed record FitOutReport(LinkStation Station, Examination Examination)
{
    /// <summary>The radio chain.</summary>
    public required StationChainResult Chain { get; init; }

    /// <summary>The supply.</summary>
    public SupplyResult Supply { get; init; } = SupplyResult.Nothing;

    /// <summary>The solar panel's year; null where the fit-out has no panel.</summary>
    public SolarResult? Solar { get; init; }

    /// <summary>The box.</summary>
    public BoxResult Box { get; init; } = BoxResult.Nothing;

    /// <summary>The mast; null for an antenna indoors.</summary>
    public MastResult? Mast { get; init; }

    /// <summary>The radio rules of the region, as far as they go into <see cref="Examination"/>.</summary>
    public Examination Law { get; init; } = Examination.Nothing;

    /// <summary>Exposure of people near the antenna, as far as it goes into <see cref="Examination"/>.</summary>
    public Examination Exposure { get; init; } = Examination.Nothing;

    /// <summary>What can hurt someone, as far as it goes into <see cref="Examination"/>.</summary>
    public Examination Hazards { get; init; } = Examination.Nothing;

    /// <summary>Earth and lightning, as far as they go into <see cref="Examination"/>.</summary>
    public Examination Earthing { get; init; } = Examination.Nothing;
}
