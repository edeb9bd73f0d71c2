namespace Mastwright.Propagation;

/// <summary>The three losses of the delta-Bullington model at one effective radius, and what they come to.</summary>
/// <param name="ActualDb">Bullington loss over the actual profile.</param>
/// <param name="SmoothDb">Bullington loss over the smooth profile.</param>
/// <param name="SphereDb">Spherical-Earth loss over the smooth profile.</param>
/// <remarks>Source: Rec. ITU-R P.1812 section 4.3.4, equations (37) to (39); Rec. ITU-R P.526 section 4.5.</remarks>
public readonly record struct DiffractionTerms(double ActualDb, double SmoothDb, double SphereDb)
{
    /// <summary>The diffraction loss in dB, zero or more: Bullington, plus what the round Earth has over Bullington's view of it.</summary>
    public double LossDb => ActualDb + Math.Max(SphereDb - SmoothDb, 0);

    internal static DiffractionTerms Of(
        in BullingtonReading reading,
        ReadOnlySpan<double> x,
        double lineSlope,
        double overSmoothT,
        double overSmoothR,
        double radius,
        in SurfaceWave surface) => new(
            reading.LossDb(x[^1], lineSlope, surface.WavelengthMetres),
            SmoothBullington.LossDb(x, overSmoothT, overSmoothR, radius, surface.WavelengthMetres),
            SphericalEarth.LossDb(x[^1] / 1000, overSmoothT, overSmoothR, radius / 1000, surface));
}
