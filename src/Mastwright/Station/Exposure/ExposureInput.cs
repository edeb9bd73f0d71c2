using System.Collections.Immutable;
using Mastwright.Quantities;
using Mastwright.Station.Rules;

namespace Mastwright.Station.Exposure;

/// <summary>How near people come to an antenna, in metres. A null is "nobody said".</summary>
/// <param name="PublicMetres">The nearest that anybody comes.</param>
/// <param name="WorkersMetres">The nearest that somebody at work comes while it sends.</param>
public sealed record PeopleNear(double? PublicMetres = null, double? WorkersMetres = null)
{
    /// <summary>The distance for one of the two.</summary>
    public double? Of(Exposed who) => who == Exposed.Public ? PublicMetres : WorkersMetres;
}

/// <summary>What exposure is worked out from.</summary>
public sealed record ExposureInput
{
    /// <summary>Where in the plan the fit-out stands.</summary>
    public required string PlanPath { get; init; }

    /// <summary>Region whose law holds; null when it is not known.</summary>
    public required RadioRegion? Region { get; init; }

    /// <summary>The place as the plan writes it, such as "FR": limits of its own come before those of its region. Empty when not given.</summary>
    public string Place { get; init; } = "";

    /// <summary>The limits.</summary>
    public required RuleBook Book { get; init; }

    /// <summary>Frequency in hertz, greater than zero.</summary>
    public required double FrequencyHz { get; init; }

    /// <summary>EIRP along the main beam in dBm; null when unknown. The highest of its range counts.</summary>
    public Estimate? EirpDbm { get; init; }

    /// <summary>Plan paths of what is missing for the EIRP.</summary>
    public ImmutableArray<string> MissingToSend { get; init; } = [];

    /// <summary>Length of the antenna's radiating part in metres; null when unknown.</summary>
    public double? AntennaLengthMetres { get; init; }

    /// <summary>How near people come.</summary>
    public PeopleNear People { get; init; } = new();

    /// <summary>Time on the air; null, or one that is assumed, is never averaged over.</summary>
    public TrafficEstimate? Traffic { get; init; }
}
