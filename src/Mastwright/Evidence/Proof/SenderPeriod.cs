namespace Mastwright.Evidence.Proof;

/// <summary>What was heard directly of one station within one period, hour by hour: sums alone, whatever the number of packets.</summary>
public sealed class SenderPeriod
{
    private const int SnrBins = 256;
    private const double SnrBinDb = 0.25;
    private const double LeastSnrDb = -32;
    private const int MostLost = 10_000;
    private const int UsualStep = 50;

    private readonly long firstHour;
    private readonly int[] snr = new int[SnrBins];
    private long lastCounter = -1;
    private long lastTime;
    private long smallSteps;
    private long otherSteps;

    internal SenderPeriod(ProofPeriod period)
    {
        firstHour = period.FirstHour;
        Heard = new int[period.Hours];
        Own = new int[period.Hours];
        Levels = new int[period.Hours];
        PowerDb = new double[period.Hours];
        PowerSquares = new double[period.Hours];
        SnrDb = new double[period.Hours];
        Lost = new double[period.Hours];
    }

    /// <summary>Packets an hour.</summary>
    public int[] Heard { get; }

    /// <summary>Those of them that it made itself.</summary>
    public int[] Own { get; }

    /// <summary>Those of all that tell a level.</summary>
    public int[] Levels { get; }

    /// <summary>Sum of their signal powers in dBm.</summary>
    public double[] PowerDb { get; }

    /// <summary>Sum of the squares of their signal powers.</summary>
    public double[] PowerSquares { get; }

    /// <summary>Sum of their signal-to-noise ratios in dB.</summary>
    public double[] SnrDb { get; }

    /// <summary>Packets an hour that their numbers tell to be lost, spread over the time between the two that were heard.</summary>
    public double[] Lost { get; }

    /// <summary>Packets heard whose numbers were counted.</summary>
    public long Counted { get; private set; }

    /// <summary>All packets heard.</summary>
    public long Total { get; private set; }

    /// <summary>Spreading factor of the packets; 0 when no packet told it.</summary>
    public int SpreadingFactor { get; private set; }

    /// <summary>Whether the packets' numbers count up, so that they tell what was lost.</summary>
    public bool CountsUp => smallSteps >= 20 && smallSteps >= 9 * otherSteps;

    /// <summary>Days on which it was heard, from the first hour of the period on.</summary>
    public int DaysHeard
    {
        get
        {
            int days = 0;
            for (int hour = 0; hour < Heard.Length; hour += 24)
            {
                days += Heard.AsSpan(hour, Math.Min(24, Heard.Length - hour)).ContainsAnyExcept(0) ? 1 : 0;
            }

            return days;
        }
    }

    /// <summary>The signal-to-noise ratio that a share of the packets stays below, to 0.25 dB; NaN without any.</summary>
    /// <param name="share">Share of the packets, from 0 to 1.</param>
    public double SnrQuantileDb(double share)
    {
        long all = 0;
        foreach (int bin in snr)
        {
            all += bin;
        }

        long below = 0;
        for (int bin = 0; bin < SnrBins; bin++)
        {
            below += snr[bin];
            if (all > 0 && below > share * all)
            {
                return LeastSnrDb + (bin * SnrBinDb);
            }
        }

        return all > 0 ? LeastSnrDb + (SnrBins * SnrBinDb) : double.NaN;
    }

    internal void Add(in HeardPacket packet)
    {
        int hour = (int)(ProofPeriod.HourOf(packet.TimeMicroseconds) - firstHour);
        Heard[hour]++;
        Own[hour] += packet.LastSender == packet.Originator ? 1 : 0;
        Total++;
        SpreadingFactor = packet.SpreadingFactor > 0 ? packet.SpreadingFactor : SpreadingFactor;
        if (!double.IsNaN(packet.SignalPowerDbm) && !double.IsNaN(packet.SnrDb))
        {
            Levels[hour]++;
            PowerDb[hour] += packet.SignalPowerDbm;
            PowerSquares[hour] += packet.SignalPowerDbm * packet.SignalPowerDbm;
            SnrDb[hour] += packet.SnrDb;
            snr[Math.Clamp((int)((packet.SnrDb - LeastSnrDb) / SnrBinDb), 0, SnrBins - 1)]++;
        }

        Count(packet);
    }

    private void Count(in HeardPacket packet)
    {
        if (packet.Counter < 0 || packet.LastSender != packet.Originator)
        {
            return;
        }

        Counted++;
        long step = packet.Counter - lastCounter;
        if (lastCounter >= 0 && step != 0)
        {
            _ = step is > 0 and <= UsualStep ? smallSteps++ : otherSteps++;
            if (step is > 1 and <= MostLost)
            {
                Spread(lastTime, packet.TimeMicroseconds, (int)step - 1);
            }
        }

        lastCounter = packet.Counter;
        lastTime = packet.TimeMicroseconds;
    }

    private void Spread(long from, long to, int lost)
    {
        for (int i = 1; i <= lost; i++)
        {
            long at = from + (long)((to - from) * (i / (lost + 1.0)));
            Lost[Math.Clamp((int)(ProofPeriod.HourOf(at) - firstHour), 0, Lost.Length - 1)]++;
        }
    }
}
