namespace Mastwright.Propagation;

/// <summary>Woodland for which ITU-R P.833 gives a largest loss.</summary>
public enum WoodlandKind
{
    /// <summary>Mixed coniferous and deciduous forest, northern Europe: 105.9 to 2 117.5 MHz.</summary>
    MixedNorthern,

    /// <summary>Mixed forest, western Europe: 900 to 2 200 MHz.</summary>
    MixedWestern,

    /// <summary>Tropical trees in a park: 900 to 1 800 MHz.</summary>
    TropicalPark,
}

/// <summary>Extra loss of a path with one antenna inside woodland.</summary>
/// <remarks>
/// Source: Rec. ITU-R P.833 section 2.1, A = Am (1 − exp(−dγ/Am)), the form seen quoted from edition 10; Am = A1 f^α (f in MHz) and its
/// coefficients from memory. The standard deviation about it is some 9 dB (from memory).
/// </remarks>
public static class Woodland
{
    /// <summary>The extra loss in dB, zero or more, never above the largest.</summary>
    /// <param name="depthMetres">Length of the path inside the woodland in metres, zero or more.</param>
    /// <param name="specificAttenuationDbPerMetre">Loss γ of the first metres, in dB/m, above zero.</param>
    /// <param name="largestDb">Largest loss Am in dB, above zero: the wave then travels over and around the trees.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double LossDb(double depthMetres, double specificAttenuationDbPerMetre, double largestDb)
    {
        double most = Domain.Positive(largestDb, nameof(largestDb));
        double slope = Domain.Positive(specificAttenuationDbPerMetre, nameof(specificAttenuationDbPerMetre));
        return most * (1 - Math.Exp(-Domain.ZeroOrMore(depthMetres, nameof(depthMetres)) * slope / most));
    }

    /// <summary>The extra loss with the largest loss of a kind of woodland and the specific attenuation taken by default.</summary>
    /// <param name="depthMetres">Length of the path inside the woodland in metres, zero or more.</param>
    /// <param name="frequencyHz">Frequency in Hz, above zero.</param>
    /// <param name="kind">Kind of woodland.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double LossDb(double depthMetres, double frequencyHz, WoodlandKind kind) =>
        LossDb(depthMetres, DefaultSpecificAttenuationDbPerMetre(frequencyHz), LargestDb(frequencyHz, kind));

    /// <summary>Largest loss Am in dB.</summary>
    /// <param name="frequencyHz">Frequency in Hz, above zero; <see cref="Covers"/> says whether the coefficients were measured there.</param>
    /// <param name="kind">Kind of woodland.</param>
    public static double LargestDb(double frequencyHz, WoodlandKind kind)
    {
        (double a1, double alpha, _, _) = Coefficients(kind);
        return a1 * Math.Pow(Domain.Positive(frequencyHz, nameof(frequencyHz)) * 1e-6, alpha);
    }

    /// <summary>Whether the largest loss of a kind of woodland was measured at a frequency.</summary>
    public static bool Covers(double frequencyHz, WoodlandKind kind)
    {
        (_, _, double low, double high) = Coefficients(kind);
        return frequencyHz >= low * 1e6 && frequencyHz <= high * 1e6;
    }

    /// <summary>Specific attenuation taken where nobody gives one, in dB/m: 0.45 f^0.284, f in GHz.</summary>
    /// <param name="frequencyHz">Frequency in Hz, above zero; the source has 0.23 to 95 GHz.</param>
    /// <remarks>
    /// Source: the first 14 m of the modified exponential decay model for dry, leafed trees (Weissberger, 1982), from memory. P.833 gives γ as
    /// a figure only, which was not at hand.
    /// </remarks>
    public static double DefaultSpecificAttenuationDbPerMetre(double frequencyHz) =>
        0.45 * Math.Pow(Domain.Positive(frequencyHz, nameof(frequencyHz)) * 1e-9, 0.284);

    private static (double A1, double Alpha, double LowMHz, double HighMHz) Coefficients(WoodlandKind kind) => kind switch
    {
        WoodlandKind.MixedWestern => (1.15, 0.43, 900, 2200),
        WoodlandKind.TropicalPark => (0.18, 0.752, 900, 1800),
        _ => (1.37, 0.42, 105.9, 2117.5),
    };
}
