using System.Data.Common;
using Mastwright.Evidence;
using Mastwright.Records.Store.Columns;
using Microsoft.Data.Sqlite;

namespace Mastwright.Records.Store;

/// <summary>The store in one file of SQLite, with a write-ahead log beside it: readers do not wait for a writer, nor it for them.</summary>
/// <remarks>The file belongs on a local disk: the log is shared memory between programs of one machine.</remarks>
public sealed class SqliteRecordStore : SqlRecordStore
{
    private const int PatienceSeconds = 60;

    private readonly SqliteConnection connection;
    private readonly SqliteInsertion insertion;

    private SqliteRecordStore(string path, SqliteConnection connection)
    {
        Place = path;
        this.connection = connection;
        insertion = new(connection);
        Stations = new(connection);
    }

    /// <inheritdoc/>
    public override string Place { get; }

    private protected override DbConnection Connection => connection;

    private protected override SqlStations Stations { get; }

    /// <summary>Opens a store, made when the file is not there, and brings its tables to the newest form.</summary>
    /// <exception cref="RecordStoreException">It cannot be opened, is no store, or is one of a newer program.</exception>
    public static SqliteRecordStore Open(string path) => Open(path, PatienceSeconds);

    /// <summary>The same with another patience, in seconds, with programs that have locked the store.</summary>
    /// <inheritdoc cref="Open(string)"/>
    internal static SqliteRecordStore Open(string path, int patienceSeconds)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        SqliteConnection opened = new(new SqliteConnectionStringBuilder
        {
            DataSource = path,
            Mode = SqliteOpenMode.ReadWriteCreate,
            // A pool would keep the file open after the store is closed.
            Pooling = false,
            DefaultTimeout = patienceSeconds,
        }.ToString());
        try
        {
            return SqliteFault.Told(path, () =>
            {
                opened.Open();
                // First whether it is ours: the file of another program is not touched.
                SqliteMigrations.Run(opened, path);
                // A batch that was acknowledged outlives a loss of power too: the log is flushed at each commit.
                opened.Execute(null, "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = OFF");
                return new SqliteRecordStore(path, opened);
            });
        }
        catch
        {
            opened.Dispose();
            throw;
        }
    }

    /// <summary>Ingest number from which on a network is read through its copy by columns; below, the store itself is quick enough.</summary>
    internal long ColumnsFrom { get; set; } = 300_000;

    /// <inheritdoc/>
    public override void ReadPeriod(string network, IReadOnlySet<string> addresses, long fromMicroseconds, long toMicroseconds, PeriodVisitor visit)
    {
        ArgumentNullException.ThrowIfNull(network);
        ArgumentNullException.ThrowIfNull(addresses);
        ArgumentNullException.ThrowIfNull(visit);
        if (!ColumnReading.TryRead(connection, Place, network, ColumnsFrom, addresses, fromMicroseconds, toMicroseconds, visit))
        {
            base.ReadPeriod(network, addresses, fromMicroseconds, toMicroseconds, visit);
        }
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            insertion.Dispose();
            connection.Dispose();
        }
    }

    private protected override T Told<T>(Func<T> work) => SqliteFault.Told(Place, work);

    private protected override DbTransaction BeginWrite() => connection.BeginTransaction(deferred: false);

    private protected override long LockedNetwork(DbTransaction transaction, string network)
    {
        // The transaction has the lock of the whole file from its beginning.
        connection.Execute(transaction, "INSERT INTO network (name, last_ingest) VALUES (@name, 0) ON CONFLICT (name) DO NOTHING", ("@name", network));
        return connection.Number(transaction, "SELECT network FROM network WHERE name = @name", ("@name", network));
    }

    private protected override (int Added, int Of, long LastIngest) Insert(DbTransaction transaction, string network, long number, IReadOnlyList<KeyedRecord> batch)
    {
        (int added, long last) = insertion.Run(transaction, number, Stations, batch);
        return (added, batch.Count, last);
    }

    private protected override int InsertTelemetry(DbTransaction transaction, string network, long number, IReadOnlyList<TelemetryRecord> batch) =>
        TelemetryRows.InsertAll(connection, transaction, number, Stations, batch);

    private protected override void Forget() => Stations.Forget();
}
