using Mastwright.Evidence;
using Mastwright.Records.Store;

namespace Mastwright.Records.Import;

/// <summary>Takes the rows of one source: decodes, gathers batches, hands them to the store, keeps what is no record.</summary>
internal sealed class RowTaking
{
    private const string ZeroCharacter = "the row holds a zero character, which is no text";

    private readonly BatchWriter writer;
    private readonly RecordMapping mapping;
    private readonly RejectedRows rejected;
    private readonly SourceClock clock;
    private readonly AddressBook addresses = new();
    private RecordBatch batch = new();
    private long rows, notHeard;
    private RowDecoder[] decoders = [];
    private TelemetryDecoder[] tellers = [];
    private SameCounter same;
    private string file = "";

    internal RowTaking(RecordStore store, string network, RecordMapping mapping, RejectedRows rejected, SourceClock clock)
    {
        writer = new(store, network);
        this.mapping = mapping;
        this.rejected = rejected;
        this.clock = clock;
        same = new(mapping.AntennasShareAddress);
    }

    /// <summary>What is in the store by now, and the rows that were read.</summary>
    internal ImportCount Count => new(rows, writer.Added, writer.AlreadyThere, notHeard, writer.LongestWrite);

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
        rows++;
        string broken = Broken(row.Whole);
        foreach (RowDecoder decoder in decoders)
        {
            string reason = broken;
            if (mapping.SeveralInARow && !decoder.IsHeard(row))
            {
                notHeard++;
            }
            else if (broken.Length == 0 && decoder.Decode(row, out reason) is { } record)
            {
                batch.Receptions.Add(new(record, same.KeyOf(record)));
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
                notHeard++;
            }
            else if (broken.Length == 0 && teller.Decode(row, out reason) is { } record)
            {
                batch.Telemetry.Add(record);
            }
            else
            {
                rejected.Add(file, row.Line, reason, row.Whole);
            }
        }

        if (batch.Count + mapping.Rows.Length > writer.BatchSize)
        {
            HandOver();
        }
    }

    /// <summary>Keeps a row that cannot be taken apart.</summary>
    internal void Reject(long line, string reason, ReadOnlySpan<char> row)
    {
        rows++;
        rejected.Add(file, line, reason, row);
    }

    /// <summary>Tells the fields that no row of the source had.</summary>
    internal void NeverMet(IEnumerable<string> fields) => NeverThere.AddRange(fields.Select(field => $"{file}: {field}"));

    /// <summary>Hands over what is gathered and waits until it is in the store.</summary>
    internal void Acknowledge()
    {
        HandOver();
        writer.Finish();
        Report();
    }

    /// <summary>Waits for what was handed over, forgets what was gathered since; for the end of a source, whatever it was.</summary>
    internal void Drop()
    {
        batch = new();
        rejected.Flush();
        try
        {
            writer.Finish();
        }
        catch (RecordStoreException)
        {
            // Something else is being told already, and only what was acknowledged is counted.
        }
    }

    private void HandOver()
    {
        // What was rejected on the way to this batch is on its side file before the batch can count as taken.
        rejected.Flush();
        if (batch.Count > 0)
        {
            writer.Begin(batch);
            batch = new();
        }

        Report();
    }

    private void Report() => Progress?.Report((int)Math.Min(rows, int.MaxValue));

    /// <summary>What no row of text has; empty where it is in order.</summary>
    private static string Broken(ReadOnlySpan<char> row) => row.IndexOfAny('\uFFFD', '\0') switch
    {
        < 0 => row.Contains("\\u0000", StringComparison.Ordinal) ? ZeroCharacter : "",
        int at => row[at] == '\0' ? ZeroCharacter : "the row is not UTF-8 text",
    };
}
