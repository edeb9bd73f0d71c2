using CsCheck;
using Mastwright.Network.Graph;
using QuikGraph;
using QuikGraph.Algorithms;
using QuikGraph.Algorithms.Observers;
using QuikGraph.Algorithms.Search;

namespace Mastwright.Tests.Network.Graph;

public sealed class StationGraphTests
{
    [Fact]
    public void The_kite_has_its_published_degrees_and_is_four_long()
    {
        StationGraph kite = MadeGraphs.Of(10, MadeGraphs.Kite);
        Assert.Equal([4, 4, 3, 6, 3, 5, 5, 3, 2, 1], Enumerable.Range(0, 10).Select(station => kite.From(station).Length));
        Assert.Equal(36, kite.ArcCount);
        Assert.Equal(4, Enumerable.Range(0, 10).Max(station => kite.FewestHops(station).Max()));
        Assert.Equal([0, 1, 1, 1, 2, 1, 2, 2, 3, 4], kite.FewestHops(0));
        Assert.Equal([0, 1, 1, 1, 2, 1, 2, 2, -1, -1], kite.FewestHops(0, 2));
    }

    [Fact]
    public void In_Petersens_graph_everybody_is_two_hops_away()
    {
        StationGraph graph = MadeGraphs.Of(10, MadeGraphs.Petersen);
        for (int station = 0; station < 10; station++)
        {
            Assert.Equal(3, graph.From(station).Length);
            Assert.Equal([0, 1, 1, 1, 2, 2, 2, 2, 2, 2], graph.FewestHops(station).Order());
        }
    }

    [Fact]
    public void Fewest_hops_are_those_of_a_graph_library() => MadeGraphs.Any.Sample(made =>
    {
        UndirectedGraph<int, UndirectedEdge<int>> oracle = Oracle(made.Count, made.Links);
        UndirectedBreadthFirstSearchAlgorithm<int, UndirectedEdge<int>> search = new(oracle);
        UndirectedVertexDistanceRecorderObserver<int, UndirectedEdge<int>> recorder = new(_ => 1);
        using (recorder.Attach(search))
        {
            recorder.Distances[0] = 0;
            search.Compute(0);
        }

        int[] hops = MadeGraphs.Of(made.Count, made.Links).FewestHops(0);
        return Enumerable.Range(0, made.Count).All(station => recorder.Distances.TryGetValue(station, out double distance) ? hops[station] == (int)distance : hops[station] == -1);
    });

    [Fact]
    public void Another_station_with_its_links_never_makes_a_way_longer() => Gen.Select(MadeGraphs.Any, Gen.Int[0, 11].Array[0, 5]).Sample((made, to) =>
    {
        int[] before = MadeGraphs.Of(made.Count, made.Links).FewestHops(0);
        int[] after = MadeGraphs.Of(made.Count + 1, [.. made.Links, .. to.Where(one => one < made.Count).Select(one => (made.Count, one))]).FewestHops(0);
        return Enumerable.Range(0, made.Count).All(station => before[station] < 0 || (after[station] >= 0 && after[station] <= before[station]));
    });

    [Fact]
    public void A_link_to_no_station_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(() => new StationGraph(2, [(0, 2)]));

    internal static UndirectedGraph<int, UndirectedEdge<int>> Oracle(int count, IEnumerable<(int One, int Other)> links)
    {
        UndirectedGraph<int, UndirectedEdge<int>> graph = new(allowParallelEdges: false);
        graph.AddVertexRange(Enumerable.Range(0, count));
        graph.AddEdgeRange(links.Select(link => new UndirectedEdge<int>(Math.Min(link.One, link.Other), Math.Max(link.One, link.Other))));
        return graph;
    }
}
