using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Ground;

namespace Mastwright.Network.Reach;

/// <summary>The loss to every cell around a station, and the elevation at which its path leaves the station: flat arrays of one grid.</summary>
/// <remarks>Immutable and safe from many threads. A cell without a loss is NaN in both arrays and its flags say why.</remarks>
public sealed class ReachField
{
    private readonly float[] lossDb;
    private readonly float[] elevationDegrees;
    private readonly ReachFlags[] flags;

    private ReachField(ReachFieldInput input, GridFrame frame, float[] lossDb, float[] elevationDegrees, ReachFlags[] flags, ImmutableArray<ReachGap> gaps)
    {
        Gaps = gaps;
        Input = input;
        Frame = frame;
        this.lossDb = lossDb;
        this.elevationDegrees = elevationDegrees;
        this.flags = flags;
    }

    /// <summary>What it was worked out from.</summary>
    public ReachFieldInput Input { get; }

    /// <summary>The grid, in the station's UTM zone, row 0 in the north.</summary>
    public GridFrame Frame { get; }

    /// <summary>Loss between isotropic antennas in dB, row by row; NaN where there is none.</summary>
    public ReadOnlySpan<float> LossDb => lossDb;

    /// <summary>The same losses as memory, for whoever writes them from many threads.</summary>
    public ReadOnlyMemory<float> Losses => lossDb;

    /// <summary>Elevation above the horizon at which the path leaves the station's antenna, in degrees; NaN where there is no loss.</summary>
    public ReadOnlySpan<float> StationElevationDegrees => elevationDegrees;

    /// <summary>What is to be said of each cell.</summary>
    public ReadOnlySpan<ReachFlags> Flags => flags;

    /// <summary>Ground that is missing, by tile; empty when nothing is.</summary>
    public ImmutableArray<ReachGap> Gaps { get; }

    /// <summary>Step in metres of the sweep that found the losses; null where each cell had its own path.</summary>
    public double? SweepStepMetres { get; private init; }

    /// <summary>Area of one cell in square metres, by the grid's own lengths, which depart from true ones by less than 0.1 % within a UTM zone.</summary>
    public double CellAreaSquareMetres => Frame.StepX * Frame.StepY;

    /// <summary>Number of cells inside the radius.</summary>
    public int CellCount => flags.Count(flag => (flag & ReachFlags.Outside) == ReachFlags.None);

    /// <summary>Area of the cells whose way lacks ground, in square metres.</summary>
    public double MissingSquareMetres => flags.Count(flag => (flag & ReachFlags.GroundMissing) != ReachFlags.None) * CellAreaSquareMetres;

    /// <summary>Takes over the arrays of a field; they must not be changed afterwards.</summary>
    /// <exception cref="ArgumentException">There is not one value for each cell, or a cell has a loss where its flags say that there is none, or the other way round.</exception>
    public static ReachField FromCells(ReachFieldInput input, GridFrame frame, float[] lossDb, float[] stationElevationDegrees, ReachFlags[] flags, ImmutableArray<ReachGap> gaps, double? sweepStepMetres = null)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(lossDb);
        ArgumentNullException.ThrowIfNull(stationElevationDegrees);
        ArgumentNullException.ThrowIfNull(flags);
        long cells = (long)frame.Columns * frame.Rows;
        int odd = -1;
        if (lossDb.Length != cells || stationElevationDegrees.Length != cells || flags.Length != cells)
        {
            throw new ArgumentException($"A grid of {frame.Columns} × {frame.Rows} has one value for each cell.", nameof(lossDb));
        }

        Parallel.For(0, frame.Rows, row =>
        {
            for (int i = row * frame.Columns; i < (row + 1) * frame.Columns; i++)
            {
                bool none = (flags[i] & (ReachFlags.Outside | ReachFlags.GroundMissing)) != ReachFlags.None;
                if (float.IsFinite(lossDb[i]) == none || float.IsFinite(stationElevationDegrees[i]) == none)
                {
                    Interlocked.Exchange(ref odd, i);
                }
            }
        });
        if (odd >= 0)
        {
            throw new ArgumentException($"Cell {odd}: its loss and its flags do not agree.", nameof(flags));
        }

        return new(input, frame, lossDb, stationElevationDegrees, flags, gaps) { SweepStepMetres = sweepStepMetres };
    }

    /// <summary>Arrays for so many cells: those of a field that nobody asks any more where they fit, else new ones.</summary>
    internal static (float[] LossDb, float[] ElevationDegrees, ReachFlags[] Flags) ArraysFor(int cells, ReachField? spent) =>
        spent?.lossDb.Length == cells ? (spent.lossDb, spent.elevationDegrees, spent.flags) : (new float[cells], new float[cells], new ReachFlags[cells]);

    /// <summary>The grid and the number of cells, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Frame}: {CellCount} cells within {Input.RadiusMetres:0} m");
}

/// <summary>Ground that a field lacks.</summary>
/// <param name="Tile">The tile with the void, or the one-degree tile that is absent.</param>
/// <param name="IsVoid">Whether a tile was there and holds no height; else no tile was there.</param>
/// <param name="Cells">Number of cells whose path meets it.</param>
/// <param name="NearestMetres">Least distance from the station at which a path meets it, in metres.</param>
/// <param name="BearingDegrees">Bearing of that path at the station, from true north.</param>
public sealed record ReachGap(string Tile, bool IsVoid, int Cells, double NearestMetres, double BearingDegrees)
{
    /// <summary>What is missing and where, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{(IsVoid ? "a void in" : "no tile")} {Tile}, from {NearestMetres / 1000:0.0} km on at bearing {BearingDegrees:0}°: {Cells} cells");
}
