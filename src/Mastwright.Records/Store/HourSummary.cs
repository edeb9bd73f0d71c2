using Mastwright.Evidence;

namespace Mastwright.Records.Store;

/// <summary>What stands for the records of one hour of UTC that are alike in stations, frequency, bandwidth, spreading factor and hops.</summary>
/// <remarks>
/// The rule: records are counted; level, signal-to-noise ratio and signal power are averaged in dB over the records that have them, and the least and
/// the greatest level kept. Their own times, packet numbers, hop limits and other fields are not.
/// </remarks>
public sealed record HourSummary
{
    private const long Hour = 3_600_000_000;

    /// <summary>The beginning of the hour, in microseconds since 1970 UTC.</summary>
    public required long HourMicroseconds { get; init; }

    /// <summary>The address of the station that heard them.</summary>
    public required string Receiver { get; init; }

    /// <summary>The address of the station that made them; null where unknown.</summary>
    public string? Originator { get; init; }

    /// <summary>The address of the station that sent them last; null where unknown.</summary>
    public string? LastSender { get; init; }

    /// <summary>The carrier frequency in whole Hz; null where unknown.</summary>
    public long? FrequencyHz { get; init; }

    /// <summary>The bandwidth in whole Hz; null where unknown.</summary>
    public long? BandwidthHz { get; init; }

    /// <summary>The spreading factor; null where unknown.</summary>
    public int? SpreadingFactor { get; init; }

    /// <summary>How many times they were passed on before; null where unknown.</summary>
    public int? HopsTaken { get; init; }

    /// <summary>How many records it stands for.</summary>
    public required long Records { get; init; }

    /// <summary>The time of the first of them, in microseconds since 1970 UTC.</summary>
    public required long FirstMicroseconds { get; init; }

    /// <summary>The time of the last of them, in microseconds since 1970 UTC.</summary>
    public required long LastMicroseconds { get; init; }

    /// <summary>How many of them have a level, and the sum of these in dBm.</summary>
    public (long Records, double Sum) Level { get; init; }

    /// <summary>The least level in dBm; null where none has one.</summary>
    public double? LeastLevelDbm { get; init; }

    /// <summary>The greatest level in dBm; null where none has one.</summary>
    public double? MostLevelDbm { get; init; }

    /// <summary>How many of them have a signal-to-noise ratio, and the sum of these in dB.</summary>
    public (long Records, double Sum) Snr { get; init; }

    /// <summary>How many of them have a signal power, and the sum of these in dBm.</summary>
    public (long Records, double Sum) Power { get; init; }

    /// <summary>The mean of the levels in dBm; null where none has one.</summary>
    public double? MeanLevelDbm => Mean(Level);

    /// <summary>The mean of the ratios in dB; null where none has one.</summary>
    public double? MeanSnrDb => Mean(Snr);

    /// <summary>The mean of the signal powers in dBm; null where none has one.</summary>
    public double? MeanPowerDbm => Mean(Power);

    /// <summary>The summaries of some records, which may be a part of those of an hour.</summary>
    internal static IEnumerable<HourSummary> Of(IEnumerable<ReceptionRecord> records) => records
        .GroupBy(one => (Floor(one.TimeMicroseconds), one.Receiver, one.Originator, one.LastSender, Whole(one.FrequencyHz), Whole(one.BandwidthHz), one.SpreadingFactor, one.HopsTaken))
        .Select(alike => new HourSummary
        {
            HourMicroseconds = alike.Key.Item1,
            Receiver = alike.Key.Receiver,
            Originator = alike.Key.Originator,
            LastSender = alike.Key.LastSender,
            FrequencyHz = alike.Key.Item5,
            BandwidthHz = alike.Key.Item6,
            SpreadingFactor = alike.Key.SpreadingFactor,
            HopsTaken = alike.Key.HopsTaken,
            Records = alike.LongCount(),
            FirstMicroseconds = alike.Min(one => one.TimeMicroseconds),
            LastMicroseconds = alike.Max(one => one.TimeMicroseconds),
            Level = Sum(alike.Select(one => one.LevelDbm)),
            LeastLevelDbm = alike.Min(one => one.LevelDbm),
            MostLevelDbm = alike.Max(one => one.LevelDbm),
            Snr = Sum(alike.Select(one => one.SnrDb)),
            Power = Sum(alike.Select(one => one.SignalPowerDbm)),
        });

    private static long Floor(long microseconds) => microseconds - (((microseconds % Hour) + Hour) % Hour);

    private static long? Whole(double? value) => value is { } number ? (long)Math.Round(number, MidpointRounding.AwayFromZero) : null;

    private static (long Records, double Sum) Sum(IEnumerable<double?> values) => values.OfType<double>().Aggregate((Records: 0L, Sum: 0.0), (so, value) => (so.Records + 1, so.Sum + value));

    private static double? Mean((long Records, double Sum) of) => of.Records > 0 ? of.Sum / of.Records : null;
}
