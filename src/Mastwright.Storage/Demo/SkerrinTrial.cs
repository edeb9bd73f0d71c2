using Mastwright.Evidence;
using Mastwright.Evidence.Proof;

namespace Mastwright.Storage.Demo;

/// <summary>The proof over invented records whose truth is known: how often its intervals hold that is what they are worth.</summary>
/// <param name="Result">The proof.</param>
/// <param name="Stations">The stations by their place.</param>
/// <param name="TrueShiftDb">The true shift of each station heard directly in both periods.</param>
internal sealed record SkerrinTrial(ProofResult Result, IReadOnlyList<string> Stations, IReadOnlyDictionary<string, double> TrueShiftDb)
{
    internal StationProof Of(string station) => Result.Stations.Single(one => Stations[one.Station] == station);

    /// <summary>The truth of the shift over all stations: theirs, by the weights that the proof gave them; null without such a shift.</summary>
    internal double? TrueCombinedDb => Result.Combined?.Weights.Sum(weight => weight.Value * TrueShiftDb[Stations[weight.Key]]);

    /// <summary>Whether the interval over all stations holds the truth.</summary>
    internal bool HoldsCombined => TrueCombinedDb is { } truth && Result.Combined!.Estimate.Interval!.Value.Holds(truth);

    /// <summary>Makes the records of a seed and proves them.</summary>
    internal static SkerrinTrial Run(ulong seed, bool isChanged = true)
    {
        SkerrinRecords records = new(seed, isChanged);
        ProofFold before = new(new(SkerrinRecords.Start, SkerrinRecords.Change));
        ProofFold after = new(new(SkerrinRecords.Change, SkerrinRecords.End));
        List<string> stations = [];
        Dictionary<string, int> places = [];
        int Place(string address)
        {
            if (!places.TryGetValue(address, out int place))
            {
                places.Add(address, place = stations.Count);
                stations.Add(address);
            }

            return place;
        }

        foreach (ReceptionRecord record in records.All())
        {
            HeardPacket packet = HeardPacket.Of(record, Place);
            before.Add(packet);
            after.Add(packet);
        }

        return new(
            ProofExamination.Run(before, after, new() { LimitSnrDb = factor => factor == 10 ? SkerrinRecords.LimitSnrDb : null, Seed = seed + 1 }),
            stations,
            records.TrueShiftDb);
    }
}
