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
    private readonly (int East, int North)[] cells;
    private readonly SweepBatch batch;
    private readonly Action<SweepBatch>? solve;

    internal SweepWorker(int bits, SweepRaster raster, SweepTerms terms, SweepWedges wedges, SweepResult result, double[]? exact)
    {
        this.raster = raster;
        this.terms = terms;
        this.wedges = wedges;
        this.result = result;
        this.exact = exact;
        nearest = NearCells.LimitMetres(raster);
        radial = new(raster, in terms);
        cells = new (int, int)[wedges.MostCells];
        batch = new(in terms, raster.HasZones);
        solve = SweepSolver.Of(bits, in terms, raster.HasZones);
    }

    internal void Run(int number)
    {
        int count = wedges.Cells(number, cells);
        if (count == 0 || Length(cells[count - 1]) < nearest)
        {
            return;
        }

        double step = raster.CellMetres;
        (double alongEast, double alongNorth) = wedges.Direction(number);
        int last = AreaSweep.LastPoint(Length(cells[count - 1]), step);
        radial.Start(alongEast, -alongNorth, double.IsNaN(terms.StationGround) ? 0 : last);
        int known = double.IsNaN(terms.StationGround) ? 0 : radial.Known;
        foreach ((int east, int north) in cells.AsSpan(0, count))
        {
            double length = Length((east, north));
            if (length >= nearest)
            {
                Cell(east, north, length, known);
            }
        }
    }

    private void Cell(int east, int north, double length, int known)
    {
        int index = raster.Layout.At(east, north);
        Zone zone = raster.ZoneOf(index);
        SweepMarks marks = zone == Zone.Sea ? SweepMarks.Sea : SweepMarks.None;
        int points = AreaSweep.LastPoint(length, raster.CellMetres);
        double ground = raster.HeightOf(index);
        if (points >= known || double.IsNaN(ground) || !OwnPoints.TryRead(raster, terms.HasCover, east, north, length, out OwnPoints own))
        {
            AreaSweep.StoreMissing(result, index, marks);
            return;
        }

        radial.WalkTo(points);
        SweepCell cell = new()
        {
            Length = length,
            Zone = zone,
            Latitude = terms.PathCentreLatitude(east * raster.CellMetres, north * raster.CellMetres),
        };
        radial.Ask(ref cell, ground, in own);
        marks |= cell.IsLineOfSight ? SweepMarks.LineOfSight : SweepMarks.None;
        if (solve is null)
        {
            double loss = SweepClosedForm.LossDb(in cell, in terms, out double elevation);
            AreaSweep.Store(result, index, loss, elevation, marks, exact);
            return;
        }

        batch.Add(in cell, index, marks);
        if (batch.IsFull)
        {
            Flush();
        }
    }

    /// <summary>Solves and writes the cells that wait for it.</summary>
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
