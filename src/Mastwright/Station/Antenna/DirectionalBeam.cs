namespace Mastwright.Station.Antenna;

/// <summary>The main beam of a directional antenna by its beamwidths, with a floor for everything beside it.</summary>
/// <remarks>
/// Level = −min(12·(Δε/θ3)² + 12·(Δφ/φ3)², floor): −3 dB at half the beamwidth off either way, as in the main-beam term of
/// Rec. ITU-R F.1336. Good to about 1 dB down to −6 dB; beyond, the floor is a plain figure (15 dB, common practice) that
/// claims neither a null nor the front-to-back ratio of a real Yagi.
/// </remarks>
public static class DirectionalBeam
{
    /// <summary>Product of both half-power beamwidths and the gain's factor, in square degrees: φ3·θ3 = 31000·10^(−0.1·G0) (Rec. ITU-R F.1336, recommends 3, from memory).</summary>
    public const double BeamProductSquareDegrees = 31000;

    /// <summary>The half-power beamwidth in degrees that goes with a gain and the other plane's beamwidth; of a round beam when that is null.</summary>
    public static double BeamwidthDegrees(double gainDbi, double? otherPlaneDegrees)
    {
        double product = BeamProductSquareDegrees * Math.Pow(10, -0.1 * gainDbi);
        return Math.Min(360, otherPlaneDegrees is { } other ? product / other : Math.Sqrt(product));
    }

    /// <summary>Level in dB relative to the main beam: zero or less.</summary>
    /// <param name="elevationOffDegrees">Elevation from the main beam, in degrees.</param>
    /// <param name="azimuthOffDegrees">Azimuth from the main beam, in degrees: -180 to 180.</param>
    /// <param name="elevationBeamwidthDegrees">Half-power beamwidth in the vertical plane, in degrees.</param>
    /// <param name="azimuthBeamwidthDegrees">Half-power beamwidth in the horizontal plane, in degrees.</param>
    /// <param name="floorDb">Greatest drop in dB that is claimed.</param>
    public static double RelativeDb(
        double elevationOffDegrees, double azimuthOffDegrees, double elevationBeamwidthDegrees, double azimuthBeamwidthDegrees, double floorDb)
    {
        double elevation = elevationOffDegrees / elevationBeamwidthDegrees;
        double azimuth = azimuthOffDegrees / azimuthBeamwidthDegrees;
        return -Math.Min(12 * ((elevation * elevation) + (azimuth * azimuth)), floorDb);
    }
}
