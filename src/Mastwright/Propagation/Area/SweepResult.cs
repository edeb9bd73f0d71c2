namespace Mastwright.Propagation.Area;

/// <summary>The map that a sweep fills: one value for each cell of its raster, row by row from the north-west.</summary>
/// <remarks>May be given to <see cref="AreaSweep.Run"/> again for another sweep of the same size, which overwrites it.</remarks>
public sealed class SweepResult
{
    /// <summary>Stands in <see cref="LossDb"/> where there is no loss: so large that nothing is heard there.</summary>
    public const float NoLossDb = 9999;

    /// <summary>Makes room for a map.</summary>
    /// <param name="side">Columns, and rows, of the raster.</param>
    public SweepResult(int side)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(side, 5);
        Side = side;
        Losses = new float[side * side];
        Elevations = new float[Losses.Length];
        MarkBytes = new byte[Losses.Length];
    }

    /// <summary>Makes room for the cells that a layout holds, without marks.</summary>
    internal SweepResult(SweepLayout layout)
    {
        Side = layout.Side;
        Losses = new float[layout.Length];
        Elevations = new float[Losses.Length];
        MarkBytes = [];
    }

    /// <summary>Columns, and rows.</summary>
    public int Side { get; }

    /// <summary>Basic transmission loss between isotropic antennas, in dB; <see cref="NoLossDb"/> where there is none. Never NaN.</summary>
    public ReadOnlySpan<float> LossDb => Losses;

    /// <summary>
    /// Elevation at the station of the ray to each cell, in degrees: of the cell itself where the line is clear, else of the horizon
    /// in its direction. 0 where there is no loss.
    /// </summary>
    public ReadOnlySpan<float> ElevationDegrees => Elevations;

    /// <summary>Number of cells with a loss.</summary>
    public int CellsWithLoss { get; internal set; }

    internal float[] Losses { get; }

    internal float[] Elevations { get; }

    /// <summary>Empty where nobody asks.</summary>
    internal byte[] MarkBytes { get; }

    /// <summary>What is to be said about a cell.</summary>
    /// <param name="cell">Row times <see cref="Side"/> plus column.</param>
    public SweepMarks MarksOf(int cell) => (SweepMarks)MarkBytes[cell];
}
