namespace Mastwright.Station.Antenna;

/// <summary>The average side-lobe envelope of an omnidirectional antenna over elevation.</summary>
/// <remarks>
/// <para>Source: Rec. ITU-R F.1336 (editions 4 and 5), recommends 2.2 with k of recommends 2.4, from memory and two public
/// implementations that agree; the Recommendation's own text was not at hand. For 400 MHz to 70 GHz.</para>
/// <para>It is an envelope: an average of what such antennas do beside the main beam. It has no nulls, and a real antenna
/// of the kind can be 10 dB and more below it at some angles and some decibels above it at others.</para>
/// </remarks>
public static class AverageSideLobes
{
    /// <summary>Lowest frequency in hertz that the form is given for.</summary>
    public const double LowestHz = 400e6;

    /// <summary>Side-lobe factor k of typical antennas below 3 GHz (recommends 2.4).</summary>
    public const double TypicalK = 0.7;

    /// <summary>Half-power beamwidth in degrees of an omnidirectional antenna by its gain: 107.6·10^(−0.1·G0).</summary>
    public static double BeamwidthDegrees(double gainDbi) => 107.6 * Math.Pow(10, -0.1 * gainDbi);

    /// <summary>Level in dB relative to the main beam: zero or less.</summary>
    /// <param name="elevationDegrees">Angle from the main beam in degrees, -90 to 90 (more is taken as 90).</param>
    /// <param name="beamwidthDegrees">Half-power beamwidth θ3 in degrees, greater than zero.</param>
    /// <param name="k">Side-lobe factor, zero (improved antennas) or more.</param>
    public static double RelativeDb(double elevationDegrees, double beamwidthDegrees, double k = TypicalK)
    {
        double ratio = Math.Min(Math.Abs(elevationDegrees), 90) / beamwidthDegrees;
        if (ratio < 1)
        {
            return -12 * ratio * ratio;
        }

        double shoulder = Math.Sqrt(Math.Max(0, 1.25 - (Math.Log10(k + 1) / 1.2)));
        return ratio < shoulder
            ? -15 + (10 * Math.Log10(k + 1))
            : -15 + (10 * Math.Log10(Math.Pow(ratio, -1.5) + k));
    }
}
