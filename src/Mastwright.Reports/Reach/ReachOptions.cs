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

    internal required string Station { get; init; }

    internal string? FitOut { get; init; }

    internal string? CompareFitOut { get; init; }

    internal required ReachArea Area { get; init; }

    internal required string Receiver { get; init; }

    internal double? ReceiverHeightMetres { get; init; }

    internal ReachDirection Direction { get; init; }

    internal required string Layer { get; init; }

    internal bool OwnPaths { get; init; }

    internal required string[] Files { get; init; }

    /// <summary>The station with the fit-out asked for.</summary>
    internal string StationName => WithFitOut(FitOut);

    /// <summary>The same station with the fit-out to compare with.</summary>
    internal string ComparedName => WithFitOut(CompareFitOut);

    private string WithFitOut(string? key) => key is null ? Station : $"{Station.Split('/')[0]}/{key.Split('/')[^1]}";
}
