using System.Text;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace Mastwright.Records.Store;

/// <summary>
/// A prepared statement whose values are set without an object for each: a batch of records takes less than half the time that it takes through the
/// parameters of ADO.NET (measured 2026-11-28). It runs inside whatever transaction the connection is in.
/// </summary>
internal sealed class SqliteStatement : IDisposable
{
    private const int UsualBytes = 256;

    private readonly sqlite3 database;
    private readonly sqlite3_stmt statement;

    internal SqliteStatement(SqliteConnection connection, string sql)
    {
        database = connection.Handle!;
        Check(raw.sqlite3_prepare_v2(database, sql, out statement));
    }

    /// <inheritdoc/>
    public void Dispose() => statement.Dispose();

    /// <summary>Sets a value by its place, from 1.</summary>
    internal void Set(int place, long? value)
    {
        if (value is { } number)
        {
            Check(raw.sqlite3_bind_int64(statement, place, number));
        }
        else
        {
            Check(raw.sqlite3_bind_null(statement, place));
        }
    }

    /// <inheritdoc cref="Set(int, long?)"/>
    internal void Set(int place, double? value)
    {
        if (value is { } number)
        {
            Check(raw.sqlite3_bind_double(statement, place, number));
        }
        else
        {
            Check(raw.sqlite3_bind_null(statement, place));
        }
    }

    /// <inheritdoc cref="Set(int, long?)"/>
    internal void Set(int place, string? value)
    {
        if (value is null)
        {
            Check(raw.sqlite3_bind_null(statement, place));
            return;
        }

        int most = Encoding.UTF8.GetMaxByteCount(value.Length);
        Span<byte> bytes = most <= UsualBytes ? stackalloc byte[UsualBytes] : new byte[most];
        // The engine takes a copy.
        Check(raw.sqlite3_bind_text(statement, place, bytes[..Encoding.UTF8.GetBytes(value, bytes)]));
    }

    /// <summary>Runs it; tells how many rows it has changed.</summary>
    internal int Run()
    {
        int code = raw.sqlite3_step(statement);
        int changed = code == raw.SQLITE_DONE ? raw.sqlite3_changes(database) : 0;
        raw.sqlite3_reset(statement);
        if (code != raw.SQLITE_DONE)
        {
            Check(code);
        }

        return changed;
    }

    private void Check(int code) => SqliteException.ThrowExceptionForRC(code, database);
}
