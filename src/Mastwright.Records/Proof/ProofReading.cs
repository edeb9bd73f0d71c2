using Mastwright.Evidence.Proof;
using Mastwright.Plans;
using Mastwright.Records.Store;

namespace Mastwright.Records.Proof;

/// <summary>Folds the records of two periods into what a proof of one station needs.</summary>
public sealed class ProofReading
{
    private readonly Dictionary<string, int> places = new(StringComparer.Ordinal);
    private readonly List<string> stations = [];
    private readonly Dictionary<string, Known> known = new(ReferenceEqualityComparer.Instance);
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
        Known sender = Of(row.LastSender, row.TimeMicroseconds);
        Known receiver = Of(row.Receiver, row.TimeMicroseconds);
        if (receiver.IsOwn && !sender.IsOwn)
        {
            heard.Add(new(
                row.TimeMicroseconds, PlaceOf(sender), PlaceOf(Of(row.Originator, row.TimeMicroseconds)), row.SignalPowerDbm, row.SnrDb, row.Hops, row.Counter, row.SpreadingFactor));
        }
        else if (sender.IsOwn && !receiver.IsOwn)
        {
            // The other way round: who hears us takes the sender's place, and our own packets count up for it.
            int other = PlaceOf(receiver);
            bool isOurs = Of(row.Originator, row.TimeMicroseconds).IsOwn;
            elsewhere.Add(new(row.TimeMicroseconds, other, isOurs ? other : -1, row.SignalPowerDbm, row.SnrDb, -1, isOurs ? row.Counter : -1, row.SpreadingFactor));
        }
    }

    /// <summary>The station of an address at a moment. A store hands on one text for each address, so that the text itself tells what it stood for last.</summary>
    private Known Of(string? address, long time)
    {
        if (address is null)
        {
            return Known.Nobody;
        }

        if (known.TryGetValue(address, out Known? last) && last.IsAlways)
        {
            return last;
        }

        string station = names.KeyOf(address, time) ?? address;
        if (last?.Station != station)
        {
            known[address] = last = new(station, station == key, names.IsAlways(address));
        }

        return last;
    }

    private int PlaceOf(Known station)
    {
        if (station.Place < 0 && station.Station.Length > 0)
        {
            if (!places.TryGetValue(station.Station, out int place))
            {
                places.Add(station.Station, place = stations.Count);
                stations.Add(station.Station);
            }

            station.Place = place;
        }

        return station.Place;
    }

    /// <summary>A station as the reading knows it: its place in the list once it has one.</summary>
    private sealed class Known(string station, bool isOwn, bool isAlways)
    {
        internal static Known Nobody { get; } = new("", false, true);

        /// <summary>Whether the address stands for this station at all times.</summary>
        internal bool IsAlways { get; } = isAlways;

        internal string Station { get; } = station;

        internal bool IsOwn { get; } = isOwn;

        internal int Place { get; set; } = -1;
    }
}
