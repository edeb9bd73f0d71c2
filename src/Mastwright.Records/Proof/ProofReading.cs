using Mastwright.Evidence.Proof;
using Mastwright.Plans;
using Mastwright.Records.Store;

namespace Mastwright.Records.Proof;

/// <summary>Folds the records of two periods into what a proof of one station needs.</summary>
public sealed class ProofReading
{
    private readonly Dictionary<string, int> places = new(StringComparer.Ordinal);
    private readonly List<string> stations = [];
    private readonly StationNames names;
    private readonly string key;

    private ProofReading(StationNames names, string key, ProofPeriod before, ProofPeriod after)
    {
        this.names = names;
        this.key = key;
        Before = new(before);
        After = new(after);
        ElsewhereBefore = new(before);
        ElsewhereAfter = new(after);
    }

    /// <summary>The stations by their place: their key in the plan, or their address where the plan does not know it.</summary>
    public IReadOnlyList<string> Stations => stations;

    /// <summary>What the station heard before.</summary>
    public ProofFold Before { get; }

    /// <summary>What it heard after.</summary>
    public ProofFold After { get; }

    /// <summary>How others heard it before, each of them in the place of a sender.</summary>
    public ProofFold ElsewhereBefore { get; }

    /// <summary>How others heard it after.</summary>
    public ProofFold ElsewhereAfter { get; }

    /// <summary>Reads both periods.</summary>
    /// <param name="store">The store.</param>
    /// <param name="network">The network in it.</param>
    /// <param name="names">What the plan calls each address.</param>
    /// <param name="key">The station's key in the plan.</param>
    /// <param name="before">The period before.</param>
    /// <param name="after">The period after.</param>
    /// <exception cref="RecordStoreException">The store cannot be read.</exception>
    public static ProofReading Of(RecordStore store, string network, StationNames names, string key, ProofPeriod before, ProofPeriod after)
    {
        ArgumentNullException.ThrowIfNull(store);
        ArgumentNullException.ThrowIfNull(names);
        ProofReading reading = new(names, key, before, after);
        HashSet<string> own = [.. names.AddressesOf(key)];
        store.ReadPeriod(network, own, before.FromMicroseconds, before.ToMicroseconds, (in PeriodRow row) => reading.Take(row, reading.Before, reading.ElsewhereBefore));
        store.ReadPeriod(network, own, after.FromMicroseconds, after.ToMicroseconds, (in PeriodRow row) => reading.Take(row, reading.After, reading.ElsewhereAfter));
        return reading;
    }

    private void Take(in PeriodRow row, ProofFold heard, ProofFold elsewhere)
    {
        string? sender = Name(row.LastSender, row.TimeMicroseconds);
        string? originator = Name(row.Originator, row.TimeMicroseconds);
        string receiver = Name(row.Receiver, row.TimeMicroseconds)!;
        if (receiver == key && sender != key)
        {
            heard.Add(new(
                row.TimeMicroseconds, sender is null ? -1 : Place(sender), originator is null ? -1 : Place(originator), row.SignalPowerDbm, row.SnrDb, row.Hops, row.Counter, row.SpreadingFactor));
        }
        else if (sender == key && receiver != key)
        {
            // The other way round: who hears us takes the sender's place, and our own packets count up for it.
            int other = Place(receiver);
            elsewhere.Add(new(
                row.TimeMicroseconds, other, originator == key ? other : -1, row.SignalPowerDbm, row.SnrDb, -1, originator == key ? row.Counter : -1, row.SpreadingFactor));
        }
    }

    private string? Name(string? address, long time) => address is null ? null : names.KeyOf(address, time) ?? address;

    private int Place(string station)
    {
        if (!places.TryGetValue(station, out int place))
        {
            places.Add(station, place = stations.Count);
            stations.Add(station);
        }

        return place;
    }
}
