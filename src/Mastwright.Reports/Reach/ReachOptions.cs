using Mastwright.Network.Reach;
using Mastwright.Plans;

namespace Mastwright.Reports.Reach;

/// <summary>What the reach command was asked for.</summary>
internal sealed record ReachOptions
{
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
