using System.Collections.Immutable;
using System.Globalization;

namespace Mastwright.Network.Reach;

/// <summary>One class of margins, and how much of a field lies in it.</summary>
/// <param name="FromDb">Least margin in dB; minus infinity for the class below the limit.</param>
/// <param name="ToDb">Margin in dB at which the next class begins; infinity for the last.</param>
/// <param name="Cells">Number of cells.</param>
/// <param name="AreaSquareMetres">Their area in square metres.</param>
/// <param name="MeanWorks">Mean confidence over them that the link works, 0 to 1; 0 when there is no cell.</param>
public sealed record ReachClass(double FromDb, double ToDb, int Cells, double AreaSquareMetres, double MeanWorks)
{
    /// <summary>The margins and the area, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{FromDb:0.#} to {ToDb:0.#} dB: {AreaSquareMetres / 1e6:0.00} km²");
}

/// <summary>Sorts a field by margin.</summary>
public static class ReachClasses
{
    private const int CellsAPart = 1 << 16;

    /// <summary>The margins at which classes begin: 0 dB, the wanted margin, and 10 and 20 dB more than wanted.</summary>
    /// <param name="wantedDb">The wanted margin in dB, zero or more.</param>
    public static ImmutableArray<double> Edges(double wantedDb) => [.. new SortedSet<double> { 0, wantedDb, wantedDb + 10, wantedDb + 20 }];

    /// <summary>The classes, the one below 0 dB first; every cell with a margin is in just one.</summary>
    public static ImmutableArray<ReachClass> Of(ReachMap map, ReachDirection direction)
    {
        ArgumentNullException.ThrowIfNull(map);
        ImmutableArray<double> edges = Edges(map.Budget.Wanted.MarginDb);
        int[] cells = new int[edges.Length + 1];
        double[] works = new double[cells.Length];

        // A part at a time and in their order: the same sums whatever the number of threads.
        (int[] Cells, double[] Works)[] parts = new (int[], double[])[(map.LevelDbm.Length + CellsAPart - 1) / CellsAPart];
        Parallel.For(0, parts.Length, part => parts[part] = Count(map, direction, edges, part * CellsAPart));
        foreach ((int[] partCells, double[] partWorks) in parts)
        {
            for (int i = 0; i < cells.Length; i++)
            {
                cells[i] += partCells[i];
                works[i] += partWorks[i];
            }
        }

        return
        [
            .. cells.Select((count, i) => new ReachClass(
                i == 0 ? double.NegativeInfinity : edges[i - 1],
                i == edges.Length ? double.PositiveInfinity : edges[i],
                count,
                count * map.Field.CellAreaSquareMetres,
                count == 0 ? 0 : works[i] / count)),
        ];
    }

    /// <summary>Which class a margin lies in: 0 below the first edge.</summary>
    public static int IndexOf(ImmutableArray<double> edges, double marginDb)
    {
        int index = 0;
        while (index < edges.Length && marginDb >= edges[index])
        {
            index++;
        }

        return index;
    }

    private static (int[] Cells, double[] Works) Count(ReachMap map, ReachDirection direction, ImmutableArray<double> edges, int first)
    {
        int[] cells = new int[edges.Length + 1];
        double[] works = new double[cells.Length];
        OddsTable odds = map.OddsOf(direction);
        double shift = map.Budget.LocationShiftDb;
        int end = Math.Min(first + CellsAPart, map.LevelDbm.Length);
        for (int i = first; i < end; i++)
        {
            double margin = map.MarginDb(i, direction);
            if (!double.IsNaN(margin))
            {
                int index = IndexOf(edges, margin);
                cells[index]++;
                works[index] += odds.WorksAt(margin + shift);
            }
        }

        return (cells, works);
    }
}
