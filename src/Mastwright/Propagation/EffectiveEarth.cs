namespace Mastwright.Propagation;

/// <summary>The Earth with the radius that makes bent rays straight.</summary>
/// <remarks>Source: Rec. ITU-R P.1812 section 3.7, equations (6), (7a) and (7b), as confirmed by the published results.</remarks>
public static class EffectiveEarth
{
    /// <summary>Mean radius of the Earth, in metres, as the Recommendations use it.</summary>
    public const double MeanRadiusMetres = 6_371_000;

    /// <summary>Factor k exceeded for the time β0 in which ducts form: 3.</summary>
    public const double DuctingFactor = 3;

    /// <summary>Gradient taken where nobody gives one, in N-units per km: 45.</summary>
    public const double DefaultGradient = 45;

    /// <summary>Median factor k = 157 / (157 − ΔN).</summary>
    /// <param name="refractivityGradient">Fall ΔN of the refractivity over the first kilometre, in N-units per km: a positive number, below 157.</param>
    /// <exception cref="ArgumentOutOfRangeException">ΔN is not finite, or is 157 or more: rays then follow the Earth and no factor exists.</exception>
    public static double FactorFromGradient(double refractivityGradient) => refractivityGradient < 157 && double.IsFinite(refractivityGradient)
        ? 157 / (157 - refractivityGradient)
        : throw new ArgumentOutOfRangeException(nameof(refractivityGradient), refractivityGradient, "The fall of refractivity is below 157 N-units per km.");

    /// <summary>Gradient ΔN that gives a factor k, in N-units per km.</summary>
    /// <param name="factor">Effective earth-radius factor k, above zero.</param>
    public static double GradientFromFactor(double factor) => 157 * (1 - (1 / Domain.Positive(factor, nameof(factor))));

    /// <summary>Median effective radius in metres for a gradient ΔN in N-units per km.</summary>
    public static double FromGradient(double refractivityGradient) => MeanRadiusMetres * FactorFromGradient(refractivityGradient);

    /// <summary>Effective radius in metres for a factor k above zero.</summary>
    public static double FromFactor(double factor) => MeanRadiusMetres * Domain.Positive(factor, nameof(factor));

    /// <summary>How far the bulge of the Earth stands above the chord between the two ends of a path, in metres.</summary>
    /// <param name="fromOneEndMetres">Distance from one end, in metres.</param>
    /// <param name="fromOtherEndMetres">Distance from the other end, in metres.</param>
    /// <param name="effectiveRadiusMetres">Effective radius in metres, above zero.</param>
    public static double BulgeMetres(double fromOneEndMetres, double fromOtherEndMetres, double effectiveRadiusMetres) =>
        fromOneEndMetres * fromOtherEndMetres / (2 * Domain.Positive(effectiveRadiusMetres, nameof(effectiveRadiusMetres)));
}
