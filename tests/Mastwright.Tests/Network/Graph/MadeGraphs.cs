using CsCheck;
using Mastwright.Network.Graph;

namespace Mastwright.Tests.Network.Graph;

/// <summary>Graphs that tests look at.</summary>
internal static class MadeGraphs
{
    /// <summary>
    /// The kite of D. Krackhardt, "Assessing the political landscape: structure, cognition, and power in organizations", Administrative Science
    /// Quarterly 35 (1990) 342–369, figure 1: ten points, 18 links. The list of links is from memory; the test checks the degrees 4 4 3 6 3 5 5 3 2 1.
    /// </summary>
    internal static readonly (int One, int Other)[] Kite =
    [
        (0, 1), (0, 2), (0, 3), (0, 5), (1, 3), (1, 4), (1, 6), (2, 3), (2, 5), (3, 4), (3, 5), (3, 6), (4, 6), (5, 6), (5, 7), (6, 7), (7, 8), (8, 9),
    ];

    /// <summary>
    /// The graph of J. Petersen, "Sur le théorème de Tait", L'Intermédiaire des Mathématiciens 5 (1898) 225–227: outer ring, spokes, inner star; 10 points,
    /// 15 links, each of 3, any two points at most 2 apart, no bridge.
    /// </summary>
    internal static readonly (int One, int Other)[] Petersen =
    [
        .. Enumerable.Range(0, 5).SelectMany(i => ((int, int)[])[(i, (i + 1) % 5), (i, i + 5), (i + 5, ((i + 2) % 5) + 5)]),
    ];

    /// <summary>Any graph of 1 to 12 stations, sparse or dense.</summary>
    internal static Gen<(int Count, (int One, int Other)[] Links)> Any { get; } =
        Gen.Int[1, 12].SelectMany(count => Gen.Select(Gen.Int[0, count - 1], Gen.Int[0, count - 1]).Array[0, 24].Select(links => (count, links.Where(link => link.Item1 != link.Item2).ToArray())));

    internal static StationGraph Of(int count, IEnumerable<(int One, int Other)> links) => StationGraph.OfLinks(count, links);
}
