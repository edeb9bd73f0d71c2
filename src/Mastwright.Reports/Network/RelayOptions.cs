using System.Collections.Immutable;
using Mastwright.Network.Reach;
using Mastwright.Plans;
using Mastwright.Reports.Reach;

namespace Mastwright.Reports.Network;

/// <summary>What a relay search was asked for.</summary>
internal sealed record RelayOptions
{
    internal const double UsualHalfSideMetres = 10_000;
    internal const double UsualCellMetres = 90;
    internal const double UsualMastMetres = 6;
    internal const double UsualSpacingMetres = 300;
    internal const double UsualProminenceMetres = 10;
    internal const double UsualTrackMetres = 1_000;
    internal const double MostReachMetres = 30_000;
    internal const int UsualCandidates = 500;
    internal const int UsualSwept = 120;
    internal const int MostRelays = 5;
    internal const int MostCandidates = 20_000;

    /// <summary>The station whose network it is: KEY or SITE/FIT-OUT.</summary>
    internal required string Home { get; init; }

    /// <summary>The station that relays are like; null for the home station.</summary>
    internal string? Like { get; init; }

    internal RelayGoal Goal { get; init; } = RelayGoal.Shadow;

    /// <summary>Most relays, 1 to <see cref="MostRelays"/>.</summary>
    internal int Relays { get; init; } = 1;

    internal bool ThroughRelays { get; init; }

    internal double HalfSideMetres { get; init; } = UsualHalfSideMetres;

    internal double CellMetres { get; init; } = UsualCellMetres;

    /// <summary>How far a station is taken to reach, in metres; null for what is usual.</summary>
    internal double? ReachAskedMetres { get; init; }

    internal double ReachMetres => ReachAskedMetres ?? Math.Min(MostReachMetres, 2 * HalfSideMetres);

    /// <summary>Least step of the sweeps in metres; null for half a cell.</summary>
    internal double? StepAskedMetres { get; init; }

    internal double StepMetres => StepAskedMetres ?? (CellMetres / 2);

    internal string Receiver { get; init; } = ReachReceiver.HandheldKey;

    internal double? ReceiverHeightMetres { get; init; }

    internal ReachDirection Direction { get; init; } = ReachDirection.Heard;

    /// <summary>Whether cells of the sea do not count.</summary>
    internal bool LandOnly { get; init; }

    internal string? WeightsFile { get; init; }

    /// <summary>Height of a relay's antenna in metres; null for what is usual.</summary>
    internal double? MastMetres { get; init; }

    /// <summary>Most candidates that are looked for on the ground.</summary>
    internal int Candidates { get; init; } = UsualCandidates;

    internal double SpacingMetres { get; init; } = UsualSpacingMetres;

    internal double ProminenceMetres { get; init; } = UsualProminenceMetres;

    /// <summary>Most candidates that are swept.</summary>
    internal int Swept { get; init; } = UsualSwept;

    internal string? ExcludeFile { get; init; }

    internal string? TrackFile { get; init; }

    internal double TrackMetres { get; init; } = UsualTrackMetres;

    /// <summary>File of places that are the candidates; null for none.</summary>
    internal string? PlacesFile { get; init; }

    /// <summary>Sites of the plan that are candidates.</summary>
    internal ImmutableArray<string> Sites { get; init; } = [];

    /// <summary>What a map of one station is asked for.</summary>
    internal ReachOptions AsReach => new()
    {
        Stations = [Home],
        Area = new(ReachMetres, CellMetres),
        Receiver = Receiver,
        ReceiverHeightMetres = ReceiverHeightMetres,
        Direction = Direction,
        Files = [],
    };

    /// <summary>Whether candidates are looked for on the ground.</summary>
    internal bool LooksOnGround => PlacesFile is null && Sites.IsEmpty;
}

/// <summary>How far a search is.</summary>
/// <param name="Step">What is being done, in words.</param>
/// <param name="Done">How many of it are done.</param>
internal readonly record struct RelayProgress(string Step, int Done);
