namespace Mastwright.Station.Feed;

/// <summary>A stage of a receiving chain as the cascade formula sees it.</summary>
/// <param name="GainDb">Available gain in dB: negative for a loss.</param>
/// <param name="NoiseFigureDb">Noise figure in dB at 290 K: zero or more; that of a passive part at 290 K is its loss.</param>
public readonly record struct NoiseStage(double GainDb, double NoiseFigureDb);

/// <summary>Noise figure of stages one after the other.</summary>
/// <remarks>
/// Source: H. T. Friis, "Noise figures of radio receivers", Proc. IRE 32 (1944): F = F1 + (F2−1)/G1 + (F3−1)/(G1·G2) + …
/// Assumes matched stages; a passive stage is at 290 K (at 320 K a loss of 3 dB makes 0.2 dB more than counted).
/// </remarks>
public static class NoiseCascade
{
    /// <summary>Noise figure in dB of the whole, referred to the input of the first stage.</summary>
    /// <param name="stages">Stages in the order in which the signal meets them; none gives 0 dB.</param>
    public static double NoiseFigureDb(ReadOnlySpan<NoiseStage> stages)
    {
        double factor = 1;
        double gain = 1;
        foreach (NoiseStage stage in stages)
        {
            factor += (Math.Pow(10, stage.NoiseFigureDb / 10) - 1) / gain;
            gain *= Math.Pow(10, stage.GainDb / 10);
        }

        return 10 * Math.Log10(factor);
    }
}
