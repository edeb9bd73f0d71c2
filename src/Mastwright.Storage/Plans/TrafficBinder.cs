using Mastwright.Station.Rules;

namespace Mastwright.Storage.Plans;

/// <summary>Binds what a station sends.</summary>
internal static class TrafficBinder
{
    /// <summary>The traffic under a key; null when the key is absent.</summary>
    internal static TrafficRate? Bind(MappingReader owner, KeyShape key)
    {
        if (owner.Find(key) is not { } node || MappingReader.Open(owner.Binding, node, owner.PathOf(key), TrafficKeys.Shape) is not { } reader)
        {
            return null;
        }

        TrafficRate rate = new()
        {
            OwnMean = reader.Number(TrafficKeys.Own),
            OwnWorst = reader.Number(TrafficKeys.OwnWorst),
            RelayedMean = reader.Number(TrafficKeys.Relayed),
            RelayedWorst = reader.Number(TrafficKeys.RelayedWorst),
        };
        bool own = Rises(reader, TrafficKeys.OwnWorst, rate.OwnMean, rate.OwnWorst);
        bool relayed = Rises(reader, TrafficKeys.RelayedWorst, rate.RelayedMean, rate.RelayedWorst);
        reader.Done();
        return own && relayed ? rate : null;
    }

    private static bool Rises(MappingReader reader, KeyShape worst, double? mean, double? most)
    {
        if (!(most < mean))
        {
            return true;
        }

        reader.Binding.Add(reader.Find(worst)!, reader.PathOf(worst), "plan-range", "The busiest hour has fewer packets than the average one.", "at least as many packets as on average");
        return false;
    }
}
