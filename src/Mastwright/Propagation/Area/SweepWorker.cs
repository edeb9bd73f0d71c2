using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Mastwright.Ground;

namespace Mastwright.Propagation.Area;

/// <summary>Walks radials for one thread and writes their cells into the map.</summary>
internal sealed class SweepWorker
{
    private readonly SweepRaster raster;
    private readonly SweepTerms terms;
    private readonly SweepWedges wedges;
    private readonly SweepResult result;
    private readonly double[]? exact;
    private readonly double nearest;
    private readonly SweepRadial radial;
    private readonly SweepGroup group;
    private readonly (int East, int North)[] cells;
    private readonly SweepBatch batch;
    private readonly Action<SweepBatch>? solve;

    internal SweepWorker(int bits, SweepRaster raster, SweepTerms terms, SweepWedges wedges, SweepResult result, double[]? exact, double leastMetres = 0)
    {
        this.raster = raster;
        this.terms = terms;
        this.wedges = wedges;
        this.result = result;
        this.exact = exact;
        nearest = Math.Max(NearCells.LimitMetres(raster), leastMetres);
        radial = new(raster, in terms);
        group = new(raster, in terms);
        cells = new (int, int)[wedges.MostCells];
        batch = new(in terms, raster.HasZones);
        solve = SweepSolver.Of(bits, in terms, raster.HasZones);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal void Run(int number, double mostMetres = double.PositiveInfinity)
    {
        int count = wedges.Cells(number, cells);
        while (count > 0 && Length(cells[count - 1]) > mostMetres)
        {
            count--;
        }

        int first = 0;
        while (first < count && Length(cells[first]) < nearest)
        {
            first++;
        }

        if (first == count)
        {
            return;
        }

        (double alongEast, double alongNorth) = wedges.Direction(number);
        int last = OwnPoints.LastOnRadial(Length(cells[count - 1]), raster.CellMetres);
        radial.Start(alongEast, -alongNorth, double.IsNaN(terms.StationGround) ? 0 : last);
        if (radial.Known < 2 || double.IsNaN(terms.StationGround))
        {
            foreach ((int east, int north) in cells.AsSpan(first, count - first))
            {
                int index = raster.Layout.At(east, north);
                AreaSweep.StoreMissing(result, index, raster.ZoneOf(index) == Zone.Sea ? SweepMarks.Sea : SweepMarks.None);
            }

            return;
        }

        group.Aim(alongEast, alongNorth);
        for (int n = first; n < count; n += EightLanes.Count)
        {
            group.Ask(radial, cells.AsSpan(n, Math.Min(EightLanes.Count, count - n)));
            if (solve is null)
            {
                Solve();
                continue;
            }

            batch.Add(group);
            if (batch.IsFull)
            {
                Flush();
            }
        }
    }

    /// <summary>Solves the cells of a group one by one in double precision.</summary>
    private void Solve()
    {
        ulong inSight = group.IsLineOfSight.ExtractMostSignificantBits();
        for (int lane = 0; lane < group.Count; lane++)
        {
            if (group.IsMissing(lane))
            {
                AreaSweep.StoreMissing(result, group.IndexOf(lane), group.MarksOf(lane, 0));
                continue;
            }

            SweepCell cell = group.CellOf(lane);
            double loss = SweepClosedForm.LossDb(in cell, in terms, out double elevation);
            AreaSweep.Store(result, group.IndexOf(lane), loss, elevation, group.MarksOf(lane, inSight), exact);
        }
    }

    /// <summary>Solves and writes the cells that wait for it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal void Flush()
    {
        if (batch.Count > 0)
        {
            solve!(batch);
            batch.Write(result);
        }
    }

    private double Length((int East, int North) cell) =>
        Math.Sqrt(((double)cell.East * cell.East) + ((double)cell.North * cell.North)) * raster.CellMetres;
}
