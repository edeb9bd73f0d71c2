namespace Mastwright.Station.Feed;

/// <summary>A return loss that was measured or stated, and where on the feed.</summary>
/// <param name="ReturnLossDb">Return loss in dB: greater than zero (a VSWR is turned into it on reading).</param>
/// <param name="AtAntenna">True at the antenna's own connector, false at the radio's end of the feed.</param>
public sealed record MismatchReading(double ReturnLossDb, bool AtAntenna);
