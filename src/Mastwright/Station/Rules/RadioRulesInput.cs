using Mastwright.Quantities;
using Mastwright.Station.Radio;

namespace Mastwright.Station.Rules;

/// <summary>What the law is asked about: a station's radio chain and what it sends.</summary>
public sealed record RadioRulesInput
{
    /// <summary>Where in the plan the fit-out stands.</summary>
    public required string PlanPath { get; init; }

    /// <summary>Where in the plan the traffic would stand.</summary>
    public required string TrafficPath { get; init; }

    /// <summary>The region whose rules apply.</summary>
    public required RadioRegion Region { get; init; }

    /// <summary>The rows of law.</summary>
    public required RuleBook Book { get; init; }

    /// <summary>The modem setting; must be valid.</summary>
    public required ModemSetting Modem { get; init; }

    /// <summary>The radio.</summary>
    public required RadioUnit Radio { get; init; }

    /// <summary>Temperature around the radio in °C, from coldest to hottest; null when unknown.</summary>
    public Estimate? BoxCelsius { get; init; }

    /// <summary>The radio chain: feed, gain and powers.</summary>
    public required StationChainResult Chain { get; init; }

    /// <summary>How many packets the station sends.</summary>
    public TrafficRate Traffic { get; init; } = new();
}
