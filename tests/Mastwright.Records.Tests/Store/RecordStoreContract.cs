using Mastwright.Evidence;
using Mastwright.Records.Store;

namespace Mastwright.Tests.Records.Store;

/// <summary>What every engine of the store promises; the same tests run on each.</summary>
public abstract class RecordStoreContract
{
    private static readonly ReceptionRecord Full = new()
    {
        TimeMicroseconds = 1_700_000_000_123_456, TimeResolutionMicroseconds = 1000, TimeText = "2023-11-14 22:13:20.123456", ClockOffsetMicroseconds = -250,
        Receiver = "ferry", Originator = "holm", LastSender = "tårn", LevelDbm = -118.25, SnrDb = -3.5, LevelIsSignalPower = true, HopsTaken = 1,
        HopLimit = 3, FrequencyHz = 869_525_000, BandwidthHz = 250_000, SpreadingFactor = 11, PacketId = "4294967295", OtherFields = "{\"battery\":3.9}",
    };

    private static readonly ReceptionRecord Bare = new() { TimeMicroseconds = -1, TimeResolutionMicroseconds = 1, Receiver = "ferry" };

    internal abstract StorePlace NewPlace();

    [Fact]
    public void What_is_added_comes_back_as_it_was()
    {
        using StorePlace place = NewPlace();
        using (RecordStore store = place.Open())
        {
            store.Add("skerrin", Keyed(Full, Bare));
        }

        using RecordStore again = place.Open();
        Assert.Equal([new(1, Full), new(2, Bare)], again.ReadAfter("skerrin", 0, 10));
        Assert.Equal([new(2, Bare)], again.ReadAfter("skerrin", 1, 10));
        Assert.Equal([new(1, Full)], again.ReadAfter("skerrin", 0, 1));
    }

    [Fact]
    public void The_same_record_twice_is_one_whoever_adds_it()
    {
        using StorePlace place = NewPlace();
        using RecordStore one = place.Open();
        using RecordStore other = place.Open();
        Assert.Equal((2, 1, 2L), Parts(one.Add("skerrin", Keyed(Full, Bare, Full))));
        Assert.Equal((1, 2, 3L), Parts(other.Add("skerrin", Keyed(Bare, Full with { PacketId = "8" }, Full))));
        Assert.Equal((0, 1, 3L), Parts(one.Add("skerrin", Keyed(Full with { PacketId = "8" }))));
        Assert.Equal(3, one.Count("skerrin"));
    }

    [Fact]
    public void Networks_know_nothing_of_each_other()
    {
        using StorePlace place = NewPlace();
        using RecordStore store = place.Open();
        store.Add("skerrin", Keyed(Bare, Full));
        Assert.Equal((1, 0, 1L), Parts(store.Add("mainland", Keyed(Full))));
        Assert.Equal([new(1, Full)], store.ReadAfter("mainland", 0, 10));
        Assert.Empty(store.ReadAfter("nowhere", 0, 10));
        Assert.Equal(0, store.Count("nowhere"));
    }

    [Fact]
    public void A_batch_that_fails_leaves_nothing_behind_and_mixes_up_no_station()
    {
        using StorePlace place = NewPlace();
        using RecordStore store = place.Open();
        store.Add("skerrin", Keyed(Bare));
        // The engine itself is made to refuse one row in the middle of a batch.
        place.Refuse("bad");
        ReceptionRecord good = Bare with { Receiver = "new", PacketId = "good" };
        RecordStoreException fault = Assert.Throws<RecordStoreException>(() => store.Add("skerrin", Keyed(good, Bare with { PacketId = "bad" })));
        Assert.Contains(place.Name, fault.Message, StringComparison.Ordinal);
        Assert.Equal(1, store.Count("skerrin"));

        using RecordStore other = place.Open();
        ReceptionRecord between = Bare with { Receiver = "another", PacketId = "1" };
        other.Add("skerrin", Keyed(between));
        store.Add("skerrin", Keyed(good));
        Assert.Equal([new(1, Bare), new(2, between), new(3, good)], store.ReadAfter("skerrin", 0, 10));
    }

    [Fact]
    public void What_stations_tell_of_themselves_is_there_once_and_in_order()
    {
        TelemetryRecord full = new()
        {
            TimeMicroseconds = 2_500_000, TimeResolutionMicroseconds = 1_000_000, TimeText = "2.5", ClockOffsetMicroseconds = 7, Station = "ferry", BatteryVolts = 3.9, SupplyVolts = 18.25,
            TemperatureCelsius = -4.5, ChannelUseRatio = 0.125, TransmitRatio = 0.005, OtherFields = "{\"uptime\":\"9\"}",
        };
        TelemetryRecord bare = new() { TimeMicroseconds = 1_000_000, TimeResolutionMicroseconds = 1, Station = "ferry", BatteryVolts = 4 };
        using StorePlace place = NewPlace();
        using RecordStore store = place.Open();
        Assert.Equal((3, 1, 0L), Parts(store.AddTelemetry("skerrin", [full, bare, bare with { Station = "holm" }, bare])));
        Assert.Equal((1, 1, 0L), Parts(store.AddTelemetry("skerrin", [full, full with { BatteryVolts = 3.8, TimeMicroseconds = 2_600_000 }])));
        Assert.Equal([bare, full, full with { BatteryVolts = 3.8, TimeMicroseconds = 2_600_000 }], store.ReadTelemetry("skerrin", "ferry", 0, long.MaxValue));
        Assert.Equal([full], store.ReadTelemetry("skerrin", "ferry", 2_500_000, 2_600_000));
        Assert.Contains(full, store.ReadTelemetry("skerrin", 2_500_000, 2_600_000));
        Assert.True(store.ReadTelemetry("skerrin", 0, long.MaxValue).Count >= 3);
        Assert.Empty(store.ReadTelemetry("mainland", "ferry", 0, long.MaxValue));
    }

    [Fact]
    public void The_site_log_keeps_its_entries_and_what_is_attached()
    {
        using StorePlace place = NewPlace();
        using RecordStore store = place.Open();
        SiteLogEntry settings = new()
        {
            TimeMicroseconds = 2_000, Site = "ferry-house", Kind = SiteLogKind.Settings, FitOut = "mast", Text = "stil hævet", Attachments = [new("a.txt", new('a', 64)), new("b.txt", new('b', 64))],
        };
        SiteLogEntry weather = new() { TimeMicroseconds = 1_000, Site = "ferry-house", Kind = SiteLogKind.Weather, Text = "ice", Attachments = [new("again.txt", new('a', 64))] };
        Assert.Equal(1, store.AddLogEntry("skerrin", settings, [new byte[] { 1, 2, 0 }, Array.Empty<byte>()]).Number);
        Assert.Equal(2, store.AddLogEntry("skerrin", weather, [new byte[] { 1, 2, 0 }]).Number);
        Assert.Equal(1, store.AddLogEntry("mainland", weather with { Attachments = [] }, []).Number);

        LogEntries log = store.ReadLog("skerrin");
        Assert.Equal([2L, 1L], log.All.Select(entry => entry.Number));
        SiteLogEntry read = log.Find(1)!;
        Assert.Equal(settings with { Number = 1, Attachments = read.Attachments }, read);
        Assert.Equal(settings.Attachments, read.Attachments);
        Assert.Equal(new byte[] { 1, 2, 0 }, store.ReadAttachment(new('a', 64)));
        Assert.Equal(Array.Empty<byte>(), store.ReadAttachment(new('b', 64)));
        Assert.Null(store.ReadAttachment(new('c', 64)));
        Assert.Equal(["skerrin", "mainland"], store.Networks());
    }

    [Fact]
    public void Old_records_become_hours_that_add_up_and_are_known_when_they_are_brought_again()
    {
        const long Hour = 3_600_000_000;
        ReceptionRecord One(long time, string sender, double? level, double? snr) => new()
        {
            TimeMicroseconds = time, TimeResolutionMicroseconds = 1, Receiver = "ferry", LastSender = sender, LevelDbm = level, SnrDb = snr, FrequencyHz = 868_100_000.4, HopsTaken = 0,
        };
        ReceptionRecord[] old = [One(Hour + 10, "holm", -100, 0), One(Hour + 5, "holm", -110, -10), One(Hour + 7, "holm", null, -2), One((2 * Hour) - 1, "tarn", -90, null), One(2 * Hour, "holm", -120, -5)];
        ReceptionRecord young = One(3 * Hour, "holm", -121, -5);
        using StorePlace place = NewPlace();
        using RecordStore store = place.Open();
        store.Add("skerrin", Keyed([.. old, young]));
        store.Add("mainland", Keyed(old[0]));

        Assert.Equal(5, store.CountBefore("skerrin", 3 * Hour));
        Assert.Equal(5, store.Compact("skerrin", 3 * Hour));
        Assert.Equal(0, store.Compact("skerrin", 3 * Hour));
        Assert.Equal([new(6, young)], store.ReadAfter("skerrin", 0, 10));
        Assert.Equal((0, 5, 6L), Parts(store.Add("skerrin", Keyed(old))));
        Assert.Equal(1, store.Count("mainland"));

        // A late one of the first hour joins it, and numbers go on from where they were.
        Assert.Equal((1, 0, 7L), Parts(store.Add("skerrin", Keyed(One(Hour + 20, "holm", -99, 4)))));
        Assert.Equal(1, store.Compact("skerrin", 3 * Hour));

        HourSummary[] hours = [.. store.ReadSummaries("skerrin")];
        Assert.Equal([(Hour, "holm", 4L), (Hour, "tarn", 1L), (2 * Hour, "holm", 1L)], hours.Select(one => (one.HourMicroseconds, one.LastSender!, one.Records)));
        HourSummary first = hours[0];
        Assert.Equal((Hour + 5, Hour + 20, 868_100_000L, 0, -110.0, -99.0), (first.FirstMicroseconds, first.LastMicroseconds, first.FrequencyHz!.Value, first.HopsTaken!.Value, first.LeastLevelDbm!.Value, first.MostLevelDbm!.Value));
        Assert.Equal((-100.0 - 110 - 99) / 3, first.MeanLevelDbm!.Value, 1e-9);
        Assert.Equal((0.0 - 10 - 2 + 4) / 4, first.MeanSnrDb!.Value, 1e-9);

        // By the definition: level minus 10 log10(1 + 10^(-SNR/10)), at 0, -10 and 4 dB.
        Assert.Equal((-103.0103 - 120.4139 - 100.4554) / 3, first.MeanPowerDbm!.Value, 1e-4);
        Assert.Equal((1L, null), (hours[1].Level.Records, hours[1].MeanPowerDbm));
        Assert.Empty(store.ReadSummaries("mainland"));
    }

    /// <summary>Two writers and a follower, each with a connection of its own: numbers rise in the order in which batches become visible, without gaps.</summary>
    [Fact]
    public async Task A_follower_of_two_parallel_writers_sees_every_record_once_and_in_order()
    {
        const int Batches = 30;
        const int InABatch = 200;
        using StorePlace place = NewPlace();
        place.Open().Dispose();
        using CancellationTokenSource patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        patience.CancelAfter(TimeSpan.FromMinutes(2));
        Task<List<StoredRecord>> follower = Task.Run(Follow, patience.Token);
        await Task.WhenAll(Task.Run(() => Write("east"), patience.Token), Task.Run(() => Write("west"), patience.Token));

        List<StoredRecord> seen = await follower;
        Assert.Equal(Enumerable.Range(1, 2 * Batches * InABatch).Select(number => (long)number), seen.Select(one => one.Ingest));
        foreach (string writer in new[] { "east", "west" })
        {
            // Each writer's records in the order in which it wrote them.
            Assert.Equal(
                Enumerable.Range(0, Batches * InABatch).Select(number => (long)number),
                seen.Where(one => one.Record.Receiver == writer).Select(one => one.Record.TimeMicroseconds));
        }

        void Write(string receiver)
        {
            using RecordStore store = place.Open();
            for (int batch = 0; batch < Batches; batch++)
            {
                store.Add("skerrin", Keyed([.. Enumerable.Range(batch * InABatch, InABatch).Select(number =>
                    new ReceptionRecord { TimeMicroseconds = number, TimeResolutionMicroseconds = 1, Receiver = receiver })]));
            }
        }

        List<StoredRecord> Follow()
        {
            using RecordStore store = place.Open();
            List<StoredRecord> all = [];
            while (all.Count < 2 * Batches * InABatch)
            {
                patience.Token.ThrowIfCancellationRequested();
                all.AddRange(store.ReadAfter("skerrin", all.Count == 0 ? 0 : all[^1].Ingest, 137));
            }

            return all;
        }
    }

    internal static KeyedRecord[] Keyed(params ReceptionRecord[] records) => [.. records.Select(record => new KeyedRecord(record, RecordKey.Of(record)))];

    private static (int Added, int AlreadyThere, long LastIngest) Parts(AddedBatch batch) => (batch.Added, batch.AlreadyThere, batch.LastIngest);
}

/// <summary>A place for one store that is gone after the test.</summary>
internal abstract class StorePlace : IDisposable
{
    /// <summary>What messages call it.</summary>
    internal abstract string Name { get; }

    internal abstract RecordStore Open();

    /// <summary>Makes the engine itself refuse every record with this packet number.</summary>
    internal abstract void Refuse(string packetNumber);

    public abstract void Dispose();
}
