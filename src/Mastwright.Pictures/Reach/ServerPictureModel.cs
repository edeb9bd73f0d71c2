using System.Collections.Immutable;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Reach;

/// <summary>What a picture of several stations shows.</summary>
public sealed record ServerPictureModel
{
    /// <summary>Best server and count.</summary>
    public required BestServers Servers { get; init; }

    /// <summary>Which way the margins count.</summary>
    public ReachDirection Direction { get; init; }

    /// <summary>Whether it shows how many stations reach a place, else which one does best.</summary>
    public bool ShowsCount { get; init; }

    /// <summary>The stations, in the order of their numbers.</summary>
    public required ImmutableArray<MapStation> Stations { get; init; }

    /// <summary>The ground under it: a square in the grid's own UTM zone.</summary>
    public required ReachRelief Relief { get; init; }

    /// <summary>Who is carried about, such as "a hand-held at 1.5 m".</summary>
    public required string ReceiverName { get; init; }

    /// <summary>Frequency and modem setting, in a line.</summary>
    public required string RadioText { get; init; }

    /// <summary>How the losses were found, in a line.</summary>
    public required string MethodText { get; init; }

    /// <summary>Other places to be marked.</summary>
    public ImmutableArray<ReachMark> Marks { get; init; } = [];

    /// <summary>Light or dark.</summary>
    public Theme Theme { get; init; }

    /// <summary>What was assumed, in sentences, most telling first.</summary>
    public ImmutableArray<string> Assumptions { get; init; } = [];
}
