namespace Mastwright.Records.Store;

/// <summary>What one receiver heard on one day.</summary>
/// <param name="DayMicroseconds">Beginning of the day, in microseconds of UTC.</param>
/// <param name="Receiver">Address of the receiver.</param>
/// <param name="Records">Number of receptions.</param>
public sealed record DayCount(long DayMicroseconds, string Receiver, long Records);
