using Mastwright.Evidence;

namespace Mastwright.Records.Store;

/// <summary>Keeps the reception records of any number of networks: what every engine of the store promises.</summary>
/// <remarks>
/// <list type="bullet">
/// <item>A batch is there whole or not at all. When <see cref="Add"/> has returned, it outlives the end of the program by whatever means.</item>
/// <item>A record that is there already is not added again, whoever adds it and in whatever order.</item>
/// <item>Each added record has an ingest number, from 1 in each network. Numbers rise in the order in which batches become visible,
/// without gaps: who has read up to a number never finds a record below it later. Only <see cref="Compact"/> takes records away.</item>
/// <item>Several stores in several programs may be open on one place. One store is used by one thread at a time.</item>
/// <item>No transaction, and no reading, stays open between calls.</item>
/// </list>
/// </remarks>
public abstract class RecordStore : IDisposable
{
    /// <summary>The most records of one batch.</summary>
    public const int MostInOneBatch = 16_384;

    /// <summary>Where the store is, for messages: never with a password.</summary>
    public abstract string Place { get; }

    /// <summary>Opens a store and brings its tables to the newest form.</summary>
    /// <param name="place">A connection string of PostgreSQL that begins with "Host=", or else the path of a file, made when it is not there.</param>
    /// <exception cref="RecordStoreException">It cannot be opened, is no store, or is one of a newer program.</exception>
    public static RecordStore At(string place) => PostgresRecordStore.IsPlace(place) ? PostgresRecordStore.Open(place) : SqliteRecordStore.Open(place);

    /// <summary>Adds a batch: all of it or, when this throws, nothing.</summary>
    /// <param name="network">The network's name, not empty.</param>
    /// <param name="batch">The records with their keys, at most <see cref="MostInOneBatch"/>.</param>
    /// <exception cref="ArgumentException">The name is empty or the batch too long.</exception>
    /// <exception cref="RecordStoreException">The store cannot be written now; its message is for the person.</exception>
    public abstract AddedBatch Add(string network, IReadOnlyList<KeyedRecord> batch);

    /// <summary>The records with ingest numbers above the one given, in rising order.</summary>
    /// <param name="network">The network's name; one that is not there has no records.</param>
    /// <param name="ingest">The last number already read; 0 for the beginning.</param>
    /// <param name="most">How many at most, one or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The most is not above zero.</exception>
    /// <exception cref="RecordStoreException">The store cannot be read; its message is for the person.</exception>
    public abstract IReadOnlyList<StoredRecord> ReadAfter(string network, long ingest, int most);

    /// <summary>How many records of a network the store holds.</summary>
    /// <exception cref="RecordStoreException">The store cannot be read; its message is for the person.</exception>
    public abstract long Count(string network);

    /// <summary>The networks that the store knows, in the order in which they came.</summary>
    /// <exception cref="RecordStoreException">The store cannot be read; its message is for the person.</exception>
    public abstract IReadOnlyList<string> Networks();

    /// <summary>Adds what stations tell of themselves, as far as it is not there: all of it or, when this throws, nothing.</summary>
    /// <param name="network">The network's name, not empty.</param>
    /// <param name="batch">At most <see cref="MostInOneBatch"/>.</param>
    /// <exception cref="ArgumentException">The name is empty or the batch too long.</exception>
    /// <exception cref="RecordStoreException">The store cannot be written now; its message is for the person.</exception>
    public abstract AddedBatch AddTelemetry(string network, IReadOnlyList<TelemetryRecord> batch);

    /// <summary>What one station has told of itself within a period, in the order of its times.</summary>
    /// <param name="network">The network's name.</param>
    /// <param name="station">The station's address.</param>
    /// <param name="fromMicroseconds">The first microsecond of the period, since 1970 UTC.</param>
    /// <param name="toMicroseconds">The first after it.</param>
    /// <exception cref="RecordStoreException">The store cannot be read; its message is for the person.</exception>
    public abstract IReadOnlyList<TelemetryRecord> ReadTelemetry(string network, string station, long fromMicroseconds, long toMicroseconds);

    /// <summary>What all stations of a network told of themselves in a time, by time.</summary>
    /// <param name="network">The network.</param>
    /// <param name="fromMicroseconds">Begin of the time, in microseconds since 1970 UTC by the stations' clocks.</param>
    /// <param name="toMicroseconds">Its end, not counted.</param>
    /// <exception cref="RecordStoreException">The store cannot be read.</exception>
    public abstract IReadOnlyList<TelemetryRecord> ReadTelemetry(string network, long fromMicroseconds, long toMicroseconds);

    /// <summary>Writes an entry of the site log with what is attached to it: all of it or, when this throws, nothing.</summary>
    /// <param name="network">The network's name, not empty.</param>
    /// <param name="entry">The entry; its number is not looked at.</param>
    /// <param name="contents">The content of each of its attachments.</param>
    /// <returns>The entry with its number.</returns>
    /// <exception cref="ArgumentException">The name is empty, or contents and attachments are not as many.</exception>
    /// <exception cref="RecordStoreException">The store cannot be written now; its message is for the person.</exception>
    public abstract SiteLogEntry AddLogEntry(string network, SiteLogEntry entry, IReadOnlyList<ReadOnlyMemory<byte>> contents);

    /// <summary>The site log of a network; one that is not there has no entries.</summary>
    /// <exception cref="RecordStoreException">The store cannot be read; its message is for the person.</exception>
    public abstract LogEntries ReadLog(string network);

    /// <summary>The content of an attachment by its SHA-256; null where there is none.</summary>
    /// <exception cref="RecordStoreException">The store cannot be read; its message is for the person.</exception>
    public abstract byte[]? ReadAttachment(string sha256);

    /// <summary>How many records are of a time step before a time.</summary>
    /// <exception cref="RecordStoreException">The store cannot be read; its message is for the person.</exception>
    public abstract long CountBefore(string network, long beforeMicroseconds);

    /// <summary>
    /// Turns a piece of the oldest records before a time into <see cref="HourSummary"/>; the records are gone for good, their numbers are not given out again,
    /// and a record that is brought again is still known. To be called until it gives 0; it may stop at any time.
    /// </summary>
    /// <param name="network">The network's name, not empty.</param>
    /// <param name="beforeMicroseconds">Records of a time step before it, in microseconds since 1970 UTC.</param>
    /// <returns>How many records it has turned.</returns>
    /// <exception cref="RecordStoreException">The store cannot be written now; its message is for the person.</exception>
    public abstract int Compact(string network, long beforeMicroseconds);

    /// <summary>The summaries of a network, in the order of their hours.</summary>
    /// <exception cref="RecordStoreException">The store cannot be read; its message is for the person.</exception>
    public abstract IReadOnlyList<HourSummary> ReadSummaries(string network);

    /// <summary>Reads receptions of a period in the order of their times: those that one of some stations heard, or sent last.</summary>
    /// <param name="network">The network's name; one that is not there has no records.</param>
    /// <param name="addresses">The addresses of those stations.</param>
    /// <param name="fromMicroseconds">The first microsecond of the period, since 1970 UTC.</param>
    /// <param name="toMicroseconds">The first after it.</param>
    /// <param name="visit">Given each of them.</param>
    /// <exception cref="RecordStoreException">The store cannot be read; its message is for the person.</exception>
    public abstract void ReadPeriod(string network, IReadOnlySet<string> addresses, long fromMicroseconds, long toMicroseconds, PeriodVisitor visit);

    /// <summary>How many receptions each receiver made on each day of UTC, in the order of the days.</summary>
    /// <param name="network">The network.</param>
    /// <exception cref="RecordStoreException">The store cannot be read.</exception>
    public abstract IReadOnlyList<DayCount> CountByDay(string network);

    /// <summary>The times of the first and the last reception of a network that lie within bounds, in microseconds since 1970 UTC; null without any.</summary>
    /// <exception cref="RecordStoreException">The store cannot be read; its message is for the person.</exception>
    public abstract (long First, long Last)? Span(string network, long fromMicroseconds, long toMicroseconds);

    /// <summary>Closes the store.</summary>
    public void Dispose()
    {
        Dispose(disposing: true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Closes what the engine holds.</summary>
    protected abstract void Dispose(bool disposing);
}
