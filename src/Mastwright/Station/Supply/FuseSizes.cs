namespace Mastwright.Station.Supply;

/// <summary>Rated currents that fuses are made for.</summary>
/// <remarks>The R 10 series of ISO 3, from which IEC 60127 takes its ratings (from memory).</remarks>
public static class FuseSizes
{
    private static readonly double[] Amperes =
        [0.1, 0.125, 0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8, 1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8, 10, 12.5, 16, 20, 25, 32, 40, 50, 63];

    /// <summary>The smallest fuse that carries a peak with a quarter to spare; null when none is large enough.</summary>
    /// <param name="peakAmperes">The greatest current in amperes.</param>
    public static double? For(double peakAmperes)
    {
        foreach (double amperes in Amperes)
        {
            if (amperes >= SupplyDefaults.FuseFactor * peakAmperes)
            {
                return amperes;
            }
        }

        return null;
    }
}
