namespace Mastwright.Network.Air;

/// <summary>By how much a packet of chirps must exceed another one, on the air at the same time, to be received all the same.</summary>
/// <remarks>
/// <para>Sources: C. Goursaud, J.-M. Gorce, "Dedicated networks for IoT: PHY/MAC state of the art and challenges", EAI Endorsed Transactions on Internet of Things 1 (2015), table of co-channel
/// rejection; D. Croce et al., "Impact of LoRa imperfect orthogonality: analysis of link-level performance", IEEE Communications Letters 22 (2018), measured. Both tables were read second-hand, as several public
/// works reprint them alike.</para>
/// <para>Range: spreading factors 7 to 12, equal bandwidth. Within one factor the two differ by 5 dB: 6 dB is the careful one.</para>
/// </remarks>
public static class CaptureThresholds
{
    /// <summary>Lowest spreading factor of the tables.</summary>
    public const int LeastFactor = 7;

    /// <summary>Highest spreading factor of the tables.</summary>
    public const int MostFactor = 12;

    private static readonly sbyte[,] Careful =
    {
        { 6, -16, -18, -19, -19, -20 },
        { -24, 6, -20, -22, -22, -22 },
        { -27, -27, 6, -23, -25, -25 },
        { -30, -30, -30, 6, -26, -28 },
        { -33, -33, -33, -33, 6, -29 },
        { -36, -36, -36, -36, -36, 6 },
    };

    private static readonly sbyte[,] Measured =
    {
        { 1, -8, -9, -9, -9, -9 },
        { -11, 1, -11, -12, -13, -13 },
        { -15, -13, 1, -13, -14, -15 },
        { -19, -18, -17, 1, -17, -18 },
        { -22, -22, -21, -20, 1, -20 },
        { -25, -25, -25, -24, -23, 1 },
    };

    /// <summary>Least difference of levels in dB, wanted less unwanted, by the first source.</summary>
    /// <param name="wantedFactor">Spreading factor of the wanted packet, 7 to 12.</param>
    /// <param name="unwantedFactor">Spreading factor of the other one.</param>
    public static double Db(int wantedFactor, int unwantedFactor) => Of(Careful, wantedFactor, unwantedFactor);

    /// <summary>The same by the second source.</summary>
    /// <inheritdoc cref="Db"/>
    public static double MeasuredDb(int wantedFactor, int unwantedFactor) => Of(Measured, wantedFactor, unwantedFactor);

    private static double Of(sbyte[,] table, int wantedFactor, int unwantedFactor)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(wantedFactor, LeastFactor);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(wantedFactor, MostFactor);
        ArgumentOutOfRangeException.ThrowIfLessThan(unwantedFactor, LeastFactor);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(unwantedFactor, MostFactor);
        return table[wantedFactor - LeastFactor, unwantedFactor - LeastFactor];
    }
}
