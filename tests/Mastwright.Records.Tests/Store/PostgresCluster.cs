using System.Diagnostics;
using Mastwright.Records.Store;
using Npgsql;

namespace Mastwright.Tests.Records.Store;

/// <summary>A real server of PostgreSQL with a folder of its own, reached by a socket in it; what it holds need not outlive a loss of power.</summary>
public sealed class PostgresCluster : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("mastwright-pg-").FullName;
    private int places;

    /// <summary>Makes and starts it.</summary>
    public PostgresCluster()
    {
        // As root the server refuses to run; the system's own user for it takes over.
        Run("chown", "postgres", folder);
        Server("initdb", "--no-sync", "--auth=trust", "--username=mastwright", "--encoding=UTF8", "--no-locale", "-D", Data);
        Server("pg_ctl", "-D", Data, "-w", "-l", Path.Combine(folder, "log"), "-o", $"-c listen_addresses= -c unix_socket_directories={folder} -c fsync=off -c max_connections=20", "start");
    }

    private static string Programs => Directory.EnumerateDirectories("/usr/lib/postgresql").OrderBy(version => int.Parse(Path.GetFileName(version), System.Globalization.CultureInfo.InvariantCulture)).Last() + "/bin";

    private string Data => Path.Combine(folder, "data");

    internal string Host => folder;

    internal string NewDatabase()
    {
        string name = $"place{++places}";
        Sql("postgres", $"CREATE DATABASE {name}");
        return name;
    }

    internal string Connection(string database) => $"Host={folder};Database={database};Username=mastwright;Pooling=false";

    internal void Sql(string database, string sql)
    {
        using NpgsqlConnection connection = new(Connection(database));
        connection.Open();
#pragma warning disable CA2100 // Constants of these tests.
        using NpgsqlCommand command = new(sql, connection);
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }

    /// <summary>Stops it and takes its folder away.</summary>
    public void Dispose()
    {
        Server("pg_ctl", "-D", Data, "-m", "immediate", "-w", "stop");
        Directory.Delete(folder, recursive: true);
    }

    private static void Server(string program, params string[] arguments)
    {
        string path = Path.Combine(Programs, program);
        if (Environment.IsPrivilegedProcess)
        {
            Run("runuser", ["-u", "postgres", "--", path, .. arguments]);
        }
        else
        {
            Run(path, arguments);
        }
    }

    private static void Run(string program, params string[] arguments)
    {
        if (program is "chown" && !Environment.IsPrivilegedProcess)
        {
            return;
        }

        // Not redirected: the server would keep the pipe open after its starter has ended.
        using Process process = Process.Start(new ProcessStartInfo("sh", ["-c", "exec \"$@\" >/dev/null", "sh", program, .. arguments]) { WorkingDirectory = "/" })!;
        Assert.True(process.WaitForExit(TimeSpan.FromMinutes(1)), program);
        Assert.Equal(0, process.ExitCode);
    }
}

/// <summary>The store's contract on PostgreSQL.</summary>
[Trait("needs", "system")]
public sealed class PostgresRecordStoreTests(PostgresCluster cluster) : RecordStoreContract, IClassFixture<PostgresCluster>
{
    [Fact]
    public void A_store_of_a_newer_program_a_missing_database_and_a_missing_server_are_said_to_be_so()
    {
        string database = cluster.NewDatabase();
        PostgresRecordStore.Open(cluster.Connection(database)).Dispose();
        cluster.Sql(database, "INSERT INTO record_store_version VALUES (99)");
        Assert.Contains("newer version", Assert.Throws<RecordStoreException>(() => PostgresRecordStore.Open(cluster.Connection(database))).Message, StringComparison.Ordinal);
        Assert.Contains("no such database", Assert.Throws<RecordStoreException>(() => PostgresRecordStore.Open(cluster.Connection("nowhere"))).Message, StringComparison.Ordinal);
        RecordStoreException silent = Assert.Throws<RecordStoreException>(() => PostgresRecordStore.Open("Host=/no/such/folder;Database=a;Username=b;Password=secret"));
        Assert.Contains("no database answers", silent.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("secret", silent.Message, StringComparison.Ordinal);
        Assert.Contains("Write the store as", Assert.Throws<RecordStoreException>(() => PostgresRecordStore.Open("Host=a;Colour=b")).Message, StringComparison.Ordinal);
    }

    internal override StorePlace NewPlace() => new DatabasePlace(cluster);

    private sealed class DatabasePlace(PostgresCluster cluster) : StorePlace
    {
        private readonly string database = cluster.NewDatabase();

        internal override string Name => database;

        public override void Dispose()
        {
        }

        internal override RecordStore Open() => PostgresRecordStore.Open(cluster.Connection(database));

        internal override void Refuse(string packetNumber) => cluster.Sql(database, $"ALTER TABLE reception ADD CHECK (packet_id <> '{packetNumber}')");
    }
}
