using System.Data.Common;
using System.Diagnostics;
using System.Globalization;
using Mastwright.Evidence;

namespace Mastwright.Records.Store;

/// <summary>What the engines have in common: the same tables, read and written by the same statements.</summary>
public abstract class SqlRecordStore : RecordStore
{
    private const long Day = 86_400_000_000;

    private protected SqlRecordStore()
    {
    }

    private protected abstract DbConnection Connection { get; }

    private protected abstract SqlStations Stations { get; }

    /// <inheritdoc/>
    public override AddedBatch Add(string network, IReadOnlyList<KeyedRecord> batch)
    {
        ArgumentNullException.ThrowIfNull(batch);
        NotTooLong(batch.Count, nameof(batch));
        return Write(network, (transaction, number) => Insert(transaction, network, number, batch));
    }

    /// <inheritdoc/>
    public override IReadOnlyList<StoredRecord> ReadAfter(string network, long ingest, int most)
    {
        ArgumentNullException.ThrowIfNull(network);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(most);
        return Told(() => Connection.Rows(ReceptionRows.Record, ReceptionRows.After, ("@network", network), ("@ingest", ingest), ("@most", most)));
    }

    /// <inheritdoc/>
    public override long Count(string network)
    {
        ArgumentNullException.ThrowIfNull(network);
        return Told(() => Connection.Number(null, "SELECT count(*) FROM reception WHERE network = (SELECT network FROM network WHERE name = @network)", ("@network", network)));
    }

    /// <inheritdoc/>
    public override IReadOnlyList<DayCount> CountByDay(string network)
    {
        ArgumentNullException.ThrowIfNull(network);
        return Told(() => Connection.Rows(
            row => new DayCount(row.GetInt64(0) * Day, row.GetString(1), row.GetInt64(2)),
            """
            SELECT counted.day, station.address, counted.records
            FROM (SELECT step_microseconds / 86400000000 AS day, receiver, count(*) AS records FROM reception
                  WHERE network = (SELECT network FROM network WHERE name = @network) GROUP BY 1, 2) counted
            JOIN station ON station.network = (SELECT network FROM network WHERE name = @network) AND station.station = counted.receiver
            ORDER BY 1, 2
            """,
            ("@network", network)));
    }

    /// <inheritdoc/>
    public override IReadOnlyList<string> Networks() => Told(() => Connection.Rows(row => row.GetString(0), "SELECT name FROM network ORDER BY network"));

    /// <inheritdoc/>
    public override AddedBatch AddTelemetry(string network, IReadOnlyList<TelemetryRecord> batch)
    {
        ArgumentNullException.ThrowIfNull(batch);
        NotTooLong(batch.Count, nameof(batch));
        return Write(network, (transaction, number) => (InsertTelemetry(transaction, network, number, batch), batch.Count, 0));
    }

    /// <inheritdoc/>
    public override IReadOnlyList<TelemetryRecord> ReadTelemetry(string network, string station, long fromMicroseconds, long toMicroseconds)
    {
        ArgumentNullException.ThrowIfNull(network);
        ArgumentNullException.ThrowIfNull(station);
        return Told(() => Connection.Rows(
            TelemetryRows.Record, TelemetryRows.OfStation, ("@network", network), ("@every", 0), ("@station", station), ("@from", fromMicroseconds), ("@to", toMicroseconds)));
    }

    /// <inheritdoc/>
    public override IReadOnlyList<TelemetryRecord> ReadTelemetry(string network, long fromMicroseconds, long toMicroseconds)
    {
        ArgumentNullException.ThrowIfNull(network);
        return Told(() => Connection.Rows(
            TelemetryRows.Record, TelemetryRows.OfStation, ("@network", network), ("@every", 1), ("@station", ""), ("@from", fromMicroseconds), ("@to", toMicroseconds)));
    }

    /// <inheritdoc/>
    public override SiteLogEntry AddLogEntry(string network, SiteLogEntry entry, IReadOnlyList<ReadOnlyMemory<byte>> contents)
    {
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(contents);
        if (contents.Count != entry.Attachments.Length)
        {
            throw new ArgumentException("Each attachment needs its content.", nameof(contents));
        }

        SiteLogEntry written = entry;
        Write(network, (transaction, number) =>
        {
            written = LogRows.Insert(Connection, transaction, number, entry, contents);
            return (1, 1, 0);
        });
        return written;
    }

    /// <inheritdoc/>
    public override void ReadPeriod(string network, IReadOnlySet<string> addresses, long fromMicroseconds, long toMicroseconds, PeriodVisitor visit)
    {
        ArgumentNullException.ThrowIfNull(network);
        ArgumentNullException.ThrowIfNull(addresses);
        ArgumentNullException.ThrowIfNull(visit);
        Told(() =>
        {
            new PeriodReading(Connection, NumberOf(network)).Read(addresses, fromMicroseconds, toMicroseconds, visit);
            return true;
        });
    }

    /// <inheritdoc/>
    public override (long First, long Last)? Span(string network, long fromMicroseconds, long toMicroseconds)
    {
        ArgumentNullException.ThrowIfNull(network);
        return Told(() =>
        {
            const string within = " FROM reception WHERE network = @network AND step_microseconds >= @from AND step_microseconds < @to";
            (string, object?)[] bounds = [("@network", NumberOf(network)), ("@from", fromMicroseconds), ("@to", toMicroseconds)];
            return Connection.Number(null, "SELECT count(*) FROM (SELECT 1" + within + " LIMIT 1) AS some", bounds) == 0
                ? ((long, long)?)null
                : (Connection.Number(null, "SELECT min(step_microseconds)" + within, bounds), Connection.Number(null, "SELECT max(step_microseconds)" + within, bounds));
        });
    }

    /// <inheritdoc/>
    public override LogEntries ReadLog(string network)
    {
        ArgumentNullException.ThrowIfNull(network);
        return Told(() => LogRows.Read(Connection, network));
    }

    /// <inheritdoc/>
    public override byte[]? ReadAttachment(string sha256)
    {
        ArgumentNullException.ThrowIfNull(sha256);
        return Told(() => Connection.Rows(row => (byte[])row.GetValue(0), "SELECT content FROM attachment WHERE sha256 = @sha256", ("@sha256", sha256)).SingleOrDefault());
    }

    /// <inheritdoc/>
    public override long CountBefore(string network, long beforeMicroseconds)
    {
        ArgumentNullException.ThrowIfNull(network);
        return Told(() => Connection.Number(
            null,
            "SELECT count(*) FROM reception WHERE network = (SELECT network FROM network WHERE name = @network) AND step_microseconds < @before",
            ("@network", network),
            ("@before", beforeMicroseconds)));
    }

    /// <inheritdoc/>
    public override int Compact(string network, long beforeMicroseconds) =>
        Write(network, (transaction, number) => (SummaryRows.Compact(Connection, transaction, number, Stations, beforeMicroseconds), 0, 0)).Added;

    /// <inheritdoc/>
    public override IReadOnlyList<HourSummary> ReadSummaries(string network)
    {
        ArgumentNullException.ThrowIfNull(network);
        return Told(() => Connection.Rows(SummaryRows.Record, SummaryRows.Read, ("@network", network)));
    }

    /// <summary>Runs a piece of work; errors of the engine become a <see cref="RecordStoreException"/>.</summary>
    private protected abstract T Told<T>(Func<T> work);

    /// <summary>Begins a transaction that will write.</summary>
    private protected abstract DbTransaction BeginWrite();

    /// <summary>Adds the records that are new, under the network's lock; tells how many, of how many, and the last ingest number.</summary>
    private protected abstract (int Added, int Of, long LastIngest) Insert(DbTransaction transaction, string network, long number, IReadOnlyList<KeyedRecord> batch);

    /// <summary>Adds what stations tell of themselves, as far as it is new, under the network's lock.</summary>
    private protected abstract int InsertTelemetry(DbTransaction transaction, string network, long number, IReadOnlyList<TelemetryRecord> batch);

    /// <summary>The network's number; the network is locked for other writers until the transaction ends.</summary>
    private protected abstract long LockedNetwork(DbTransaction transaction, string network);

    /// <summary>Forgets what is remembered between transactions: one was rolled back.</summary>
    private protected abstract void Forget();

    private long NumberOf(string network) => Connection.Number(null, "SELECT network FROM network WHERE name = @network", ("@network", network));

    private AddedBatch Write(string network, Func<DbTransaction, long, (int Added, int Of, long LastIngest)> work)
    {
        ArgumentException.ThrowIfNullOrEmpty(network);
        return Told(() =>
        {
            using DbTransaction transaction = BeginWrite();
            long start = Stopwatch.GetTimestamp();
            try
            {
                (int added, int of, long last) = work(transaction, LockedNetwork(transaction, network));
                transaction.Commit();
                return new AddedBatch(added, of - added, last, Stopwatch.GetElapsedTime(start));
            }
            catch
            {
                // The numbers of stations that are rolled back may go to others.
                Forget();
                throw;
            }
        });
    }

    private static void NotTooLong(int count, string parameter)
    {
        if (count > MostInOneBatch)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"A batch has at most {MostInOneBatch} records."), parameter);
        }
    }
}
