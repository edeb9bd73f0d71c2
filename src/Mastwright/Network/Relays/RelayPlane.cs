using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Propagation.Area;

namespace Mastwright.Network.Relays;

/// <summary>Heights of the ground on a plane around a station, on which candidates are looked for. Immutable and safe from many threads.</summary>
public sealed class RelayPlane
{
    private readonly float[] heights;

    /// <summary>A plane.</summary>
    /// <param name="frame">Its place and size.</param>
    /// <param name="heightsMetres">Height above the sea of each cell, row by row from the north; NaN where it is not known. Taken over, not copied.</param>
    /// <exception cref="ArgumentException">There is not one height for each cell.</exception>
    public RelayPlane(SweepFrame frame, float[] heightsMetres)
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(heightsMetres);
        if (heightsMetres.Length != frame.Side * frame.Side)
        {
            throw new ArgumentException($"A plane of {frame.Side} × {frame.Side} cells has one height for each.", nameof(heightsMetres));
        }

        Frame = frame;
        heights = heightsMetres;
    }

    /// <summary>Place and size.</summary>
    public SweepFrame Frame { get; }

    /// <summary>Columns, and rows.</summary>
    public int Side => Frame.Side;

    /// <summary>Heights, row by row from the north.</summary>
    public ReadOnlySpan<float> Heights => heights;

    /// <summary>Reads the ground around a station.</summary>
    /// <param name="ground">The ground of the whole square.</param>
    /// <param name="middle">The station.</param>
    /// <param name="halfSideMetres">Half the side of the square.</param>
    /// <param name="stepMetres">Side of a cell.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static RelayPlane Read(GroundMosaic ground, GeoPoint middle, double halfSideMetres, double stepMetres, CancellationToken cancellation = default)
    {
        SweepFrame frame = SweepFrame.Around(middle, halfSideMetres, stepMetres);
        return new(frame, SweepGround.Read(ground, frame, 0, cancellation).Raster.HeightsMetres.ToArray());
    }

    /// <summary>The place of a cell.</summary>
    public GeoPoint PlaceOf(int cell) => Frame.PointAt((cell % Side) - Frame.Reach, Frame.Reach - (cell / Side));

    /// <summary>Metres east and north of the middle at which a cell lies.</summary>
    public (double East, double North) MetresOf(int cell) => (((cell % Side) - Frame.Reach) * Frame.CellMetres, (Frame.Reach - (cell / Side)) * Frame.CellMetres);

    /// <summary>Where the centre of each cell of a grid lies on the plane, in columns and rows; row by row.</summary>
    public (float Column, float Row)[] PlacesOf(GridFrame grid)
    {
        ArgumentNullException.ThrowIfNull(grid);
        (float, float)[] places = new (float, float)[grid.Columns * grid.Rows];
        GridLattice metres = GridLattice.OfPlane(grid, Frame.Station);
        Parallel.For(0, grid.Rows, row =>
        {
            GridLattice.RowReader along = metres.Row(row);
            for (int column = 0; column < grid.Columns; column++)
            {
                (double east, double north) = along.At(column);
                places[(row * grid.Columns) + column] = ((float)((east / Frame.CellMetres) + Frame.Reach), (float)(Frame.Reach - (north / Frame.CellMetres)));
            }
        });
        return places;
    }

    /// <summary>Height at a position counted in columns and rows, bilinear; NaN off the plane and where a height is not known.</summary>
    public double HeightAt(double column, double row)
    {
        if (!(column >= 0 && row >= 0 && column <= Side - 1 && row <= Side - 1))
        {
            return double.NaN;
        }

        int c = Math.Min((int)column, Side - 2);
        int r = Math.Min((int)row, Side - 2);
        int at = (r * Side) + c;
        double top = heights[at] + ((column - c) * (heights[at + 1] - heights[at]));
        double bottom = heights[at + Side] + ((column - c) * (heights[at + Side + 1] - heights[at + Side]));
        return top + ((row - r) * (bottom - top));
    }
}
