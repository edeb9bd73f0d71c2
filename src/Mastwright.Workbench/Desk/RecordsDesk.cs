using System.Collections.Immutable;
using Mastwright.Evidence;
using Mastwright.Records.Store;
using Mastwright.Workbench.Hosting;

namespace Mastwright.Workbench.Desk;

/// <summary>The store of records beside the plan. Opened for each question and closed after it: others read and write it at the same time.</summary>
internal sealed class RecordsDesk(WorkbenchOptions options, PlanDesk desk)
{
    private Counted? last;

    /// <summary>The store that a plan has when none is named: a file beside it.</summary>
    internal const string UsualName = "records.sqlite";

    /// <summary>Where the store is: its file, or "Host=…".</summary>
    internal string Place => options.RecordsPlace ?? Path.Combine(Path.GetDirectoryName(desk.FilePath) ?? "", UsualName);

    /// <summary>What a page may say of the place: a connection's secrets are not for showing.</summary>
    internal string ShownPlace => PostgresRecordStore.IsPlace(Place) ? "the database" : Path.GetFileName(Place);

    /// <summary>Whether there is one.</summary>
    internal bool IsThere => PostgresRecordStore.IsPlace(Place) || File.Exists(Place);

    /// <summary>Opens it, made when it is not there.</summary>
    /// <exception cref="RecordStoreException">It cannot be used.</exception>
    internal RecordStore Open() => RecordStore.At(Place);

    /// <summary>What is in it; null where there is none, or nothing in it. A file that has not changed since is not counted again.</summary>
    /// <param name="asked">The network that is meant; null for the first.</param>
    /// <exception cref="RecordStoreException">It cannot be read.</exception>
    internal RecordsOverview? Overview(string? asked)
    {
        if (!IsThere)
        {
            return null;
        }

        // Taken before it is read: what is written meanwhile shows at the next look.
        string? stamp = Stamp(asked);
        if (stamp is not null && last is { } kept && kept.Stamp == stamp)
        {
            return kept.Overview;
        }

        using RecordStore store = Open();
        IReadOnlyList<string> networks = store.Networks();
        RecordsOverview? overview = networks.Count == 0 ? null : new([.. networks], asked is not null && networks.Contains(asked) ? asked : networks[0], store);
        if (stamp is not null)
        {
            last = new(stamp, overview);
        }

        return overview;
    }

    /// <summary>Size and time of the store's file and of the log that SQLite writes ahead of it; null for a database.</summary>
    private string? Stamp(string? asked)
    {
        if (PostgresRecordStore.IsPlace(Place))
        {
            return null;
        }

        return string.Join('\n', new[] { Place, Place + "-wal" }.Select(path => new FileInfo(path)).Select(file => file.Exists ? FormattableString.Invariant($"{file.FullName} {file.Length} {file.LastWriteTimeUtc.Ticks}") : "").Append(asked ?? ""));
    }

    /// <summary>The network that new records and entries go to where nobody names one.</summary>
    internal string UsualNetwork(RecordStore store) => store.Networks() is [var first, ..] ? first : desk.Current.Session?.Plan.Name ?? "network";

    /// <summary>What was counted, and of which state of the file.</summary>
    private sealed record Counted(string Stamp, RecordsOverview? Overview);
}

/// <summary>What a store holds of one network.</summary>
internal sealed record RecordsOverview
{
    internal RecordsOverview(ImmutableArray<string> networks, string network, RecordStore store)
    {
        (Networks, Network) = (networks, network);
        Days = [.. store.CountByDay(network)];
        Log = store.ReadLog(network);
        Count = Days.Sum(day => day.Records);
    }

    internal ImmutableArray<string> Networks { get; }

    internal string Network { get; }

    /// <summary>Receptions by day and receiver.</summary>
    internal ImmutableArray<DayCount> Days { get; }

    internal LogEntries Log { get; }

    internal long Count { get; }
}
