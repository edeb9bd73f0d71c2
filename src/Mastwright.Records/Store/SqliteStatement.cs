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

    /// <inheritdoc cref="Set(int, long?)"/>
    internal void Set(int place, ReadOnlySpan<byte> value) => Check(raw.sqlite3_bind_blob(statement, place, value));

    /// <summary>Goes to the next row of what it asks for; at the end it may be asked anew.</summary>
    internal bool Next()
    {
        int code = raw.sqlite3_step(statement);
        if (code == raw.SQLITE_ROW)
        {
            return true;
        }

        raw.sqlite3_reset(statement);
        if (code != raw.SQLITE_DONE)
        {
            Check(code);
        }

        return false;
    }

    /// <summary>Leaves the rows that are left.</summary>
    internal void End() => raw.sqlite3_reset(statement);

    /// <summary>A whole number of the row, by its column from 0; 0 where there is none.</summary>
    internal long Whole(int column) => raw.sqlite3_column_int64(statement, column);

    /// <summary>A number of the row; NaN where there is none.</summary>
    internal double Real(int column) => IsNull(column) ? double.NaN : raw.sqlite3_column_double(statement, column);

    /// <summary>A text of the row; null where there is none.</summary>
    internal string? Text(int column) => IsNull(column) ? null : raw.sqlite3_column_text(statement, column).utf8_to_string();

    /// <summary>Bytes of the row, good until the next.</summary>
    internal ReadOnlySpan<byte> Bytes(int column) => raw.sqlite3_column_blob(statement, column);

    /// <summary>Whether a column of the row has no value.</summary>
    internal bool IsNull(int column) => raw.sqlite3_column_type(statement, column) == raw.SQLITE_NULL;

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
