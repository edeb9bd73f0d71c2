using Mastwright.Station.Antenna;

namespace Mastwright.Network.Reach;

/// <summary>A pattern that is alike in all azimuths, as a table over elevation: made once, asked for every cell.</summary>
/// <remarks>
/// Straight lines between steps of 0.01°; where the table falls by more than <see cref="SteepDb"/> in one step, as beside a null, the pattern
/// itself is asked. Within 0.001 dB of the pattern (measured in GainOverElevationTests).
/// </remarks>
internal sealed class GainOverElevation
{
    private const int StepsADegree = 100;
    private const int Horizon = 90 * StepsADegree;
    private const double SteepDb = 0.1;

    private readonly AntennaPattern pattern;
    private readonly double[] table = new double[(2 * Horizon) + 1];

    internal GainOverElevation(AntennaPattern pattern)
    {
        this.pattern = pattern;
        for (int i = 0; i < table.Length; i++)
        {
            table[i] = pattern.RelativeDb((double)(i - Horizon) / StepsADegree);
        }
    }

    /// <summary>Level in dB relative to the main beam, at an elevation in degrees from -90 to 90.</summary>
    internal double RelativeDb(double elevationDegrees)
    {
        double at = (elevationDegrees * StepsADegree) + Horizon;
        int i = Math.Clamp((int)at, 0, table.Length - 2);
        double step = table[i + 1] - table[i];

        // Not the other way round: the difference of two nulls is no number.
        return Math.Abs(step) < SteepDb ? table[i] + ((at - i) * step) : pattern.RelativeDb(elevationDegrees);
    }
}
