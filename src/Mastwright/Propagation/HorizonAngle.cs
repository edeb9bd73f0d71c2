namespace Mastwright.Propagation;

/// <summary>At what elevation a path leaves its transmitting antenna: along the line of sight, or over what stands highest before it.</summary>
public static class HorizonAngle
{
    /// <summary>The elevation in degrees; the same number as <see cref="ClearanceAnalysis.TransmitterElevationDegrees"/>, without its points.</summary>
    /// <param name="profile">The path, transmitter first. Its cover counts except at the first and last points.</param>
    /// <param name="transmitterHeightMetres">Height of the transmitting antenna above the ground, in metres, zero or more.</param>
    /// <param name="receiverHeightMetres">Height of the receiving antenna above the ground, in metres, zero or more.</param>
    /// <param name="kFactor">Effective earth-radius factor, above zero.</param>
    /// <param name="addCover">Whether the cover counts; false for a surface model.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double TransmitterDegrees(
        PathProfile profile, double transmitterHeightMetres, double receiverHeightMetres, double kFactor, bool addCover = true)
    {
        ArgumentNullException.ThrowIfNull(profile);
        double radius = EffectiveEarth.FromFactor(kFactor);
        ReadOnlySpan<double> x = profile.DistancesMetres;
        double length = profile.LengthMetres;
        double hts = profile.HeightsMetres[0] + Domain.ZeroOrMore(transmitterHeightMetres, nameof(transmitterHeightMetres));
        double hrs = profile.HeightsMetres[^1] + Domain.ZeroOrMore(receiverHeightMetres, nameof(receiverHeightMetres));
        double slope = (hrs - hts) / length;
        for (int i = 1; i < x.Length - 1; i++)
        {
            double surface = profile.HeightsMetres[i] + (x[i] * (length - x[i]) / (2 * radius)) + (addCover ? profile.CoverMetres[i] : 0);
            slope = Math.Max(slope, (surface - hts) / x[i]);
        }

        // The angle is to the local horizontal, which the chord frame tilts by half the arc of the path.
        return double.RadiansToDegrees(Math.Atan(slope - (length / (2 * radius))));
    }
}
