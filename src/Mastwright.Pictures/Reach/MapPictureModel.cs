using System.Collections.Immutable;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Reach;

/// <summary>What every map picture tells besides its map.</summary>
public abstract record MapPictureModel
{
    /// <summary>Which way the margins count.</summary>
    public ReachDirection Direction { get; init; }

    /// <summary>The ground under it: a square in the map's own UTM zone.</summary>
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

/// <summary>A place to be marked on a map picture.</summary>
/// <param name="Name">Its name.</param>
/// <param name="EastingMetres">Easting in the map's zone.</param>
/// <param name="NorthingMetres">Northing in the map's zone.</param>
public sealed record ReachMark(string Name, double EastingMetres, double NorthingMetres);
