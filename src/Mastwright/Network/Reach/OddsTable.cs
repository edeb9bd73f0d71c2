namespace Mastwright.Network.Reach;

/// <summary>The odds of a link over its margin, for one pair of spreads: made once, asked for every cell.</summary>
/// <remarks>Steps of 0.1 dB with straight lines between: within 1e-4 of <see cref="LinkOdds.From"/> for an unknown spread of 2 dB or more (measured in OddsTableTests).</remarks>
public sealed class OddsTable
{
    private const double StepDb = 0.1;
    private const int StepsASide = 600;

    private readonly double[] works = new double[(2 * StepsASide) + 1];
    private readonly Lazy<double[]> delivers;

    /// <summary>Makes the table.</summary>
    /// <param name="unknownDb">Standard deviation in dB of what is not known about the links, above zero.</param>
    /// <param name="fadingDb">Standard deviation in dB of what varies from packet to packet, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A standard deviation is outside its range.</exception>
    public OddsTable(double unknownDb, double fadingDb)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(unknownDb);
        ArgumentOutOfRangeException.ThrowIfNegative(fadingDb);
        for (int i = 0; i < works.Length; i++)
        {
            works[i] = LinkOdds.From(MarginOf(i), unknownDb, 0).Works;
        }

        // An integral for each margin: only for whoever asks what is delivered.
        delivers = new(() => [.. Enumerable.Range(0, works.Length).Select(i => LinkOdds.From(MarginOf(i), unknownDb, fadingDb).DeliversIfItWorks)]);
    }

    /// <summary>The odds at a margin in dB; beyond ±60 dB those at the end of the table.</summary>
    public LinkOdds At(double marginDb)
    {
        (int i, double share) = Place(marginDb);
        return new(Between(works, i, share), Between(delivers.Value, i, share));
    }

    /// <summary>The confidence alone that the link works.</summary>
    /// <inheritdoc cref="At"/>
    internal double WorksAt(double marginDb)
    {
        (int i, double share) = Place(marginDb);
        return Between(works, i, share);
    }

    private static double MarginOf(int step) => (step - StepsASide) * StepDb;

    private static double Between(double[] table, int step, double share) => (table[step] * (1 - share)) + (table[step + 1] * share);

    private static (int Step, double Share) Place(double marginDb)
    {
        double at = Math.Clamp((marginDb / StepDb) + StepsASide, 0, 2 * StepsASide);
        int i = Math.Min((int)at, (2 * StepsASide) - 1);
        return (i, at - i);
    }
}
