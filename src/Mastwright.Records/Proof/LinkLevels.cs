using Mastwright.Plans;
using Mastwright.Records.Store;

namespace Mastwright.Records.Proof;

/// <summary>What was heard of one station by another, directly and with a level.</summary>
/// <param name="Receiver">Key of who heard.</param>
/// <param name="Sender">Key of who was heard.</param>
/// <param name="Packets">How many receptions.</param>
/// <param name="MedianDbm">Their median signal power in dBm: half of the losses at the weak end do not move it.</param>
public sealed record LinkLevel(string Receiver, string Sender, int Packets, double MedianDbm)
{
    /// <summary>Every link between two stations of a plan of which a store has levels.</summary>
    /// <param name="store">The store.</param>
    /// <param name="network">The network in it.</param>
    /// <param name="plan">The plan, which knows the stations' addresses.</param>
    /// <param name="fromMicroseconds">Begin, UTC.</param>
    /// <param name="toMicroseconds">End, not counted.</param>
    /// <returns>The links by receiver, then sender.</returns>
    /// <exception cref="RecordStoreException">The store cannot be read.</exception>
    public static IReadOnlyList<LinkLevel> Read(RecordStore store, string network, Plan plan, long fromMicroseconds, long toMicroseconds)
    {
        ArgumentNullException.ThrowIfNull(store);
        ArgumentNullException.ThrowIfNull(plan);
        StationNames names = new(plan);
        HashSet<string> addresses = [.. plan.Sites.Select(site => site.Key).Concat(plan.Neighbours.Select(one => one.Key)).SelectMany(names.AddressesOf)];
        Dictionary<(string Receiver, string Sender), List<float>> levels = [];
        store.ReadPeriod(network, addresses, fromMicroseconds, toMicroseconds, (in PeriodRow row) =>
        {
            if (double.IsFinite(row.SignalPowerDbm) && row.LastSender is { } from
                && names.KeyOf(from, row.TimeMicroseconds) is { } sender && names.KeyOf(row.Receiver, row.TimeMicroseconds) is { } receiver && sender != receiver)
            {
                if (!levels.TryGetValue((receiver, sender), out List<float>? known))
                {
                    levels.Add((receiver, sender), known = []);
                }

                known.Add((float)row.SignalPowerDbm);
            }
        });
        return
        [
            .. levels.Select(pair => new LinkLevel(pair.Key.Receiver, pair.Key.Sender, pair.Value.Count, Middle(pair.Value)))
                .OrderBy(link => link.Receiver, StringComparer.Ordinal).ThenBy(link => link.Sender, StringComparer.Ordinal),
        ];
    }

    private static double Middle(List<float> values)
    {
        values.Sort();
        int half = values.Count / 2;
        return values.Count % 2 == 1 ? values[half] : ((double)values[half - 1] + values[half]) / 2;
    }
}
