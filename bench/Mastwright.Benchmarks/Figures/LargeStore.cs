using System.Globalization;
using System.Text;
using Mastwright.Evidence;
using Mastwright.Quantities;
using Mastwright.Records.Store;

namespace Mastwright.Benchmarks.Figures;

/// <summary>A store of ten million invented receptions: five receivers, two hundred senders, two months, one of the receivers changed in the middle.</summary>
/// <remarks>Two million of them are at that receiver. The store is made once and kept: making it takes some minutes.</remarks>
internal static class LargeStore
{
    internal const int Records = 10_000_000;
    internal const string Before = "2026-06-01..2026-07-01";
    internal const string After = "2026-07-01..2026-07-31";
    internal const string Site = "site";

    private const int Receivers = 5;
    private const int Senders = 200;
    private const int Days = 60;
    private const double ShiftDb = 4;
    private const ulong Seed = 2026;
    private static readonly long First = new DateTimeOffset(2026, 6, 1, 0, 0, 0, TimeSpan.Zero).ToUnixTimeSeconds();

    /// <summary>The plan and the store in a folder, made where they are not there whole.</summary>
    internal static (string Plan, string Store) In(string folder)
    {
        Directory.CreateDirectory(folder);
        string plan = Path.Combine(folder, "plan.yaml");
        string store = Path.Combine(folder, "records.sqlite");
        File.WriteAllText(plan, Plan());
        if (!File.Exists(store))
        {
            string part = store + ".part";
            foreach (string old in Directory.EnumerateFiles(folder, "records.sqlite.part*"))
            {
                File.Delete(old);
            }

            Fill(part);
            File.Move(part, store);
        }

        return (plan, store);
    }

    private static string Plan()
    {
        StringBuilder text = new("mastwright: 1\nname: Ten million\nmodem: {frequency: 869.525 MHz, bandwidth: 125 kHz, spreading-factor: 10, payload: 40 B}\nsites:\n  site:\n    position: \"46.40, -18.74\"\nneighbours:\n");
        for (int one = 0; one < Senders + Receivers - 1; one++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {Sender(one)}: {{position: \"46.{41 + (one % 40)}, -18.{10 + (one / 4)}\"}}\n");
        }

        return text.ToString();
    }

    private static void Fill(string path)
    {
        using RecordStore store = SqliteRecordStore.Open(path);
        List<KeyedRecord> batch = new(RecordStore.MostInOneBatch);
        int[] counters = new int[Senders];
        double fading = 0;
        for (int one = 0; one < Records; one++)
        {
            double draw = KeyedDraws.Uniform(Seed, one);
            int sender = (int)(draw * Senders);
            int receiver = one % Receivers;
            double seconds = one * (Days * 86400.0 / Records);

            // Slow fading over some hours, one draw a packet on top, the days' own swing, and the change.
            fading = (0.999 * fading) + (0.1 * (KeyedDraws.Uniform(Seed + 1, one) - 0.5));
            double level = -118 + (sender % 20) + (60 * fading) + (6 * (KeyedDraws.Uniform(Seed + 2, one) - 0.5))
                + (2 * Math.Sin(2 * Math.PI * seconds / 86400)) + (receiver == 0 && seconds >= 30 * 86400 ? ShiftDb : 0);
            ReceptionRecord record = new()
            {
                TimeMicroseconds = (First + (long)seconds) * 1_000_000,
                TimeResolutionMicroseconds = 1_000_000,
                Receiver = receiver == 0 ? Site : Sender(Senders + receiver - 1),
                Originator = receiver != 0 && sender == 0 ? Site : Sender(sender),
                LastSender = receiver != 0 && sender == 0 ? Site : Sender(sender),
                LevelDbm = Math.Round(level),
                SnrDb = Math.Round(4 * Math.Min(10, level + 118)) / 4,
                HopsTaken = 0,
                SpreadingFactor = 10,
                PacketId = counters[sender]++.ToString(CultureInfo.InvariantCulture),
            };
            batch.Add(new(record, RecordKey.Of(record)));
            if (batch.Count == RecordStore.MostInOneBatch || one == Records - 1)
            {
                store.Add("large", batch);
                batch.Clear();
            }
        }
    }

    private static string Sender(int place) => string.Create(CultureInfo.InvariantCulture, $"n{place}");
}
