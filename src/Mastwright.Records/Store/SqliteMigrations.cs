using System.Globalization;
using System.Reflection;
using Microsoft.Data.Sqlite;

namespace Mastwright.Records.Store;

/// <summary>Brings a file's tables to the newest form, step by step, each step whole or not at all.</summary>
/// <remarks>The steps are the embedded files migrations/NNNN-name.sql; the number of the last one taken is the file's user_version.</remarks>
internal static class SqliteMigrations
{
    /// <summary>The number of the newest step.</summary>
    internal static int Newest => Steps().Count;

    /// <summary>Takes the steps that the file has not seen yet.</summary>
    /// <exception cref="RecordStoreException">The file is not a store, or one of a newer program.</exception>
    internal static void Run(SqliteConnection connection, string path)
    {
        // Looked at without a lock first: opening a store that is up to date waits for nobody.
        long version = Number(connection, "PRAGMA user_version");
        if (version == Newest)
        {
            return;
        }

        using SqliteTransaction transaction = connection.BeginTransaction(deferred: false);
        version = Number(connection, "PRAGMA user_version", transaction);
        if (version > Newest)
        {
            throw new RecordStoreException(string.Create(
                CultureInfo.InvariantCulture, $"{path}: made by a newer version of this program (tables {version}, this one knows {Newest}); use that one"));
        }

        if (version == 0 && Number(connection, "SELECT count(*) FROM sqlite_schema", transaction) > 0)
        {
            throw new RecordStoreException($"{path}: this is a database, but no store of records; name another file");
        }

        IReadOnlyList<string> steps = Steps();
        for (int step = (int)version; step < steps.Count; step++)
        {
            Execute(connection, steps[step], transaction);
        }

        Execute(connection, string.Create(CultureInfo.InvariantCulture, $"PRAGMA user_version = {steps.Count}"), transaction);
        transaction.Commit();
    }

    internal static void Execute(SqliteConnection connection, string sql, SqliteTransaction? transaction = null)
    {
        using SqliteCommand command = Command(connection, sql, transaction);
        command.ExecuteNonQuery();
    }

    internal static long Number(SqliteConnection connection, string sql, SqliteTransaction? transaction = null)
    {
        using SqliteCommand command = Command(connection, sql, transaction);
        return Convert.ToInt64(command.ExecuteScalar(), CultureInfo.InvariantCulture);
    }

    private static SqliteCommand Command(SqliteConnection connection, string sql, SqliteTransaction? transaction)
    {
        SqliteCommand command = connection.CreateCommand();
        command.Transaction = transaction;
#pragma warning disable CA2100 // The text is the program's own: an embedded file, or a constant.
        command.CommandText = sql;
#pragma warning restore CA2100
        return command;
    }

    private static List<string> Steps()
    {
        Assembly here = typeof(SqliteMigrations).Assembly;
        List<string> steps = [];
        foreach (string name in here.GetManifestResourceNames().Where(name => name.StartsWith("migrations/", StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            using StreamReader reader = new(here.GetManifestResourceStream(name)!);
            steps.Add(reader.ReadToEnd());
        }

        return steps;
    }
}
