using System.Collections.Immutable;

namespace Mastwright.Network.Reach;

/// <summary>What is counted over all cells of a map, also of one that is only ever seen in bands of rows.</summary>
/// <param name="Cells">Cells within the radius.</param>
/// <param name="ShortPathCells">Cells nearer than 0.25 km.</param>
/// <param name="MissingCells">Cells on the way to which ground is missing.</param>
/// <param name="Classes">The classes of each direction, in the order of <see cref="ReachDirection"/>.</param>
public sealed record ReachTotals(int Cells, int ShortPathCells, int MissingCells, ImmutableArray<ImmutableArray<ReachClass>> Classes)
{
    /// <summary>Counts over a map.</summary>
    public static ReachTotals Of(ReachMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        int shortPath = 0;
        int missing = 0;
        foreach (ReachFlags flag in map.Field.Flags)
        {
            shortPath += (flag & ReachFlags.ShortPath) != ReachFlags.None ? 1 : 0;
            missing += (flag & ReachFlags.GroundMissing) != ReachFlags.None ? 1 : 0;
        }

        return new(map.Field.CellCount, shortPath, missing, [.. Enum.GetValues<ReachDirection>().Select(direction => ReachClasses.Of(map, direction))]);
    }

    /// <summary>The classes of one direction, the one below 0 dB first.</summary>
    public ImmutableArray<ReachClass> ClassesOf(ReachDirection direction) => Classes[(int)direction];

    /// <summary>Both counts together: of two bands of one map.</summary>
    public ReachTotals With(ReachTotals other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new(
            Cells + other.Cells,
            ShortPathCells + other.ShortPathCells,
            MissingCells + other.MissingCells,
            [.. Classes.Zip(other.Classes, (mine, its) => ImmutableArray.CreateRange(mine.Zip(its, Sum)))]);
    }

    private static ReachClass Sum(ReachClass one, ReachClass other)
    {
        int cells = one.Cells + other.Cells;
        double works = cells == 0 ? 0 : ((one.MeanWorks * one.Cells) + (other.MeanWorks * other.Cells)) / cells;
        return one with { Cells = cells, AreaSquareMetres = one.AreaSquareMetres + other.AreaSquareMetres, MeanWorks = works };
    }
}
