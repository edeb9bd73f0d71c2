using Mastwright.Network.Reach;
using Mastwright.Plans;

namespace Mastwright.Reports.Reach;

/// <summary>What the reach command was asked for.</summary>
internal sealed record ReachOptions
{
    /// <summary>The radius, in metres, where none is asked for.</summary>
    internal const double UsualRadiusMetres = 10_000;

    /// <summary>The side of a cell, in metres, where none is asked for.</summary>
    internal const double UsualCellMetres = 90;

    /// <summary>The stations named, as they were named.</summary>
    internal required string[] Stations { get; init; }

    /// <summary>Whether every site with a fit-out in use is meant as well.</summary>
    internal bool AllSites { get; init; }

    /// <summary>Whether the answer is about several stations together.</summary>
    internal bool IsOfSeveral => AllSites || Stations.Length > 1;

    internal string? FitOut { get; init; }

    internal string? CompareFitOut { get; init; }

    internal required ReachArea Area { get; init; }

    internal required string Receiver { get; init; }

    internal double? ReceiverHeightMetres { get; init; }

    internal ReachDirection Direction { get; init; }

    /// <summary>What a raster or picture shows; null for what is usual.</summary>
    internal string? LayerAsked { get; init; }

    internal string Layer => LayerAsked ?? (IsOfSeveral ? ReachLayers.BestServer : ReachLayers.Margin);

    internal bool IsDark { get; init; }

    internal bool OwnPaths { get; init; }

    /// <summary>File of weights to be counted inside; null for none.</summary>
    internal string? WeightsFile { get; init; }

    /// <summary>Whether the map is worked out over the range of the station's place and height as well.</summary>
    internal bool WithRanges { get; init; }

    /// <summary>Least step of the sweep in metres; 0 for the ground's own. Above 0 the map is a quick one: there is none where a sweep does not fit.</summary>
    internal double LeastStepMetres { get; init; }

    internal required string[] Files { get; init; }

    /// <summary>The station with the fit-out asked for.</summary>
    internal string StationName => WithFitOut(FitOut);

    /// <summary>The same station with the fit-out to compare with.</summary>
    internal string ComparedName => WithFitOut(CompareFitOut);

    private string WithFitOut(string? key) => key is null ? Stations[0] : $"{Stations[0].Split('/')[0]}/{key.Split('/')[^1]}";
}
