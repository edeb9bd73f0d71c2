namespace Mastwright.Network.Reach;

/// <summary>The odds of a link over its margin, for one pair of spreads: made once, asked for every cell.</summary>
/// <remarks>Steps of 0.1 dB with straight lines between: within 1e-4 of <see cref="LinkOdds.From"/> for an unknown spread of 2 dB or more (measured in OddsTableTests).</remarks>
public sealed class OddsTable
{
    private const double StepDb = 0.1;
    private const int StepsASide = 600;

    private readonly LinkOdds[] table = new LinkOdds[(2 * StepsASide) + 1];

    /// <summary>Makes the table.</summary>
    /// <param name="unknownDb">Standard deviation in dB of what is not known about the links, above zero.</param>
    /// <param name="fadingDb">Standard deviation in dB of what varies from packet to packet, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A standard deviation is outside its range.</exception>
    public OddsTable(double unknownDb, double fadingDb)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(unknownDb);
        for (int i = 0; i < table.Length; i++)
        {
            table[i] = LinkOdds.From((i - StepsASide) * StepDb, unknownDb, fadingDb);
        }
    }

    /// <summary>The odds at a margin in dB; beyond ±60 dB those at the end of the table.</summary>
    public LinkOdds At(double marginDb)
    {
        double at = Math.Clamp((marginDb / StepDb) + StepsASide, 0, table.Length - 1);
        int i = Math.Min((int)at, table.Length - 2);
        double share = at - i;
        return new(
            (table[i].Works * (1 - share)) + (table[i + 1].Works * share),
            (table[i].DeliversIfItWorks * (1 - share)) + (table[i + 1].DeliversIfItWorks * share));
    }
}
