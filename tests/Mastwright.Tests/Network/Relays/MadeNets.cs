using CsCheck;
using Mastwright.Network.Relays;

namespace Mastwright.Tests.Network.Relays;

/// <summary>A small net drawn at random, with what each candidate covers of eight items of different weight.</summary>
internal sealed record MadeNet(
    int Stations, int Candidates, (int One, int Other)[] Between, (int Candidate, int Station)[] Own, (int One, int Other)[] Chain, bool Through, int[] Items)
{
    internal static readonly double[] Weights = [5, 3, 2, 7, 1, 1, 4, 6];

    internal static Gen<MadeNet> Any { get; } =
        Gen.Select(Gen.Int[1, 6], Gen.Int[1, 8], Gen.Bool, Gen.Int[0, 255].Array[8]).SelectMany((stations, candidates, through, items) => Gen.Select(
            Gen.Select(Gen.Int[0, stations - 1], Gen.Int[0, stations - 1]).Array[0, 6],
            Gen.Select(Gen.Int[0, candidates - 1], Gen.Int[0, stations - 1]).Array[0, 10],
            Gen.Select(Gen.Int[0, candidates - 1], Gen.Int[0, candidates - 1]).Array[0, 8]).Select((between, own, chain) => new MadeNet(
                stations, candidates, between, own, through ? [.. chain.Where(link => link.Item1 != link.Item2)] : [], through, items)));

    internal RelayNet Net => new(Stations, Candidates, 0, Between, Own, Chain, Through);

    internal CoverageObjective Coverage => new(Net, [.. Items.Take(Candidates).Select(item => new[] { (ulong)item })], Weights);

    internal RobustObjective Robust => new(Net, Between);

    /// <summary>All choices of exactly so many of some numbers, by counting in binary.</summary>
    internal static IEnumerable<int[]> Choices(int count, int relays) =>
        Enumerable.Range(0, 1 << count).Select(bits => Enumerable.Range(0, count).Where(one => (bits >> one & 1) != 0).ToArray()).Where(choice => choice.Length <= relays);

    /// <summary>Who is joined, by passing it on until nothing changes.</summary>
    internal (HashSet<int> Stations, HashSet<int> Relays) Joined(int[] chosen, int without = -1)
    {
        HashSet<int> stations = Closure([0], without);
        HashSet<int> network = [.. stations];
        HashSet<int> relays = [];
        for (bool changed = true; changed;)
        {
            changed = false;
            foreach (int relay in chosen.Where(one => !relays.Contains(one) && one + Stations != without))
            {
                bool hangs = Own.Any(link => link.Candidate == relay && (Through ? stations : network).Contains(link.Station))
                    || (Through && Chain.Any(link => (link.One == relay && relays.Contains(link.Other)) || (link.Other == relay && relays.Contains(link.One))));
                if (hangs)
                {
                    relays.Add(relay);
                    stations = Closure([.. stations, .. Own.Where(link => link.Candidate == relay).Select(link => link.Station)], without);
                    changed = true;
                }
            }
        }

        return (stations, relays);
    }

    internal double CoverageOf(int[] chosen)
    {
        int union = Joined(chosen).Relays.Aggregate(0, (sum, relay) => sum | Items[relay]);
        return Enumerable.Range(0, 8).Where(item => (union >> item & 1) != 0).Sum(item => Weights[item]);
    }

    private HashSet<int> Closure(HashSet<int> from, int without)
    {
        HashSet<int> all = [.. from.Where(one => one != without)];
        for (int before = -1; before != all.Count;)
        {
            before = all.Count;
            foreach ((int one, int other) in Between.Where(link => link.One != without && link.Other != without))
            {
                if (all.Contains(one) || all.Contains(other))
                {
                    all.Add(one);
                    all.Add(other);
                }
            }
        }

        return all;
    }
}
