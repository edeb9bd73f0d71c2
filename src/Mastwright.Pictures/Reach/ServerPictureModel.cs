using System.Collections.Immutable;
using Mastwright.Network.Reach;

namespace Mastwright.Pictures.Reach;

/// <summary>What a picture of several stations shows.</summary>
public sealed record ServerPictureModel : MapPictureModel
{
    /// <summary>Best server and count.</summary>
    public required BestServers Servers { get; init; }

    /// <summary>Whether it shows how many stations reach a place, else which one does best.</summary>
    public bool ShowsCount { get; init; }

    /// <summary>The stations, in the order of their numbers.</summary>
    public required ImmutableArray<MapStation> Stations { get; init; }
}
