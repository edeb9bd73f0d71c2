using System.Collections.Immutable;
using CsCheck;
using Mastwright.Network.Graph;

namespace Mastwright.Tests.Network.Graph;

public sealed class ProbableRoutesTests
{
    private static readonly Gen<(int From, int To, double Probability)[]> Ways =
        Gen.Select(Gen.Int[0, 5], Gen.Int[0, 5], Gen.Double[0.01, 1]).Array[0, 16].Select(ways => ways.Where(way => way.Item1 != way.Item2).ToArray());

    [Fact]
    public void Two_good_hops_are_better_than_one_poor_one_if_they_are_allowed()
    {
        (int, int, double)[] ways = [(0, 1, 0.9), (1, 2, 0.9), (0, 2, 0.5)];
        StationRoute two = ProbableRoutes.From(3, ways, 0, 2)[2]!;
        Assert.Equal([0, 1, 2], two.Stations);
        Assert.Equal(0.81, two.Probability, 1e-12);
        StationRoute one = ProbableRoutes.From(3, ways, 0, 1)[2]!;
        Assert.Equal([0, 2], one.Stations);
        Assert.Equal(0.5, one.Probability, 1e-12);
        Assert.Null(ProbableRoutes.From(3, ways, 2, 2)[0]);
        Assert.Equal([0], ProbableRoutes.From(3, ways, 0, 2)[0]!.Stations);
    }

    [Fact]
    public void Each_is_the_best_of_all_ways_there_are() => Gen.Select(Ways, Gen.Int[1, 5]).Sample((ways, limit) =>
    {
        ImmutableArray<StationRoute?> routes = ProbableRoutes.From(6, ways, 0, limit);
        return Enumerable.Range(1, 5).All(station => Math.Abs((routes[station]?.Probability ?? 0) - Best(ways, 0, station, limit, 1)) < 1e-12
            && (routes[station] is null || (routes[station]!.Hops <= limit && routes[station]!.Stations[0] == 0 && routes[station]!.Stations[^1] == station)));
    });

    [Fact]
    public void A_stronger_link_never_worsens_a_best_route() => Gen.Select(Ways, Gen.Int[0, 15], Gen.Double[0, 1], Gen.Int[1, 5]).Sample((ways, which, share, limit) =>
    {
        if (which >= ways.Length)
        {
            return true;
        }

        (int From, int To, double Probability)[] stronger = [.. ways];
        stronger[which].Probability += share * (1 - stronger[which].Probability);
        ImmutableArray<StationRoute?> before = ProbableRoutes.From(6, ways, 0, limit);
        ImmutableArray<StationRoute?> after = ProbableRoutes.From(6, stronger, 0, limit);
        return before.Zip(after).All(pair => (pair.Second?.Probability ?? 0) >= (pair.First?.Probability ?? 0));
    });

    /// <summary>Every way tried, one station after another.</summary>
    private static double Best((int From, int To, double Probability)[] ways, int at, int to, int left, double product) => at == to
        ? product
        : left == 0 ? 0 : ways.Where(way => way.From == at).Select(way => Best(ways, way.To, to, left - 1, product * way.Probability)).DefaultIfEmpty(0).Max();
}
