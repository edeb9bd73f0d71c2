using Mastwright.Network.Reach;

namespace Mastwright.Pictures.Reach;

/// <summary>What the picture of one station's map shows.</summary>
public sealed record ReachPictureModel : MapPictureModel
{
    /// <summary>The map.</summary>
    public required ReachMap Map { get; init; }

    /// <summary>Name of the station.</summary>
    public required string StationName { get; init; }

    /// <summary>What stands there, in a line; empty for nothing to say.</summary>
    public string FitOutName { get; init; } = "";
}
