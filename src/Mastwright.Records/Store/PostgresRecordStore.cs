using System.Data.Common;
using Mastwright.Evidence;
using Npgsql;

namespace Mastwright.Records.Store;

/// <summary>The store in a database of PostgreSQL, for several computers that keep records together.</summary>
public sealed class PostgresRecordStore : SqlRecordStore
{
    private readonly NpgsqlConnection connection;

    private PostgresRecordStore(string place, NpgsqlConnection connection)
    {
        Place = place;
        this.connection = connection;
        Stations = new(connection);
    }

    /// <inheritdoc/>
    public override string Place { get; }

    private protected override DbConnection Connection => connection;

    private protected override SqlStations Stations { get; }

    /// <summary>Whether a place is a connection string and no file.</summary>
    public static bool IsPlace(string place)
    {
        ArgumentNullException.ThrowIfNull(place);
        return place.StartsWith("Host=", StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Opens the store in a database that is there, and brings its tables to the newest form.</summary>
    /// <param name="connectionString">As "Host=…;Database=…;Username=…"; a password that it lacks is taken from PGPASSWORD or the user's password file.</param>
    /// <exception cref="RecordStoreException">It cannot be opened, or is one of a newer program.</exception>
    public static PostgresRecordStore Open(string connectionString)
    {
        ArgumentException.ThrowIfNullOrEmpty(connectionString);
        NpgsqlConnectionStringBuilder asked;
        try
        {
            // No pool: what is closed is closed. Readers and writers that wait for a lock give up after a minute.
            asked = new(connectionString) { Pooling = false, Options = "-c lock_timeout=60000 -c synchronous_commit=on", CommandTimeout = 120 };
        }
        catch (ArgumentException fault)
        {
            throw new RecordStoreException($"{fault.Message} Write the store as 'Host=NAME;Database=NAME;Username=NAME'", fault);
        }

        // Without user and password: this name stands in messages.
        string name = $"Host={asked.Host};Port={asked.Port};Database={asked.Database}";
        NpgsqlConnection opened = new(asked.ConnectionString);
        try
        {
            return PostgresFault.Told(name, () =>
            {
                opened.Open();
                PostgresMigrations.Run(opened, name);
                return new PostgresRecordStore(name, opened);
            });
        }
        catch
        {
            opened.Dispose();
            throw;
        }
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            connection.Dispose();
        }
    }

    private protected override T Told<T>(Func<T> work) => PostgresFault.Told(Place, work);

    private protected override DbTransaction BeginWrite() => connection.BeginTransaction();

    private protected override long LockedNetwork(DbTransaction transaction, string network)
    {
        long number = connection.Number(transaction, "SELECT network FROM network WHERE name = @name FOR UPDATE", ("@name", network));
        if (number > 0)
        {
            return number;
        }

        connection.Execute(transaction, "INSERT INTO network (name, last_ingest) VALUES (@name, 0) ON CONFLICT (name) DO NOTHING", ("@name", network));
        return connection.Number(transaction, "SELECT network FROM network WHERE name = @name FOR UPDATE", ("@name", network));
    }

    private protected override (int Added, int Of, long LastIngest) Insert(DbTransaction transaction, string network, long number, IReadOnlyList<KeyedRecord> batch)
    {
        long before = connection.Number(transaction, "SELECT last_ingest FROM network WHERE network = @network", ("@network", number));
        int added = PostgresInsertion.Run(connection, (NpgsqlTransaction)transaction, number, before, Stations, batch);
        if (added > 0)
        {
            connection.Execute(transaction, "UPDATE network SET last_ingest = @last WHERE network = @network", ("@last", before + added), ("@network", number));
        }

        return (added, batch.Count, before + added);
    }

    private protected override int InsertTelemetry(DbTransaction transaction, string network, long number, IReadOnlyList<TelemetryRecord> batch) =>
        TelemetryRows.InsertAll(connection, transaction, number, Stations, batch);

    private protected override void Forget() => Stations.Forget();
}
