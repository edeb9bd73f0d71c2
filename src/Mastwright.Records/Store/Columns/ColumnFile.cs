using System.Globalization;
using System.Runtime.InteropServices;
using Microsoft.Data.Sqlite;

namespace Mastwright.Records.Store.Columns;

/// <summary>The copy of a large store's receptions by columns, in a file beside it: derived, made anew when stale, and free to be deleted.</summary>
/// <remarks>
/// It says up to which ingest number it goes, with all that the first, the last and the earliest record it holds say: records are never changed, new
/// ones have higher numbers, and 'records compact' takes away the earliest. Where one of the three is gone or says something else, the copy is made anew.
/// </remarks>
internal sealed class ColumnFile : IDisposable
{
    private const int Form = 1;
    private const int ChunkRows = 262_144;

    private const string Tables = """
        CREATE TABLE IF NOT EXISTS covered (network INTEGER PRIMARY KEY, last_ingest INTEGER NOT NULL, first_ingest INTEGER NOT NULL, early_ingest INTEGER NOT NULL, marks TEXT NOT NULL) STRICT;
        CREATE TABLE IF NOT EXISTS piece (piece INTEGER PRIMARY KEY, network INTEGER NOT NULL, receiver INTEGER NOT NULL, first INTEGER NOT NULL, last INTEGER NOT NULL,
            senders BLOB NOT NULL, rest BLOB NOT NULL) STRICT;
        """;

    private readonly SqliteConnection copy;

    private ColumnFile(SqliteConnection copy) => this.copy = copy;

    /// <summary>Where the copy of a store is.</summary>
    internal static string PathOf(string store) => store + ".columns";

    /// <summary>Opens the copy of a store, or makes an empty one.</summary>
    /// <exception cref="SqliteException">It cannot be opened or made.</exception>
    internal static ColumnFile Open(string store)
    {
        SqliteConnection opened = new(new SqliteConnectionStringBuilder { DataSource = PathOf(store), Mode = SqliteOpenMode.ReadWriteCreate, Pooling = false, DefaultTimeout = 5 }.ToString());
        try
        {
            opened.Open();
            opened.Execute(null, "PRAGMA page_size = 65536; PRAGMA journal_mode = WAL; PRAGMA synchronous = NORMAL; PRAGMA mmap_size = 4294967296");
            if (opened.Number(null, "PRAGMA user_version") != Form)
            {
                opened.Execute(null, "DROP TABLE IF EXISTS covered; DROP TABLE IF EXISTS piece; " + Tables + $"PRAGMA user_version = {Form}");
            }

            return new(opened);
        }
        catch
        {
            opened.Dispose();
            throw;
        }
    }

    public void Dispose() => copy.Dispose();

    /// <summary>Holds the copy as it is now, whatever others add, until that is disposed of.</summary>
    /// <param name="network">The network.</param>
    /// <param name="covered">The ingest number up to which the copy goes.</param>
    internal IDisposable Hold(long network, out long covered)
    {
        SqliteTransaction held = copy.BeginTransaction(deferred: true);
        covered = copy.Number(held, "SELECT last_ingest FROM covered WHERE network = @network", ("@network", network));
        return held;
    }

    /// <summary>Brings the copy up to the store, but for a last part that is not worth a piece.</summary>
    internal void Refresh(SqliteConnection store, long network)
    {
        long last = store.Number(null, "SELECT last_ingest FROM network WHERE network = @network", ("@network", network));
        while (true)
        {
            using SqliteTransaction transaction = copy.BeginTransaction(deferred: false);
            long covered = Covered(store, transaction, network);
            if (last - covered < ChunkRows / 4)
            {
                transaction.Commit();
                return;
            }

            bool added = Append(store, transaction, network, covered);
            transaction.Commit();
            if (!added)
            {
                // What is not covered was compacted meanwhile.
                return;
            }
        }
    }

    /// <summary>Hands on every reception of the copy in a time that a station made or heard, a piece after another.</summary>
    /// <param name="network">The network.</param>
    /// <param name="own">For each number of a station, whether it is one of those.</param>
    /// <param name="from">Begin of the time.</param>
    /// <param name="to">Its end, not counted.</param>
    /// <param name="row">Takes a reception.</param>
    /// <param name="pieceEnded">Told after each piece which time all further pieces begin at or after.</param>
    internal void Read(long network, bool[] own, long from, long to, Action<ColumnRow> row, Action<long> pieceEnded)
    {
        const string which = " FROM piece WHERE network = ?1 AND last >= ?2 AND first < ?3 ORDER BY piece";
        List<long> firsts = [];
        using (SqliteStatement times = Asked("SELECT first" + which, network, from, to))
        {
            while (times.Next())
            {
                firsts.Add(times.Whole(0));
            }
        }

        for (int place = firsts.Count - 2; place >= 0; place--)
        {
            firsts[place] = Math.Min(firsts[place], firsts[place + 1]);
        }

        int done = 0;
        using SqliteStatement pieces = Asked("SELECT receiver, senders, rest" + which, network, from, to);
        while (pieces.Next())
        {
            Take((int)pieces.Whole(0), pieces, own, from, to, row);
            done++;
            pieceEnded(done < firsts.Count ? firsts[done] : long.MaxValue);
        }
    }

    private SqliteStatement Asked(string sql, long network, long from, long to)
    {
        SqliteStatement statement = new(copy, sql);
        statement.Set(1, network);
        statement.Set(2, from);
        statement.Set(3, to);
        return statement;
    }

    private static void Take(int receiver, SqliteStatement pieces, bool[] own, long from, long to, Action<ColumnRow> take)
    {
        ReadOnlySpan<int> senders = MemoryMarshal.Cast<byte, int>(pieces.Bytes(1));
        bool isOwn = own[receiver];
        if (!isOwn && !HasAny(senders, own))
        {
            return;
        }

        ColumnPiece.Kept piece = new(receiver, senders, pieces.Bytes(2));
        for (int row = 0; row < senders.Length; row++)
        {
            if ((isOwn || own[senders[row]]) && piece.TimeMicroseconds(row) is long time && time >= from && time < to)
            {
                take(piece.Row(row));
            }
        }
    }

    private static bool HasAny(ReadOnlySpan<int> senders, bool[] own)
    {
        for (int station = 1; station < own.Length; station++)
        {
            if (own[station] && senders.Contains(station))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Up to which ingest number the copy goes; 0, with all of it dropped, where it is stale.</summary>
    private long Covered(SqliteConnection store, SqliteTransaction transaction, long network)
    {
        List<(long Last, long First, long Early, string Marks)> known = copy.Rows(
            transaction,
            row => (row.GetInt64(0), row.GetInt64(1), row.GetInt64(2), row.GetString(3)),
            "SELECT last_ingest, first_ingest, early_ingest, marks FROM covered WHERE network = @network",
            ("@network", network));
        if (known is [var one] && Marks(store, network, one.Last, one.First, one.Early) == one.Marks)
        {
            return one.Last;
        }

        copy.Execute(transaction, "DELETE FROM piece WHERE network = @network; DELETE FROM covered WHERE network = @network", ("@network", network));
        return 0;
    }

    /// <summary>What some records say, as text.</summary>
    private static string Marks(SqliteConnection store, long network, params ReadOnlySpan<long> ingests)
    {
        List<string> marks = [];
        foreach (long ingest in ingests)
        {
            marks.AddRange(store.Rows(
                row => string.Join(' ', Enumerable.Range(0, row.FieldCount).Select(column => Convert.ToString(row.GetValue(column), CultureInfo.InvariantCulture))),
                $"SELECT {ColumnRow.Fields} FROM reception WHERE network = @network AND ingest = @ingest",
                ("@network", network),
                ("@ingest", ingest)));
        }

        return string.Join('\n', marks);
    }

    private bool Append(SqliteConnection store, SqliteTransaction transaction, long network, long covered)
    {
        Dictionary<int, ColumnPiece> pieces = [];
        long first = 0;
        long last = 0;
        (long Step, long Hash, long Ingest) early = (long.MaxValue, long.MaxValue, 0);
        using (SqliteStatement rows = new(store, $"SELECT {ColumnRow.Fields} FROM reception WHERE network = ?1 AND ingest > ?2 ORDER BY ingest LIMIT {ChunkRows}"))
        {
            rows.Set(1, network);
            rows.Set(2, covered);
            while (rows.Next())
            {
                ColumnRow row = ColumnRow.Of(rows);
                last = rows.Whole(10);
                first = first == 0 ? last : first;
                (long Step, long Hash, long Ingest) here = (rows.Whole(12), rows.Whole(11), last);
                early = here.CompareTo(early) < 0 ? here : early;
                if (!pieces.TryGetValue(row.Receiver, out ColumnPiece? piece))
                {
                    pieces.Add(row.Receiver, piece = new());
                }

                piece.Add(row);
            }
        }

        if (first == 0)
        {
            return false;
        }

        using SqliteStatement add = new(copy, "INSERT INTO piece (network, receiver, first, last, senders, rest) VALUES (?1, ?2, ?3, ?4, ?5, ?6)");
        foreach ((int receiver, ColumnPiece piece) in pieces)
        {
            add.Set(1, network);
            add.Set(2, receiver);
            add.Set(3, piece.FirstMicroseconds);
            add.Set(4, piece.LastMicroseconds);
            add.Set(5, piece.Senders());
            add.Set(6, piece.Rest());
            add.Run();
        }

        Mark(store, transaction, network, first, last, early);
        return true;
    }

    /// <summary>Notes how far the copy goes, and by which records it is known to be of this store.</summary>
    private void Mark(SqliteConnection store, SqliteTransaction transaction, long network, long first, long last, (long Step, long Hash, long Ingest) early)
    {
        List<(long First, long Early)> before = copy.Rows(
            transaction, row => (row.GetInt64(0), row.GetInt64(1)), "SELECT first_ingest, early_ingest FROM covered WHERE network = @network", ("@network", network));
        long earliest = early.Ingest;
        if (before is [var known])
        {
            first = known.First;
            List<(long Step, long Hash, long Ingest)> there = store.Rows(
                row => (row.GetInt64(0), row.GetInt64(1), row.GetInt64(2)),
                "SELECT step_microseconds, hash, ingest FROM reception WHERE network = @network AND ingest = @ingest",
                ("@network", network),
                ("@ingest", known.Early));
            earliest = there is [var old] && old.CompareTo(early) < 0 ? old.Ingest : earliest;
        }

        copy.Execute(
            transaction,
            "INSERT OR REPLACE INTO covered (network, last_ingest, first_ingest, early_ingest, marks) VALUES (@network, @last, @first, @early, @marks)",
            ("@network", network),
            ("@last", last),
            ("@first", first),
            ("@early", earliest),
            ("@marks", Marks(store, network, last, first, earliest)));
    }
}
