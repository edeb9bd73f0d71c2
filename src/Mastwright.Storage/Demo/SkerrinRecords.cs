using Mastwright.Evidence;
using Mastwright.Quantities;

namespace Mastwright.Storage.Demo;

/// <summary>A station of the island as Ferry House hears it. Every figure is invented.</summary>
/// <param name="Key">Its key in the plan, and its address.</param>
/// <param name="OldDbm">Signal power at Ferry House with the old fit-out as it once was, in dBm.</param>
/// <param name="NewDbm">The same with the new one.</param>
/// <param name="OverSea">Whether nights with ducts lift it.</param>
/// <param name="ThroughWood">Whether wet leaves weaken it.</param>
/// <param name="OldHops">Hops that its packets take before; 0 where it is heard directly or not at all.</param>
/// <param name="NewHops">The same after.</param>
internal sealed record SkerrinSender(string Key, double OldDbm, double NewDbm, bool OverSea, bool ThroughWood, int OldHops = 0, int NewHops = 0);

/// <summary>Two months of what Ferry House hears, before and after its new fit-out: invented, by rule and seed.</summary>
/// <remarks>
/// A level is a mean by fit-out, a daily swing, a state of the air that all paths share and one of each path, both wandering from hour to hour,
/// and fading from packet to packet. Nights with ducts lift paths over the sea; rain weakens paths through woodland and, in the old fit-out, all
/// of them (water in a connector). The old antenna fails over its last week. One neighbour has a fault of its own in the middle of the period
/// after. Packets below the demodulation limit are lost, and some more to collisions.
/// </remarks>
public sealed class SkerrinRecords
{
    /// <summary>The station that listens.</summary>
    public const string Receiver = "ferry-house";

    /// <summary>The name of the network.</summary>
    public const string Network = "skerrin";

    /// <summary>Days of each of the two periods.</summary>
    public const int PeriodDays = 30;

    /// <summary>Signal-to-noise ratio in dB below which a packet of spreading factor 10 is lost.</summary>
    public const double LimitSnrDb = -15;

    /// <summary>How much the old antenna is down at the end of its last week, in dB.</summary>
    public const double FailureDb = 6;

    /// <summary>What the neighbour with a fault of its own loses, in dB.</summary>
    public const double NeighbourFaultDb = 7;

    private const int Hours = 2 * PeriodDays * 24;
    private const double PacketsAnHour = 4;
    private const double CollisionShare = 0.03;
    private const long Hour = 3_600_000_000;

    private static readonly SkerrinSender[] Senders =
    [
        new("gannet-stack", -94, -87, OverSea: true, ThroughWood: false),
        new("upper-school", -106, -97, OverSea: false, ThroughWood: true),
        new("pilot-hut", -121, -113, OverSea: false, ThroughWood: false),
        new("wind-shed", -97, -88.5, OverSea: false, ThroughWood: true),
        new("creamery", -142, -114, OverSea: false, ThroughWood: true),
        new("lantern-bay", -150, -145, OverSea: false, ThroughWood: false, OldHops: 3, NewHops: 2),
        new("east-quay", -150, -145, OverSea: false, ThroughWood: false, OldHops: 3, NewHops: 2),
    ];

    private readonly ulong seed;
    private readonly bool isChanged;
    private readonly double[] sharedDb;
    private readonly bool[] rain;
    private readonly double[] ductDb;

    /// <summary>The records of a seed.</summary>
    /// <param name="seed">Same seed, same records.</param>
    /// <param name="isChanged">Whether the fit-out changes at all between the two periods; without, nothing but the weather differs.</param>
    public SkerrinRecords(ulong seed, bool isChanged = true)
    {
        this.seed = seed;
        this.isChanged = isChanged;
        sharedDb = Wandering("air", 30, 0.8);
        double[] wet = Wandering("rain", 20, 1);
        rain = [.. wet.Select(value => value > 1)];
        double[] still = Wandering("ducts", 48, 1);
        ductDb = [.. still.Select((value, hour) => (hour % 24) is >= 20 or <= 6 && value > 1.2 ? 4 + (4 * (value - 1.2)) : 0)];
    }

    /// <summary>The first moment of the period before, 2025-06-01T00:00:00 UTC, in microseconds since 1970.</summary>
    public static long Start { get; } = Microseconds(new(2025, 6, 1, 0, 0, 0, TimeSpan.Zero));

    /// <summary>The moment of the change, 2025-07-01T00:00:00 UTC.</summary>
    public static long Change => Start + (PeriodDays * 24 * Hour);

    /// <summary>The end of the period after, 2025-07-31T00:00:00 UTC.</summary>
    public static long End => Start + (Hours * Hour);

    /// <summary>The shift that is true of each station heard directly in both periods: new fit-out against the old as it was then, in dB.</summary>
    public IReadOnlyDictionary<string, double> TrueShiftDb
    {
        get
        {
            double old = 0;
            double now = 0;
            for (int hour = 0; hour < PeriodDays * 24; hour++)
            {
                old += OwnLossDb(hour) / (PeriodDays * 24);
                now += OwnLossDb(hour + (PeriodDays * 24)) / (PeriodDays * 24);
            }

            return Senders.Take(4).ToDictionary(sender => sender.Key, sender => (isChanged ? sender.NewDbm - sender.OldDbm : 0) + old - now);
        }
    }

    /// <summary>The neighbour whose own fault moves it.</summary>
    public static string FaultyNeighbour => "upper-school";

    /// <summary>All records, in the order of their times.</summary>
    public IEnumerable<ReceptionRecord> All()
    {
        double[][] paths = [.. Senders.Select(sender => Wandering("path " + sender.Key, 8, 1.2))];
        long[] counters = [.. Senders.Select((_, i) => (long)(1000 * KeyedDraws.Uniform(Seed("counter"), i)))];
        List<ReceptionRecord> ofHour = [];
        for (int hour = 0; hour < Hours; hour++)
        {
            ofHour.Clear();
            for (int i = 0; i < Senders.Length; i++)
            {
                for (int packet = 0; packet < PacketsAnHour; packet++)
                {
                    Hear(Senders[i], i, hour, packet, counters[i]++, paths[i][hour], ofHour);
                }
            }

            ofHour.Sort(static (one, other) => one.TimeMicroseconds.CompareTo(other.TimeMicroseconds));
            foreach (ReceptionRecord record in ofHour)
            {
                yield return record;
            }
        }
    }

    private void Hear(SkerrinSender sender, int station, int hour, int packet, long counter, double pathDb, List<ReceptionRecord> heard)
    {
        ulong draws = Seed(sender.Key) ^ ((ulong)((hour * 16) + packet + 1) << 20);
        bool isAfter = hour >= PeriodDays * 24;
        int hops = isAfter ? sender.NewHops : sender.OldHops;

        // What is passed on comes from the station of the last hop, and with its level.
        SkerrinSender last = hops == 0 ? sender : Senders[isAfter ? 2 : 1];
        double swing = 1.2 * Math.Cos(2 * Math.PI * ((hour % 24) - 4) / 24.0);
        double power = (isAfter && isChanged ? last.NewDbm : last.OldDbm) + swing + sharedDb[hour] + pathDb - OwnLossDb(hour)
            + (last.OverSea ? ductDb[hour] : 0)
            - (last.ThroughWood && rain[hour] ? 2.5 : 0)
            - (last.Key == FaultyNeighbour && isChanged && hour >= (PeriodDays + 4) * 24 ? NeighbourFaultDb : 0)
            + (2.5 * KeyedDraws.Normal(draws, 0));
        double noise = (isAfter && isChanged ? -116 : -112.5) + (0.5 * Math.Cos(2 * Math.PI * ((hour % 24) - 14) / 24.0)) + (0.8 * KeyedDraws.Normal(draws, 1));
        double snr = power - noise;
        if (snr < LimitSnrDb || KeyedDraws.Uniform(draws, 10) < (hops == 0 ? CollisionShare : 0.3))
        {
            return;
        }

        double level = 10 * Math.Log10(Math.Pow(10, power / 10) + Math.Pow(10, noise / 10));
        double told = snr <= 5 ? snr : 5 + (5 * (1 - Math.Exp(-(snr - 5) / 5)));
        heard.Add(new()
        {
            TimeMicroseconds = Start + (hour * Hour) + (long)((packet + KeyedDraws.Uniform(draws, 11)) / PacketsAnHour * 3600) * 1_000_000,
            TimeResolutionMicroseconds = 1_000_000,
            Receiver = Receiver,
            Originator = sender.Key,
            LastSender = last.Key,
            LevelDbm = Math.Round(level, 1),
            SnrDb = Math.Round(told * 4) / 4,
            HopsTaken = hops,
            HopLimit = 3,
            FrequencyHz = 869_525_000,
            BandwidthHz = 125_000,
            SpreadingFactor = 10,
            PacketId = counter.ToString(System.Globalization.CultureInfo.InvariantCulture),
        });
    }

    /// <summary>What Ferry House's own fit-out loses in an hour beyond what it is built for, in dB.</summary>
    private double OwnLossDb(int hour)
    {
        bool isOld = hour < PeriodDays * 24 || !isChanged;
        double failing = isChanged ? Math.Clamp((hour - ((PeriodDays - 7) * 24)) / (7.0 * 24), 0, 1) * FailureDb : 0;
        return isOld ? (rain[hour] ? 2 : 0) + failing : 0;
    }

    /// <summary>A state that forgets itself over some hours: an autoregression of order one.</summary>
    private double[] Wandering(string what, double memoryHours, double spread)
    {
        double keep = Math.Exp(-1 / memoryHours);
        double[] values = new double[Hours];
        ulong own = Seed(what);
        double now = KeyedDraws.Normal(own, 0);
        for (int hour = 0; hour < Hours; hour++)
        {
            now = (keep * now) + (Math.Sqrt(1 - (keep * keep)) * KeyedDraws.Normal(own, hour + 1));
            values[hour] = spread * now;
        }

        return values;
    }

    private ulong Seed(string what) => KeyedDraws.SeedOf($"{seed}/{what}");

    private static long Microseconds(DateTimeOffset time) => time.ToUnixTimeMilliseconds() * 1000;
}
