namespace Mastwright.Evidence.Proof;

/// <summary>Takes receptions one after another, in rising time, and keeps what the proof needs of one period.</summary>
public sealed class ProofFold
{
    private const int MostHops = 16;

    private readonly List<SenderPeriod?> senders = [];
    private readonly List<long[]?> hops = [];
    private readonly double saturationSnrDb;

    /// <summary>A fold over a period.</summary>
    /// <param name="period">The period; packets outside are counted and not used.</param>
    /// <param name="saturationSnrDb">The signal-to-noise ratio in dB from which a receiver tells nothing of the noise.</param>
    public ProofFold(ProofPeriod period, double saturationSnrDb = SignalPower.DefaultSaturationSnrDb)
    {
        if (period.ToMicroseconds <= period.FromMicroseconds)
        {
            throw new ArgumentException("The period ends before it begins.", nameof(period));
        }

        Period = period;
        this.saturationSnrDb = saturationSnrDb;
        HeardByHour = new int[period.Hours];
        NoiseDb = new double[period.Hours];
        NoiseCount = new int[period.Hours];
    }

    /// <summary>The period.</summary>
    public ProofPeriod Period { get; }

    /// <summary>All packets of the period.</summary>
    public long Packets { get; private set; }

    /// <summary>Packets whose last sender is unknown: counted, never used for level.</summary>
    public long WithoutSender { get; private set; }

    /// <summary>Packets an hour, of anyone: an hour without any is one in which the station may not have listened.</summary>
    public int[] HeardByHour { get; }

    /// <summary>Sum of the noise floors an hour, in dBm.</summary>
    public double[] NoiseDb { get; }

    /// <summary>Receptions an hour that tell the noise floor.</summary>
    public int[] NoiseCount { get; }

    /// <summary>How many stations the fold has seen: one more than the greatest place in the list.</summary>
    public int Stations => Math.Max(senders.Count, hops.Count);

    /// <summary>What was heard directly of a station; null where nothing was.</summary>
    public SenderPeriod? Direct(int station) => station < senders.Count ? senders[station] : null;

    /// <summary>Packets of a station by hops taken, from 0 on; empty where nothing is known.</summary>
    public ReadOnlySpan<long> Hops(int station) => station < hops.Count ? hops[station] : default;

    /// <summary>Takes one reception.</summary>
    public void Add(in HeardPacket packet)
    {
        if (!Period.Holds(packet.TimeMicroseconds))
        {
            return;
        }

        Packets++;
        int hour = (int)(ProofPeriod.HourOf(packet.TimeMicroseconds) - Period.FirstHour);
        HeardByHour[hour]++;
        if (packet.Originator >= 0 && packet.Hops >= 0)
        {
            Place(hops, packet.Originator) ??= new long[MostHops + 1];
            hops[packet.Originator]![Math.Min(packet.Hops, MostHops)]++;
        }

        if (packet.LastSender < 0)
        {
            WithoutSender++;
            return;
        }

        (Place(senders, packet.LastSender) ??= new(Period)).Add(packet);
        if (!double.IsNaN(packet.SignalPowerDbm) && SignalPower.NoiseFloorDbm(packet.SignalPowerDbm, packet.SnrDb, saturationSnrDb) is double noise)
        {
            NoiseDb[hour] += noise;
            NoiseCount[hour]++;
        }
    }

    private static ref T? Place<T>(List<T?> list, int index)
        where T : class
    {
        while (list.Count <= index)
        {
            list.Add(null);
        }

        return ref System.Runtime.InteropServices.CollectionsMarshal.AsSpan(list)[index];
    }
}
