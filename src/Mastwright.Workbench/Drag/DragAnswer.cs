using System.Collections.Immutable;
using Mastwright.Network.Reach;
using Mastwright.Plans;
using Mastwright.Reports.Reach;

namespace Mastwright.Workbench.Drag;

/// <summary>What a step of a drag is answered with.</summary>
internal sealed record DragAnswer
{
    /// <summary>The station.</summary>
    public required LinkStation Station { get; init; }

    /// <summary>Its links, in the plan's order; empty when they were not asked.</summary>
    public ImmutableArray<LinkReport> Links { get; init; } = [];

    /// <summary>The path to the other end, from the station; null when none was asked.</summary>
    public LinkReport? Path { get; init; }

    /// <summary>Whether the ledger is that of the way back.</summary>
    public bool IsBack { get; init; }

    /// <summary>The reach; null when none was asked or there is none.</summary>
    public ReachReport? Reach { get; init; }

    /// <summary>What the reach was asked with.</summary>
    public ReachOptions? ReachOptions { get; init; }

    /// <summary>Why there is no reach, line by line.</summary>
    public ImmutableArray<string> Problems { get; init; } = [];

    /// <summary>What the parts of the work took, in milliseconds, for the header of that name.</summary>
    public string Timing { get; init; } = "";

    /// <summary>Antenna above the ground in metres: as the path or the reach has it; null when neither does.</summary>
    public double? HeightMetres => Path?.Path.FromHeightMetres?.Median ?? Links.Select(OwnHeightMetres).FirstOrDefault(metres => metres is not null) ?? Reach?.Setup.Field?.StationHeightMetres;

    /// <summary>Values of the reach, row by row from the north; NaN where there is none.</summary>
    public ReadOnlyMemory<float> Values => Reach is { } report && ReachOptions is { } options
        ? ReachLayers.Of(options.Layer, report.Map, report.Compared?.Map, report.Range, options.Direction)
        : default;

    private double? OwnHeightMetres(LinkReport link) => (link.From.Key == Station.Key ? link.Path.FromHeightMetres : link.Path.ToHeightMetres)?.Median;
}
