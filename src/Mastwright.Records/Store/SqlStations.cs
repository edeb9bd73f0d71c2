using System.Data.Common;

namespace Mastwright.Records.Store;

/// <summary>The numbers that stand for the addresses of stations; remembered between transactions of one network.</summary>
internal sealed class SqlStations(DbConnection connection)
{
    private readonly Dictionary<string, long> known = new(StringComparer.Ordinal);
    private long knownOf;

    /// <summary>The number of an address, given out now where it has none. The network is locked by the transaction.</summary>
    internal long Of(DbTransaction transaction, long network, string address)
    {
        if (knownOf != network)
        {
            known.Clear();
            knownOf = network;
        }

        if (known.TryGetValue(address, out long station))
        {
            return station;
        }

        connection.Execute(
            transaction,
            "INSERT INTO station (network, station, address) VALUES (@network, 1 + coalesce((SELECT max(station) FROM station WHERE network = @network), 0), @address) ON CONFLICT (network, address) DO NOTHING",
            ("@network", network),
            ("@address", address));
        station = connection.Number(transaction, "SELECT station FROM station WHERE network = @network AND address = @address", ("@network", network), ("@address", address));
        known.Add(address, station);
        return station;
    }

    /// <summary>Forgets all numbers.</summary>
    internal void Forget() => known.Clear();
}
