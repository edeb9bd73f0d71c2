using Mastwright.Evidence;
using Mastwright.Records.Store;

namespace Mastwright.Records.Import;

/// <summary>Takes the rows of one source: decodes, gathers batches, hands them to the store, keeps what is no record.</summary>
internal sealed class RowTaking
{
    private const int FirstBatch = 2048;
    private static readonly TimeSpan Soon = TimeSpan.FromMilliseconds(40);
    private static readonly TimeSpan Late = TimeSpan.FromMilliseconds(100);

    private const string ZeroCharacter = "the row holds a zero character, which is no text";

    private readonly RecordStore store;
    private readonly string network;
    private readonly RecordMapping mapping;
    private readonly RejectedRows rejected;
    private readonly SourceClock clock;
    private readonly AddressBook addresses = new();
    private readonly List<KeyedRecord> batch = [];
    private readonly List<TelemetryRecord> told = [];
    private int batchSize = FirstBatch;
    private RowDecoder[] decoders = [];
    private TelemetryDecoder[] tellers = [];
    private SameCounter same;
    private string file = "";

    internal RowTaking(RecordStore store, string network, RecordMapping mapping, RejectedRows rejected, SourceClock clock)
    {
        this.store = store;
        this.network = network;
        this.mapping = mapping;
        this.rejected = rejected;
        this.clock = clock;
        same = new(mapping.AntennasShareAddress);
    }

    internal ImportCount Count { get; private set; }

    /// <summary>Fields that no row of a source had, though the mapping says where they are, with the source.</summary>
    internal List<string> NeverThere { get; } = [];

    internal IProgress<int>? Progress { get; set; }

    /// <summary>Begins a source whose places are now known.</summary>
    internal void Tie(SourcePlaces places, string name)
    {
        file = name;
        same = new(mapping.AntennasShareAddress);
        tellers = mapping.IsTelemetry ? [.. mapping.Rows.Select(row => new TelemetryDecoder(row, places, addresses, clock))] : [];
        decoders = mapping.IsTelemetry ? [] : [.. mapping.Rows.Select(row => new RowDecoder(row, places, addresses, clock))];
    }

    /// <summary>Takes a row, which may hold several receptions.</summary>
    internal void Take<TRow>(TRow row)
        where TRow : ISourceRow, allows ref struct
    {
        Count = Count with { Rows = Count.Rows + 1 };
        string broken = Broken(row.Whole);
        foreach (RowDecoder decoder in decoders)
        {
            string reason = broken;
            if (mapping.SeveralInARow && !decoder.IsHeard(row))
            {
                Count = Count with { NotHeard = Count.NotHeard + 1 };
            }
            else if (broken.Length == 0 && decoder.Decode(row, out reason) is { } record)
            {
                batch.Add(new(record, same.KeyOf(record)));
            }
            else
            {
                rejected.Add(file, row.Line, reason, row.Whole);
            }
        }

        foreach (TelemetryDecoder teller in tellers)
        {
            string reason = broken;
            if (!teller.IsTold(row))
            {
                Count = Count with { NotHeard = Count.NotHeard + 1 };
            }
            else if (broken.Length == 0 && teller.Decode(row, out reason) is { } record)
            {
                told.Add(record);
            }
            else
            {
                rejected.Add(file, row.Line, reason, row.Whole);
            }
        }

        if (batch.Count + told.Count + mapping.Rows.Length > batchSize)
        {
            Acknowledge();
        }
    }

    /// <summary>Keeps a row that cannot be taken apart.</summary>
    internal void Reject(long line, string reason, ReadOnlySpan<char> row)
    {
        Count = Count with { Rows = Count.Rows + 1 };
        rejected.Add(file, line, reason, row);
    }

    /// <summary>Tells the fields that no row of the source had.</summary>
    internal void NeverMet(IEnumerable<string> fields) => NeverThere.AddRange(fields.Select(field => $"{file}: {field}"));

    /// <summary>Hands over what is gathered.</summary>
    internal void Acknowledge()
    {
        // What was rejected on the way to this batch is on its side file before the batch counts as taken.
        rejected.Flush();
        if (batch.Count + told.Count > 0)
        {
            AddedBatch added = mapping.IsTelemetry ? store.AddTelemetry(network, told) : store.Add(network, batch);
            Count = Count with
            {
                Added = Count.Added + added.Added,
                AlreadyThere = Count.AlreadyThere + added.AlreadyThere,
                LongestWrite = added.WriteTime > Count.LongestWrite ? added.WriteTime : Count.LongestWrite,
            };
            bool small = added.WriteTime < Soon && batch.Count + told.Count >= batchSize / 2;
            batchSize = added.WriteTime > Late ? Math.Max(batchSize / 2, 64) : small ? Math.Min(batchSize * 2, RecordStore.MostInOneBatch) : batchSize;
            batch.Clear();
            told.Clear();
        }

        Progress?.Report((int)Math.Min(Count.Rows, int.MaxValue));
    }

    /// <summary>Forgets what was gathered and not handed over, after a fault.</summary>
    internal void Drop()
    {
        batch.Clear();
        told.Clear();
        rejected.Flush();
    }

    /// <summary>What no row of text has; empty where it is in order.</summary>
    private static string Broken(ReadOnlySpan<char> row) => row.IndexOfAny('\uFFFD', '\0') switch
    {
        < 0 => row.Contains("\\u0000", StringComparison.Ordinal) ? ZeroCharacter : "",
        int at => row[at] == '\0' ? ZeroCharacter : "the row is not UTF-8 text",
    };
}
