using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Ground;

namespace Mastwright.Network.Reach;

/// <summary>Weights, such as people or houses, laid on the cells of one grid; what lies off it is kept as one sum.</summary>
/// <remarks>Filled by one thread, then read. Nothing is lost: what was added is in a cell or off the grid.</remarks>
public sealed class ReachWeights
{
    /// <summary>A cell of counts is parted into squares of at most this share of a cell of the grid.</summary>
    private const double PartShare = 0.5;

    private const int MostPartsASide = 64;

    private readonly double[] inCell;

    /// <summary>Makes an empty layer of weights.</summary>
    /// <param name="frame">The grid.</param>
    public ReachWeights(GridFrame frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        Frame = frame;
        inCell = new double[frame.Columns * frame.Rows];
    }

    /// <summary>The grid.</summary>
    public GridFrame Frame { get; }

    /// <summary>Weight of each cell, row by row.</summary>
    public ReadOnlySpan<double> InCell => inCell;

    /// <summary>Weight that lies on none of the cells.</summary>
    public double OffGrid { get; private set; }

    /// <summary>All that was added.</summary>
    public double Total { get; private set; }

    /// <summary>Number of places or cells of counts that were added.</summary>
    public int Count { get; private set; }

    /// <summary>Adds a weight at a place.</summary>
    /// <param name="place">The place.</param>
    /// <param name="weight">The weight, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The weight is negative or not a number.</exception>
    public void Add(GeoPoint place, double weight)
    {
        Count++;
        Total += Checked(weight);
        Lay(place, weight);
    }

    /// <summary>Adds the count of one cell of a raster, spread evenly over its area, so that the sum of the cells is the count.</summary>
    /// <param name="raster">The raster; a sample stands for the cell around it.</param>
    /// <param name="column">Column of the cell.</param>
    /// <param name="row">Row of the cell.</param>
    /// <param name="count">The count, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The count is negative or not a number.</exception>
    public void AddCell(GridFrame raster, int column, int row, double count)
    {
        ArgumentNullException.ThrowIfNull(raster);
        Count++;
        Total += Checked(count);
        if (count == 0)
        {
            return;
        }

        if (!Meets(raster, column, row))
        {
            OffGrid += count;
            return;
        }

        int parts = PartsASide(raster, row);
        double each = count / (parts * (double)parts);
        for (int i = 0; i < parts * parts; i++)
        {
            Lay(PlaceIn(raster, column + (((i % parts) + 0.5) / parts) - 0.5, row + (((i / parts) + 0.5) / parts) - 0.5), each);
        }
    }

    /// <summary>What the margin classes of a map hold of it.</summary>
    /// <exception cref="ArgumentException">The map has another grid.</exception>
    public ReachWeightShares Shares(ReachMap map, ReachDirection direction)
    {
        ArgumentNullException.ThrowIfNull(map);
        if (map.Field.Frame != Frame)
        {
            throw new ArgumentException("Weights and map have one grid.", nameof(map));
        }

        ImmutableArray<double> edges = ReachClasses.Edges(map.Budget.Wanted.MarginDb);
        double[] classes = new double[edges.Length + 1];
        (double outside, double missing) = (OffGrid, 0);
        for (int cell = 0; cell < inCell.Length; cell++)
        {
            if (inCell[cell] == 0)
            {
                continue;
            }

            if ((map.Field.Flags[cell] & ReachFlags.Outside) != ReachFlags.None)
            {
                outside += inCell[cell];
            }
            else if (double.IsNaN(map.MarginDb(cell, direction)))
            {
                missing += inCell[cell];
            }
            else
            {
                classes[ReachClasses.IndexOf(edges, map.MarginDb(cell, direction))] += inCell[cell];
            }
        }

        return new([.. classes], outside, missing);
    }

    /// <summary>What is reached by so many stations, and what each of them serves best.</summary>
    /// <exception cref="ArgumentException">The stations have another grid.</exception>
    public ServedWeights Shares(BestServers servers, ReachDirection direction)
    {
        ArgumentNullException.ThrowIfNull(servers);
        if (servers.Frame != Frame)
        {
            throw new ArgumentException("Weights and stations have one grid.", nameof(servers));
        }

        BestServerLayer layer = servers.Layer(direction);
        double[] byCount = new double[layer.MostAtOneCell + 1];
        double[] best = new double[servers.StationCount];
        (double outside, double missing) = (OffGrid, 0);
        for (int cell = 0; cell < inCell.Length; cell++)
        {
            if ((servers.Flags[cell] & ReachFlags.Outside) != ReachFlags.None)
            {
                outside += inCell[cell];
            }
            else if (float.IsNaN(layer.MarginsDb[cell]))
            {
                missing += inCell[cell];
            }
            else
            {
                byCount[layer.Counts[cell]] += inCell[cell];
                if (layer.ServerOf(cell) is int server and > 0)
                {
                    best[server - 1] += inCell[cell];
                }
            }
        }

        return new([.. byCount], [.. best], outside, missing);
    }

    private static double Checked(double weight)
    {
        if (!(weight >= 0 && double.IsFinite(weight)))
        {
            throw new ArgumentOutOfRangeException(nameof(weight), weight, "A weight is zero or more.");
        }

        return weight;
    }

    private void Lay(GeoPoint place, double weight)
    {
        (double column, double row) = IsFar(place) ? (-1, -1) : Frame.Locate(place);
        (double c, double r) = (Math.Round(column), Math.Round(row));
        if (c >= 0 && r >= 0 && c < Frame.Columns && r < Frame.Rows)
        {
            inCell[((int)r * Frame.Columns) + (int)c] += weight;
        }
        else
        {
            OffGrid += weight;
        }
    }

    /// <summary>Whether a place lies too far from the grid's meridian for its projection.</summary>
    private bool IsFar(GeoPoint place) => !UniversalTransverseMercator.Covers(place)
        || Math.Abs(Math.IEEERemainder(place.LongitudeDegrees - UniversalTransverseMercator.MeridianDegrees(Frame.UtmZone), 360)) > 25;

    /// <summary>Whether a cell of a raster may lie on the grid: some slack for what its edges bend.</summary>
    private bool Meets(GridFrame raster, int column, int row)
    {
        GeoPoint middle = PlaceIn(raster, column, row);
        if (IsFar(middle))
        {
            return false;
        }

        double half = raster.IsGeographic ? raster.StepX * 111_400 : raster.StepX;
        double slack = 2 + (2 * Math.Max(half, raster.ResolutionMetres) / Frame.StepX);
        (double c, double r) = Frame.Locate(middle);
        return c > -slack && r > -slack && c < Frame.Columns + slack && r < Frame.Rows + slack;
    }

    private int PartsASide(GridFrame raster, int row)
    {
        double latitude = raster.IsGeographic ? raster.OriginY - (row * raster.StepY) : 0;
        double across = raster.IsGeographic ? raster.StepX * 111_400 * Math.Cos(double.DegreesToRadians(latitude)) : raster.StepX;
        return Math.Clamp((int)Math.Ceiling(Math.Max(across, raster.ResolutionMetres) / (PartShare * Frame.StepX)), 1, MostPartsASide);
    }

    private static GeoPoint PlaceIn(GridFrame raster, double column, double row)
    {
        double x = raster.OriginX + (column * raster.StepX);
        double y = raster.OriginY - (row * raster.StepY);
        if (!raster.IsGeographic)
        {
            UniversalTransverseMercator.Reverse(x, y, raster.UtmZone, raster.IsNorth, out y, out x);
        }

        return new(Math.Clamp(y, -90, 90), x - (360 * Math.Round(x / 360)));
    }
}

/// <summary>What the margin classes of a map hold of some weights.</summary>
/// <param name="InClass">Weight in each class, the one below the limit first.</param>
/// <param name="Outside">Weight outside the radius.</param>
/// <param name="WithoutGround">Weight in cells to which ground is missing on the way.</param>
public sealed record ReachWeightShares(ImmutableArray<double> InClass, double Outside, double WithoutGround)
{
    /// <summary>Weight with a margin of 0 dB or more.</summary>
    public double Reached => InClass.Skip(1).Sum();
}

/// <summary>What several stations reach of some weights.</summary>
/// <param name="ByCount">Weight by the number of stations that reach it, from none on.</param>
/// <param name="Best">Weight that each station serves best.</param>
/// <param name="Outside">Weight outside every radius.</param>
/// <param name="WithoutGround">Weight in cells of which nothing is known, for want of ground on every way.</param>
public sealed record ServedWeights(
    ImmutableArray<double> ByCount, ImmutableArray<double> Best, double Outside, double WithoutGround);
