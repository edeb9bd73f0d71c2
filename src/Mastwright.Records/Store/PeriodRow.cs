namespace Mastwright.Records.Store;

/// <summary>A reception as the proof needs it; stations by address.</summary>
/// <param name="TimeMicroseconds">When, in microseconds since 1970 UTC, what the clock is known to be off taken away.</param>
/// <param name="Receiver">Who heard it.</param>
/// <param name="LastSender">Whose transmission it was; null when unknown.</param>
/// <param name="Originator">Who made the packet; null when unknown.</param>
/// <param name="SignalPowerDbm">Signal power in dBm; NaN when unknown.</param>
/// <param name="SnrDb">Signal-to-noise ratio in dB; NaN when unknown.</param>
/// <param name="Hops">How many times it was passed on before; −1 when unknown.</param>
/// <param name="Counter">The packet's number where it is a whole number; −1 when not.</param>
/// <param name="SpreadingFactor">Spreading factor; 0 when unknown.</param>
public readonly record struct PeriodRow(
    long TimeMicroseconds, string Receiver, string? LastSender, string? Originator, double SignalPowerDbm, double SnrDb, int Hops, long Counter, int SpreadingFactor);

/// <summary>Takes receptions as they are read.</summary>
/// <param name="row">One of them; good until the next.</param>
public delegate void PeriodVisitor(in PeriodRow row);
