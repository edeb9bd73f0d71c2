using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Reach;
using Mastwright.Plans;
using Mastwright.Reports.Sessions;

namespace Mastwright.Reports.Reach;

/// <summary>Best server and count of several stations, with everything that text, document and files tell of them.</summary>
internal sealed record SeveralReport(PlanSession Session, ReachReceiver Receiver, ImmutableArray<ReachSetup> Setups, BestServers Servers, ImmutableArray<Finding> Findings)
{
    internal required ReachArea Area { get; init; }

    /// <summary>Weights on the cells of the grid; null when none were asked for.</summary>
    internal ReachWeights? Weights { get; init; }

    /// <summary>Longest step of the sweeps; null or zero where there was none.</summary>
    internal double? SweepStepMetres { get; init; }

    /// <summary>Whether the cells of at least one station have paths of their own.</summary>
    internal bool HasOwnPaths { get; init; }

    internal ImmutableArray<Assumption> Assumptions => [.. Setups.SelectMany(setup => setup.Assumptions).Distinct()];

    /// <summary>The stations in the order of their numbers, where they lie on the grid.</summary>
    internal ImmutableArray<MapStation> Stations =>
    [
        .. Setups.Select((setup, i) =>
        {
            UtmPosition at = UniversalTransverseMercator.FromGeo(setup.Station.Position.Point, Servers.Frame.UtmZone, Servers.Frame.IsNorth);
            return new MapStation(Name(setup.Station), i + 1, at.EastingMetres, at.NorthingMetres);
        }),
    ];

    internal string RadioText => ReachReport.RadioText(Session.Plan.Modem);

    internal string MethodText()
    {
        GridFrame frame = Servers.Frame;
        string how = !HasOwnPaths ? Text($"each station from one sweep in steps of up to {SweepStepMetres:0.#} m")
            : SweepStepMetres > 0 ? Text($"from sweeps in steps of up to {SweepStepMetres:0.#} m, or each by its own path")
            : "each by its own path";
        return ReachReport.MethodText(Session.Assessment.Settings, frame, how);
    }

    /// <summary>The site's name, with its fit-out where another one of the site is among the stations.</summary>
    private string Name(LinkStation station) => Setups.Count(setup => setup.Station.Key == station.Key) > 1 && station.FitOut is { } fitOut
        ? $"{station.Name} ({fitOut.Key})"
        : station.Name;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
