using System.Globalization;
using System.Net.Sockets;
using Npgsql;

namespace Mastwright.Records.Store;

/// <summary>Says in words what an error of PostgreSQL means for the store.</summary>
internal static class PostgresFault
{
    /// <summary>Runs a piece of work on the database; errors of the engine become a <see cref="RecordStoreException"/>.</summary>
    internal static T Told<T>(string place, Func<T> work)
    {
        try
        {
            return work();
        }
        catch (Exception fault) when (fault is NpgsqlException or SocketException or TimeoutException)
        {
            throw new RecordStoreException(string.Create(CultureInfo.InvariantCulture, $"{place}: {Words(fault)}"), fault);
        }
    }

    // SQLSTATE codes: PostgreSQL 15 documentation, appendix A, from memory.
    private static string Words(Exception fault) => fault switch
    {
        PostgresException { SqlState: "55P03" or "40P01" } => "another program has kept the store locked for too long; end it, or try again when it is done",
        PostgresException { SqlState: "53100" } => "the disk of the database is full; nothing of the last batch was kept. Make room and run the import again",
        PostgresException { SqlState: "25006" or "42501" } => "the user of the database may not write there; give the right to make and change tables",
        PostgresException { SqlState: "28P01" or "28000" } => "the database does not let this user in; look at user and password",
        PostgresException { SqlState: "3D000" } => "there is no such database; make it first",
        PostgresException told => told.MessageText,
        NpgsqlException { InnerException: SocketException } or SocketException => "no database answers there",
        _ => fault.Message,
    };
}
