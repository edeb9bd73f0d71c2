using System.Globalization;
using Npgsql;

namespace Mastwright.Records.Store;

/// <summary>Brings the tables of a database to the newest form, all steps that are missing in one transaction.</summary>
internal static class PostgresMigrations
{
    // Any number that others are not likely to lock; it keeps two programs from taking the same step.
    private const long Lock = 0x6D617374;

    /// <summary>Takes the steps that the database has not seen yet.</summary>
    /// <exception cref="RecordStoreException">The store is one of a newer program.</exception>
    internal static void Run(NpgsqlConnection connection, string place)
    {
        IReadOnlyList<string> steps = StoreSteps.Of("postgresql");
        using NpgsqlTransaction transaction = connection.BeginTransaction();
        connection.Execute(transaction, "SELECT pg_advisory_xact_lock(@lock)", ("@lock", Lock));
        connection.Execute(transaction, "CREATE TABLE IF NOT EXISTS record_store_version (version BIGINT NOT NULL)");
        long version = connection.Number(transaction, "SELECT max(version) FROM record_store_version");
        if (version > steps.Count)
        {
            throw new RecordStoreException(string.Create(
                CultureInfo.InvariantCulture, $"{place}: made by a newer version of this program (tables {version}, this one knows {steps.Count}); use that one"));
        }

        for (int step = (int)version; step < steps.Count; step++)
        {
            connection.Execute(transaction, steps[step]);
            connection.Execute(transaction, "INSERT INTO record_store_version (version) VALUES (@version)", ("@version", (long)step + 1));
        }

        transaction.Commit();
    }
}
