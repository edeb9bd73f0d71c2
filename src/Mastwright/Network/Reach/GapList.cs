using System.Collections.Immutable;
using Mastwright.Ground;

namespace Mastwright.Network.Reach;

/// <summary>Gathers the gaps that the paths of a row meet, by tile.</summary>
internal sealed class GapList
{
    private readonly Dictionary<(string Tile, bool IsVoid), ReachGap> byTile = [];

    internal void Add(TerrainProfile terrain)
    {
        HashSet<(string Tile, bool IsVoid)> met = [];
        foreach (GroundGap gap in terrain.Gaps)
        {
            Take(new(gap.Tile, gap.IsVoid, met.Add((gap.Tile, gap.IsVoid)) ? 1 : 0, gap.FromMetres, terrain.Segment.InitialBearingDegrees));
        }
    }

    /// <summary>The gaps of all rows, nearest first.</summary>
    internal static ImmutableArray<ReachGap> Joined(IEnumerable<GapList> rows) => Joined(rows.SelectMany(row => row.byTile.Values));

    /// <summary>The gaps of several parts of a field, each tile once, nearest first.</summary>
    internal static ImmutableArray<ReachGap> Joined(IEnumerable<ReachGap> gaps)
    {
        GapList all = new();
        foreach (ReachGap gap in gaps)
        {
            all.Take(gap);
        }

        return [.. all.byTile.Values.OrderBy(gap => gap.NearestMetres).ThenBy(gap => gap.Tile, StringComparer.Ordinal)];
    }

    private void Take(ReachGap gap)
    {
        (string, bool) key = (gap.Tile, gap.IsVoid);
        if (!byTile.TryGetValue(key, out ReachGap? before))
        {
            byTile[key] = gap;
            return;
        }

        ReachGap nearest = gap.NearestMetres < before.NearestMetres ? gap : before;
        byTile[key] = nearest with { Cells = before.Cells + gap.Cells };
    }
}
