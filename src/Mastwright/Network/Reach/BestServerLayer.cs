using System.Collections.Immutable;

namespace Mastwright.Network.Reach;

/// <summary>Best server and count of one direction.</summary>
public sealed class BestServerLayer
{
    private readonly float[] marginsDb;
    private readonly ushort[] best;
    private readonly ushort[] counts;
    private readonly int[] reached;

    internal BestServerLayer(ReachDirection direction, int cells, int stations)
    {
        Direction = direction;
        marginsDb = new float[cells];
        Array.Fill(marginsDb, float.NaN);
        best = new ushort[cells];
        counts = new ushort[cells];
        reached = new int[stations];
    }

    /// <summary>Which way the margins count.</summary>
    public ReachDirection Direction { get; }

    /// <summary>The most margin that any station has, in dB, row by row; NaN where none has one.</summary>
    public ReadOnlySpan<float> MarginsDb => marginsDb;

    /// <summary>How many stations reach each cell with 0 dB or more.</summary>
    public ReadOnlySpan<ushort> Counts => counts;

    /// <summary>The most stations that reach any one cell.</summary>
    public int MostAtOneCell => counts.Max();

    /// <summary>Number of the station with the most margin in a cell, where that is 0 dB or more; 0 where none reaches it.</summary>
    public int ServerOf(int cell) => counts[cell] > 0 ? best[cell] : 0;

    /// <summary>Numbers of the best stations, 0 where none reaches a cell.</summary>
    public ushort[] Servers()
    {
        ushort[] servers = new ushort[best.Length];
        for (int cell = 0; cell < servers.Length; cell++)
        {
            servers[cell] = (ushort)ServerOf(cell);
        }

        return servers;
    }

    /// <summary>Cells of each station: reached, best of all in, the only one to reach.</summary>
    public ImmutableArray<ServedCells> ByStation()
    {
        int[] bestIn = new int[reached.Length];
        int[] only = new int[reached.Length];
        for (int cell = 0; cell < best.Length; cell++)
        {
            if (counts[cell] > 0)
            {
                bestIn[best[cell] - 1]++;
                only[best[cell] - 1] += counts[cell] == 1 ? 1 : 0;
            }
        }

        return [.. reached.Select((cells, i) => new ServedCells(i + 1, cells, bestIn[i], only[i]))];
    }

    /// <summary>Number of cells by how many stations reach them: from none to the most that any cell has.</summary>
    /// <param name="flags">The flags of the cells: those outside every radius are left out, as are those of which nothing is known at all.</param>
    public ImmutableArray<int> CellsByCount(ReadOnlySpan<ReachFlags> flags)
    {
        int[] cells = new int[counts.Max() + 1];
        for (int cell = 0; cell < counts.Length; cell++)
        {
            bool isKnown = (flags[cell] & ReachFlags.Outside) == ReachFlags.None && !float.IsNaN(marginsDb[cell]);
            cells[counts[cell]] += isKnown ? 1 : 0;
        }

        return [.. cells];
    }

    internal void Take(int cell, int station, float marginDb)
    {
        if (float.IsNaN(marginDb))
        {
            return;
        }

        // Written so that a margin that is not there yet gives way to any.
        if (!(marginsDb[cell] > marginDb) && (marginsDb[cell] != marginDb || station < best[cell]))
        {
            marginsDb[cell] = marginDb;
            best[cell] = (ushort)station;
        }

        if (marginDb >= 0)
        {
            counts[cell]++;
            reached[station - 1]++;
        }
    }
}

/// <summary>How many cells a station serves.</summary>
/// <param name="Station">Its number, from 1.</param>
/// <param name="Reached">Cells that it reaches with 0 dB or more.</param>
/// <param name="Best">Of these, cells in which no other has more margin.</param>
/// <param name="Only">Of these, cells that no other station reaches.</param>
public readonly record struct ServedCells(int Station, int Reached, int Best, int Only);
