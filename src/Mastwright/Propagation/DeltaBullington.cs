namespace Mastwright.Propagation;

/// <summary>Diffraction over any ground, by Bullington's equivalent edge corrected for the round Earth.</summary>
/// <remarks>
/// Source: Rec. ITU-R P.526 section 4.5 and Rec. ITU-R P.1812 sections 4.3.1 to 4.3.4, equations (21), (27), (37) to (39); confirmed by
/// the published results of P.1812. The wavelength is that of P.1812, 0.2998 / f(GHz).
/// </remarks>
public static class DeltaBullington
{
    /// <summary>The losses at one effective radius; their outcome is <see cref="DiffractionTerms.LossDb"/>.</summary>
    /// <param name="profile">The path, transmitter first. Its cover is added except at the first and last points.</param>
    /// <param name="transmitterHeightMetres">Height of the transmitting antenna above the ground, in metres, above zero.</param>
    /// <param name="receiverHeightMetres">Height of the receiving antenna above the ground, in metres, above zero.</param>
    /// <param name="frequencyHz">Frequency in Hz, above zero.</param>
    /// <param name="effectiveRadiusMetres">Effective radius of the Earth in metres, above zero.</param>
    /// <param name="polarisation">Polarisation of the wave.</param>
    /// <param name="addCover">Whether the cover is added; false for a surface model.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static DiffractionTerms Evaluate(
        PathProfile profile,
        double transmitterHeightMetres,
        double receiverHeightMetres,
        double frequencyHz,
        double effectiveRadiusMetres,
        WavePolarisation polarisation = WavePolarisation.Vertical,
        bool addCover = true)
    {
        ArgumentNullException.ThrowIfNull(profile);
        double radius = Domain.Positive(effectiveRadiusMetres, nameof(effectiveRadiusMetres));
        ReadOnlySpan<double> ground = profile.HeightsMetres;
        double hts = ground[0] + Domain.Positive(transmitterHeightMetres, nameof(transmitterHeightMetres));
        double hrs = ground[^1] + Domain.Positive(receiverHeightMetres, nameof(receiverHeightMetres));
        SurfaceWave surface = new(Domain.Positive(frequencyHz, nameof(frequencyHz)) * 1e-9, polarisation, RadioClimate.Of(profile).SeaFraction);
        ProfileReading path = ProfileReading.Take(profile, hts, hrs, radius, radius, addCover);
        SmoothEarthFit fit = SmoothEarthFit.Of(profile, in path);
        return DiffractionTerms.Of(
            path.Median,
            profile.DistancesMetres,
            path.LineSlope,
            hts - fit.DiffractionTransmitterMetres,
            hrs - fit.DiffractionReceiverMetres,
            radius,
            surface);
    }
}
