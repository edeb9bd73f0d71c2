using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace Mastwright.Workbench.Drag;

/// <summary>What a step of a drag asks: one station, perhaps at another place, its links, one path of it and its reach.</summary>
internal sealed record DragQuestion
{
    /// <summary>The station: KEY, SITE/FIT-OUT, or a trial (see <see cref="Desk.Trial"/>).</summary>
    [JsonPropertyName("station")]
    public required string Station { get; init; }

    /// <summary>Names who asks: a newer question of the same asker ends the work on an older one. Empty for nobody in particular.</summary>
    [JsonPropertyName("asker")]
    public string Asker { get; init; } = "";

    /// <summary>Fit-outs that stand in for those in use: SITE/FIT-OUT.</summary>
    [JsonPropertyName("fit-outs")]
    public ImmutableArray<string> FitOuts { get; init; } = [];

    /// <summary>Key of the path's other end; null for no path.</summary>
    [JsonPropertyName("to")]
    public string? To { get; init; }

    /// <summary>Whether the ledger is that of the way to the station, not of the way from it.</summary>
    [JsonPropertyName("back")]
    public bool IsBack { get; init; }

    /// <summary>Whether the station's links are wanted.</summary>
    [JsonPropertyName("links")]
    public bool WithLinks { get; init; } = true;

    /// <summary>The reach wanted; null for none.</summary>
    [JsonPropertyName("reach")]
    public DragReach? Reach { get; init; }
}

/// <summary>The reach that a step of a drag asks.</summary>
internal sealed record DragReach
{
    /// <summary>Radius in metres.</summary>
    [JsonPropertyName("radius-metres")]
    public double RadiusMetres { get; init; } = Mastwright.Reports.Reach.ReachOptions.UsualRadiusMetres;

    /// <summary>Side of a cell in metres.</summary>
    [JsonPropertyName("cell-metres")]
    public double CellMetres { get; init; } = Mastwright.Reports.Reach.ReachOptions.UsualCellMetres;

    /// <summary>Whether the sweep may step as coarsely as the cells: quick, for following the pointer.</summary>
    [JsonPropertyName("quick")]
    public bool IsQuick { get; init; }

    /// <summary>Whether the colours are those for a dark page.</summary>
    [JsonPropertyName("dark")]
    public bool IsDark { get; init; }

    /// <summary>margin, level, loss, confidence, delivery or difference.</summary>
    [JsonPropertyName("layer")]
    public string? Layer { get; init; }

    /// <summary>heard, hears or both.</summary>
    [JsonPropertyName("direction")]
    public string? Direction { get; init; }

    /// <summary>Who hears: handheld, handheld-indoors, mast, or the key of a neighbour.</summary>
    [JsonPropertyName("receiver")]
    public string? Receiver { get; init; }

    /// <summary>Key of the fit-out to compare with, for the layer "difference".</summary>
    [JsonPropertyName("compare-fit-out")]
    public string? CompareFitOut { get; init; }
}
