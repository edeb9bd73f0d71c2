using System.Diagnostics;
using System.Globalization;
using Mastwright.Evidence;
using Microsoft.Data.Sqlite;

namespace Mastwright.Records.Store;

/// <summary>The store in one file of SQLite, with a write-ahead log beside it: readers do not wait for a writer, nor it for them.</summary>
/// <remarks>The file belongs on a local disk: the log is shared memory between programs of one machine.</remarks>
public sealed class SqliteRecordStore : RecordStore
{
    private const int PatienceSeconds = 60;

    private readonly string path;
    private readonly SqliteConnection connection;
    private readonly SqliteInsertion insertion;

    private SqliteRecordStore(string path, SqliteConnection connection)
    {
        this.path = path;
        this.connection = connection;
        insertion = new(connection);
    }

    /// <summary>Opens a store, made when the file is not there, and brings its tables to the newest form.</summary>
    /// <exception cref="RecordStoreException">It cannot be opened, is no store, or is one of a newer program.</exception>
    public static SqliteRecordStore Open(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        SqliteConnection opened = new(new SqliteConnectionStringBuilder
        {
            DataSource = path,
            Mode = SqliteOpenMode.ReadWriteCreate,
            // A pool would keep the file open after the store is closed.
            Pooling = false,
            DefaultTimeout = PatienceSeconds,
        }.ToString());
        try
        {
            return SqliteFault.Told(path, () =>
            {
                opened.Open();
                // First whether it is ours: the file of another program is not touched.
                SqliteMigrations.Run(opened, path);
                // A batch that was acknowledged outlives a loss of power too: the log is flushed at each commit.
                SqliteMigrations.Execute(opened, "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = OFF");
                return new SqliteRecordStore(path, opened);
            });
        }
        catch
        {
            opened.Dispose();
            throw;
        }
    }

    /// <inheritdoc/>
    public override AddedBatch Add(string network, IReadOnlyList<KeyedRecord> batch)
    {
        ArgumentException.ThrowIfNullOrEmpty(network);
        ArgumentNullException.ThrowIfNull(batch);
        if (batch.Count > MostInOneBatch)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"A batch has at most {MostInOneBatch} records."), nameof(batch));
        }

        return SqliteFault.Told(path, () =>
        {
            using SqliteTransaction transaction = connection.BeginTransaction(deferred: false);
            long start = Stopwatch.GetTimestamp();
            try
            {
                (int added, long last) = insertion.Run(transaction, network, batch);
                transaction.Commit();
                return new AddedBatch(added, batch.Count - added, last, Stopwatch.GetElapsedTime(start));
            }
            catch
            {
                // The numbers of stations that are rolled back may go to others.
                insertion.ForgetStations();
                throw;
            }
        });
    }

    /// <inheritdoc/>
    public override IReadOnlyList<StoredRecord> ReadAfter(string network, long ingest, int most)
    {
        ArgumentNullException.ThrowIfNull(network);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(most);
        return SqliteFault.Told(path, () =>
        {
            using SqliteCommand command = connection.CreateCommand();
            command.CommandText = SqliteReading.Sql;
            command.Parameters.AddWithValue("$network", network);
            command.Parameters.AddWithValue("$ingest", ingest);
            command.Parameters.AddWithValue("$most", most);
            using SqliteDataReader reader = command.ExecuteReader();
            List<StoredRecord> records = [];
            while (reader.Read())
            {
                records.Add(SqliteReading.Record(reader));
            }

            return records;
        });
    }

    /// <inheritdoc/>
    public override long Count(string network)
    {
        ArgumentNullException.ThrowIfNull(network);
        return SqliteFault.Told(path, () =>
        {
            using SqliteCommand command = connection.CreateCommand();
            command.CommandText = "SELECT count(*) FROM reception WHERE network = (SELECT network FROM network WHERE name = $network)";
            command.Parameters.AddWithValue("$network", network);
            return (long)command.ExecuteScalar()!;
        });
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
}
