using System.Globalization;
using Microsoft.Data.Sqlite;

namespace Mastwright.Records.Store;

/// <summary>Says in words what an error of SQLite means for the file.</summary>
internal static class SqliteFault
{
    /// <summary>Runs a piece of work on the file; errors of the engine become a <see cref="RecordStoreException"/>.</summary>
    internal static T Told<T>(string path, Func<T> work)
    {
        try
        {
            return work();
        }
        catch (SqliteException fault)
        {
            throw new RecordStoreException(string.Create(CultureInfo.InvariantCulture, $"{path}: {Words(fault)}"), fault);
        }
    }

    // Primary result codes: SQLite, "Result and Error Codes" (sqlite.org/rescode.html), from memory.
    private static string Words(SqliteException fault) => fault.SqliteErrorCode switch
    {
        5 or 6 => "another program has kept the store locked for too long; end it, or try again when it is done",
        8 => "the store or its folder is read-only; give it a folder that may be written",
        10 => "the disk reports an error while the store is read or written; nothing of the last batch was kept",
        11 => "the store is damaged; put back a copy of it",
        13 => "the disk is full; nothing of the last batch was kept. Make room and run the import again",
        14 => "the store cannot be opened; its folder must exist and may be written",
        26 => "this file is no store of records",
        _ => fault.Message,
    };
}
