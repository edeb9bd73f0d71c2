namespace Mastwright.Network.Hops;

/// <summary>How worlds are tried.</summary>
public sealed record HopSettings
{
    /// <summary>Most links of a way, from the sender to the receiver: 1 or more.</summary>
    public int HopLimit { get; init => field = value >= 1 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "A way has 1 link or more."); } = 3;

    /// <summary>Number of worlds: 1 or more.</summary>
    public int Worlds { get; init => field = value >= 1 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "There is 1 world or more."); } = 1000;

    /// <summary>Packets flooded in each world: 1 or more.</summary>
    public int Packets { get; init => field = value >= 1 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "There is 1 packet or more."); } = 20;

    /// <summary>What the draws hang on.</summary>
    public ulong Seed { get; init; } = 1;
}
