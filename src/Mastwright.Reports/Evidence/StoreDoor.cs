using Mastwright.Records.Store;

namespace Mastwright.Reports.Evidence;

/// <summary>Opens stores of records, and finds the network that is meant.</summary>
internal static class StoreDoor
{
    /// <summary>Opens a store that is there; told, with null, where it is not.</summary>
    /// <param name="place">Its file, or "Host=…" for a database.</param>
    /// <param name="tell">Told what is wrong.</param>
    /// <exception cref="RecordStoreException">It cannot be used.</exception>
    internal static RecordStore? There(string place, Action<string> tell)
    {
        if (!PostgresRecordStore.IsPlace(place) && !File.Exists(place))
        {
            tell($"{place}: there is no such store; 'records import' and 'log add' make one");
            return null;
        }

        return RecordStore.At(place);
    }

    /// <summary>The network that is meant; told, with null, where the store has several or none.</summary>
    /// <param name="store">The store.</param>
    /// <param name="asked">The network that was asked for; null for the only one.</param>
    /// <param name="tell">Told what is wrong.</param>
    /// <param name="whereNone">The name that a store without any network takes; null where that is wrong.</param>
    internal static string? NetworkOf(RecordStore store, string? asked, Action<string> tell, string? whereNone = null)
    {
        IReadOnlyList<string> networks = store.Networks();
        if (asked is { Length: > 0 } || (networks.Count == 0 && (asked = whereNone) is not null))
        {
            return asked;
        }

        if (networks.Count == 1)
        {
            return networks[0];
        }

        tell(networks.Count == 0
            ? $"{store.Place}: holds no network"
            : $"{store.Place}: holds several networks; say which with --network: {string.Join(", ", networks)}");
        return null;
    }
}
