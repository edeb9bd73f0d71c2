namespace Mastwright.Storage.Plans;

/// <summary>Keys of what a station sends.</summary>
internal static class TrafficKeys
{
    private static readonly NumberShape Packets = new(0, 100_000);

    internal static readonly KeyShape Own = new("own", Packets, "Packets an hour of the station's own, on average.");
    internal static readonly KeyShape OwnWorst = new("own-worst-hour", Packets, "Packets of its own in the busiest hour.");
    internal static readonly KeyShape Relayed = new("relayed", Packets, "Packets an hour that it passes on for others, on average.");
    internal static readonly KeyShape RelayedWorst = new("relayed-worst-hour", Packets, "Packets that it passes on in the busiest hour.");
    internal static readonly MappingShape Shape = new("traffic", Own, OwnWorst, Relayed, RelayedWorst);
}
