using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Relays;

namespace Mastwright.Plans;

/// <summary>What relays are looked for.</summary>
public enum RelayGoal
{
    /// <summary>The most stations joined to the network.</summary>
    Stations,

    /// <summary>The most area reached that the network does not reach now.</summary>
    Shadow,

    /// <summary>The most weight reached that the network does not reach now.</summary>
    Weights,

    /// <summary>The most stations that no loss of a single other one cuts off.</summary>
    Robustness,
}

/// <summary>A relay of the choice.</summary>
public sealed record ChosenRelay
{
    /// <summary>The candidate.</summary>
    public required RelayCandidate Candidate { get; init; }

    /// <summary>The relay as links see it.</summary>
    public required LinkStation Station { get; init; }

    /// <summary>What it adds to those before it, in the goal's unit.</summary>
    public required double Gain { get; init; }

    /// <summary>What it would be worth alone, in the goal's unit.</summary>
    public required double Alone { get; init; }

    /// <summary>Its links with what it hangs on, the one with the most margin first: at most three.</summary>
    public required ImmutableArray<LinkReport> Parents { get; init; }

    /// <summary>Number of all its links with the network and with relays before it that keep the wanted margin both ways.</summary>
    public required int ParentCount { get; init; }

    /// <summary>Whether it hangs on another relay of the choice alone, or on a station that one joins.</summary>
    public required bool HangsOnRelay { get; init; }

    /// <summary>Names of the stations that it joins besides those before it.</summary>
    public ImmutableArray<string> Joins { get; init; } = [];

    /// <summary>Area that it opens besides those before it, in square metres; zero where no area was looked at.</summary>
    public double OpenedSquareMetres { get; init; }

    /// <summary>Mean confidence that a cell which it opens is really reached, given that the relay stands; null where it opens none.</summary>
    public double? OpenedWorks { get; init; }

    /// <summary>Height of its ground above the sea in metres; null where it is not known.</summary>
    public double? GroundMetres { get; init; }
}

/// <summary>A candidate by what it would be worth alone.</summary>
/// <param name="Candidate">The candidate.</param>
/// <param name="Alone">What it would be worth as the only relay, in the goal's unit.</param>
/// <param name="MarginDb">Most margin of its weaker direction to a station of the network, in dB; null where it has no link of its own.</param>
public sealed record RankedRelay(RelayCandidate Candidate, double Alone, double? MarginDb);

/// <summary>Relays that were looked for.</summary>
public sealed record RelayReport
{
    /// <summary>Name of the plan.</summary>
    public required string Plan { get; init; }

    /// <summary>The station whose network it is.</summary>
    public required LinkStation Home { get; init; }

    /// <summary>The station whose radio, feed and antenna the relays have.</summary>
    public required LinkStation Like { get; init; }

    /// <summary>What every path was computed with.</summary>
    public required PathSettings Settings { get; init; }

    /// <summary>What for.</summary>
    public required RelayGoal Goal { get; init; }

    /// <summary>Most relays asked for.</summary>
    public required int Asked { get; init; }

    /// <summary>Whether a relay may hang on another.</summary>
    public required bool ThroughRelays { get; init; }

    /// <summary>Who is to be reached; null where no area was looked at.</summary>
    public ReachReceiver? Receiver { get; init; }

    /// <summary>Half the side of the square that was looked at, in metres.</summary>
    public required double HalfSideMetres { get; init; }

    /// <summary>Names of the stations in the network as it is, the home station among them.</summary>
    public required ImmutableArray<string> Network { get; init; }

    /// <summary>Names of the stations that are not.</summary>
    public required ImmutableArray<string> Outside { get; init; }

    /// <summary>Number of candidates.</summary>
    public required int Found { get; init; }

    /// <summary>Number of those that can count at all: by a link of their own, or through others.</summary>
    public required int Linked { get; init; }

    /// <summary>Number of those that the choice was made from.</summary>
    public required int Weighed { get; init; }

    /// <summary>What is reached, or held, without relays, in the goal's unit.</summary>
    public required double Before { get; init; }

    /// <summary>What could be opened at most: what is not reached or held now.</summary>
    public required double Open { get; init; }

    /// <summary>The choice; its values are in the goal's unit.</summary>
    public required RelayChoice Choice { get; init; }

    /// <summary>Its relays, in order.</summary>
    public required ImmutableArray<ChosenRelay> Chosen { get; init; }

    /// <summary>Single candidates by what each would be worth alone, the best first.</summary>
    public required ImmutableArray<RankedRelay> Ranking { get; init; }

    /// <summary>Stations that a single loss still cuts off; only for robustness.</summary>
    public ImmutableArray<string> StillAlone { get; init; } = [];

    /// <summary>The grid that was looked at; null where none was.</summary>
    public GridFrame? Frame { get; init; }

    /// <summary>Of each cell: 0 no matter, 1 reached now, 2 not reached by anybody, 3 opened by the first relay, 4 by the second, and so on.</summary>
    public ImmutableArray<byte> Cells { get; init; } = [];

    /// <summary>All stations of the plan with their places.</summary>
    public ImmutableArray<(LinkStation Station, bool IsJoined)> Stations { get; init; } = [];

    /// <summary>What is to be said of it.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>What was assumed.</summary>
    public ImmutableArray<Assumption> Assumptions { get; init; } = [];

    /// <summary>The goal's unit, in words.</summary>
    public string Unit => UnitOf(Goal);

    /// <summary>The unit of a goal, in words.</summary>
    public static string UnitOf(RelayGoal goal) => goal switch
    {
        RelayGoal.Shadow => "km²",
        RelayGoal.Weights => "weight",
        _ => "stations",
    };
}
