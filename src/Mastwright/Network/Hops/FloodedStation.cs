namespace Mastwright.Network.Hops;

/// <summary>How a station is reached by flooding, over the worlds that were tried.</summary>
/// <param name="Station">Its index.</param>
/// <param name="Confidence">Share of the worlds in which the typical packet, the one at median fading, gets there within the hop limit.</param>
/// <param name="DeliversIfReached">Mean share of packets that get there in those worlds; 0 when there are none.</param>
/// <param name="TypicalHops">Median over those worlds of the fewest hops; 0 when there are none.</param>
/// <param name="ByHops">Share of the worlds in which it is reached by just so many hops at the fewest: by 1, by 2, …, by the hop limit.</param>
public sealed record FloodedStation(int Station, double Confidence, double DeliversIfReached, int TypicalHops, IReadOnlyList<double> ByHops)
{
    /// <summary>Half width of the range, at 95 %, that drawing so many worlds leaves the confidence (normal approximation of the binomial).</summary>
    /// <param name="worlds">Number of worlds.</param>
    public double HalfRange(int worlds) => 1.96 * Math.Sqrt(Math.Max(Confidence * (1 - Confidence), 1.0 / worlds) / worlds);
}
