using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Network.Graph;
using Mastwright.Network.Hops;

namespace Mastwright.Plans;

/// <summary>How the stations of a plan are reached from one of them.</summary>
public sealed record HopReport
{
    /// <summary>The links at the plan's time percentage.</summary>
    public required MatrixReport Links { get; init; }

    /// <summary>Index of the station that sends.</summary>
    public required int From { get; init; }

    /// <summary>How worlds were tried.</summary>
    public required HopSettings Settings { get; init; }

    /// <summary>The other stations, in the order of the matrix.</summary>
    public required ImmutableArray<StationHops> Stations { get; init; }

    /// <summary>Stations and links whose loss cuts others off, over the links that are heard both ways at the best guess, however many hops it takes.</summary>
    public required WeakPoints WeakPoints { get; init; }

    /// <summary>What other air opens, one a time percentage.</summary>
    public ImmutableArray<HopCondition> Conditions { get; init; } = [];

    /// <summary>What is to be said of it.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>What was assumed.</summary>
    public ImmutableArray<Assumption> Assumptions { get; init; } = [];
}

/// <summary>How one station is reached.</summary>
/// <param name="Flooded">Over the worlds that were tried.</param>
/// <param name="FewestHops">Fewest hops over links heard both ways at the best guess; −1 where there is no way at all, whatever the limit.</param>
/// <param name="Route">The most probable route within the hop limit; null where there is none.</param>
/// <param name="RouteWorks">Confidence that every link of it works; 0 without a route.</param>
/// <param name="RouteDelivers">Share of packets that come through along it if so; 0 without a route.</param>
public sealed record StationHops(FloodedStation Flooded, int FewestHops, StationRoute? Route, double RouteWorks, double RouteDelivers);

/// <summary>What air that is met in so small a share of the time opens, at the best guess.</summary>
/// <param name="TimePercent">The time percentage.</param>
/// <param name="Heard">Stations that are then in a link with the sender both ways, and are not at the plan's percentage.</param>
/// <param name="Reached">Stations that are then reached within the hop limit, and are not at the plan's percentage.</param>
/// <param name="Links">Number of links heard both ways in the whole plan.</param>
/// <param name="UsualLinks">The same at the plan's percentage.</param>
public sealed record HopCondition(double TimePercent, ImmutableArray<int> Heard, ImmutableArray<int> Reached, int Links, int UsualLinks);
