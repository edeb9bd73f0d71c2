namespace Mastwright.Plans;

/// <summary>What records call a station, and for how long: a changed radio keeps its station.</summary>
/// <param name="Address">The address as the source writes it.</param>
/// <param name="FromMicroseconds">The first moment, in microseconds since 1970 UTC; null: from ever.</param>
/// <param name="ToMicroseconds">The first moment after; null: for ever.</param>
public sealed record StationAddress(string Address, long? FromMicroseconds, long? ToMicroseconds)
{
    /// <summary>Whether it was the station's at a moment.</summary>
    public bool Holds(long timeMicroseconds) => !(timeMicroseconds < FromMicroseconds) && !(timeMicroseconds >= ToMicroseconds);
}
