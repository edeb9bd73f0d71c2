using CsCheck;
using Mastwright.Network.Graph;
using QuikGraph;
using QuikGraph.Algorithms;

namespace Mastwright.Tests.Network.Graph;

public sealed class WeakPointsTests
{
    [Fact]
    public void The_kite_hangs_on_its_string()
    {
        WeakPoints weak = WeakPoints.Of(MadeGraphs.Of(10, MadeGraphs.Kite), 3);
        Assert.Equal([(7, "8,9"), (8, "9")], weak.Stations.Select(one => (one.Station, string.Join(',', one.Lost))));
        Assert.Equal([(7, 8, 2), (8, 9, 1)], weak.Links.Select(one => (one.Near, one.Far, one.Lost.Length)));
    }

    [Fact]
    public void Petersens_graph_has_no_weak_point()
    {
        WeakPoints weak = WeakPoints.Of(MadeGraphs.Of(10, MadeGraphs.Petersen), 0);
        Assert.Empty(weak.Stations);
        Assert.Empty(weak.Links);
    }

    [Fact]
    public void A_root_between_two_parts_is_one_itself()
    {
        WeakPoints weak = WeakPoints.Of(MadeGraphs.Of(6, [(0, 1), (0, 2), (2, 3), (3, 0), (4, 5)]), 0);
        Assert.Equal([(0, "1")], weak.Stations.Select(one => (one.Station, string.Join(',', one.Lost))));
        Assert.Equal([(0, 1)], weak.Links.Select(one => (one.Near, one.Far)));
    }

    /// <summary>By definition, with a graph library counting the parts that are left.</summary>
    [Fact]
    public void What_is_lost_is_what_a_graph_library_no_longer_joins_to_the_root() => MadeGraphs.Any.Sample(made =>
    {
        WeakPoints weak = WeakPoints.Of(MadeGraphs.Of(made.Count, made.Links), 0);
        HashSet<int> whole = Part(made.Count, made.Links, -1);
        for (int station = 1; station < made.Count; station++)
        {
            int[] lost = [.. whole.Except(Part(made.Count, made.Links, station)).Where(one => one != station).Order()];
            int[] told = [.. weak.Stations.Where(one => one.Station == station).SelectMany(one => one.Lost)];
            if (whole.Contains(station) ? !lost.SequenceEqual(told) : told.Length > 0)
            {
                return false;
            }
        }

        foreach ((int one, int other) in made.Links.Select(link => (Math.Min(link.One, link.Other), Math.Max(link.One, link.Other))).Distinct())
        {
            (int One, int Other)[] without = [.. made.Links.Where(link => (Math.Min(link.One, link.Other), Math.Max(link.One, link.Other)) != (one, other))];
            int[] lost = [.. whole.Except(Part(made.Count, without, -1)).Order()];
            int[] told = [.. weak.Links.Where(link => (link.Near, link.Far) == (one, other) || (link.Far, link.Near) == (one, other)).SelectMany(link => link.Lost)];
            if (!lost.SequenceEqual(told))
            {
                return false;
            }
        }

        return true;
    });

    private static HashSet<int> Part(int count, (int One, int Other)[] links, int without)
    {
        UndirectedGraph<int, UndirectedEdge<int>> graph = StationGraphTests.Oracle(count, links);
        graph.RemoveVertex(without);
        Dictionary<int, int> parts = [];
        graph.ConnectedComponents(parts);
        return [.. parts.Where(one => one.Value == parts[0]).Select(one => one.Key)];
    }
}
