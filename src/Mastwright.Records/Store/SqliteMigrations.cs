using System.Globalization;
using Microsoft.Data.Sqlite;

namespace Mastwright.Records.Store;

/// <summary>Brings a file's tables to the newest form, step by step, each step whole or not at all.</summary>
/// <remarks>The steps are the embedded files migrations/sqlite/NNNN-name.sql; the number of the last one taken is the file's user_version.</remarks>
internal static class SqliteMigrations
{
    /// <summary>The number of the newest step.</summary>
    internal static int Newest => StoreSteps.Of("sqlite").Count;

    /// <summary>Takes the steps that the file has not seen yet.</summary>
    /// <exception cref="RecordStoreException">The file is not a store, or one of a newer program.</exception>
    internal static void Run(SqliteConnection connection, string path)
    {
        // Looked at without a lock first: opening a store that is up to date waits for nobody.
        long version = connection.Number(null, "PRAGMA user_version");
        if (version == Newest)
        {
            return;
        }

        using SqliteTransaction transaction = connection.BeginTransaction(deferred: false);
        version = connection.Number(transaction, "PRAGMA user_version");
        if (version > Newest)
        {
            throw new RecordStoreException(string.Create(
                CultureInfo.InvariantCulture, $"{path}: made by a newer version of this program (tables {version}, this one knows {Newest}); use that one"));
        }

        if (version == 0 && connection.Number(transaction, "SELECT count(*) FROM sqlite_schema") > 0)
        {
            throw new RecordStoreException($"{path}: this is a database, but no store of records; name another file");
        }

        IReadOnlyList<string> steps = StoreSteps.Of("sqlite");
        for (int step = (int)version; step < steps.Count; step++)
        {
            connection.Execute(transaction, steps[step]);
        }

        connection.Execute(transaction, string.Create(CultureInfo.InvariantCulture, $"PRAGMA user_version = {steps.Count}"));
        transaction.Commit();
    }
}
