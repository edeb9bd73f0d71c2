using System.Data.Common;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Mastwright.Records.Store;

/// <summary>Plain commands on a connection of either engine; parameters are written @name in both.</summary>
internal static class SqlCommands
{
    [SuppressMessage("Security", "CA2100:Review SQL queries for security vulnerabilities", Justification = "Only constants of this assembly come here; what others say goes into parameters.")]
    internal static DbCommand Command(this DbConnection connection, DbTransaction? transaction, string sql, params ReadOnlySpan<(string Name, object? Value)> parameters)
    {
        DbCommand command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = sql;
        foreach ((string name, object? value) in parameters)
        {
            DbParameter parameter = command.CreateParameter();
            parameter.ParameterName = name;
            parameter.Value = value ?? DBNull.Value;
            command.Parameters.Add(parameter);
        }

        return command;
    }

    internal static int Execute(this DbConnection connection, DbTransaction? transaction, string sql, params ReadOnlySpan<(string Name, object? Value)> parameters)
    {
        using DbCommand command = connection.Command(transaction, sql, parameters);
        return command.ExecuteNonQuery();
    }

    /// <summary>The one whole number that is asked for; 0 where there is none.</summary>
    internal static long Number(this DbConnection connection, DbTransaction? transaction, string sql, params ReadOnlySpan<(string Name, object? Value)> parameters)
    {
        using DbCommand command = connection.Command(transaction, sql, parameters);
        return command.ExecuteScalar() is { } answer and not DBNull ? Convert.ToInt64(answer, CultureInfo.InvariantCulture) : 0;
    }

    internal static List<T> Rows<T>(this DbConnection connection, Func<DbDataReader, T> row, string sql, params ReadOnlySpan<(string Name, object? Value)> parameters) =>
        connection.Rows(null, row, sql, parameters);

    internal static List<T> Rows<T>(this DbConnection connection, DbTransaction? transaction, Func<DbDataReader, T> row, string sql, params ReadOnlySpan<(string Name, object? Value)> parameters)
    {
        using DbCommand command = connection.Command(transaction, sql, parameters);
        using DbDataReader reader = command.ExecuteReader();
        List<T> rows = [];
        while (reader.Read())
        {
            rows.Add(row(reader));
        }

        return rows;
    }

    internal static string? TextOrNull(this DbDataReader row, int column) => row.IsDBNull(column) ? null : row.GetString(column);

    internal static double? DoubleOrNull(this DbDataReader row, int column) => row.IsDBNull(column) ? null : row.GetDouble(column);

    internal static long? LongOrNull(this DbDataReader row, int column) => row.IsDBNull(column) ? null : row.GetInt64(column);

    internal static int? WholeOrNull(this DbDataReader row, int column) => row.IsDBNull(column) ? null : checked((int)row.GetInt64(column));
}
