using Mastwright.Geodesy;

namespace Mastwright.Propagation;

/// <summary>A world map of a property of the air on the grid that ITU-R P.1812 uses for ΔN and N0. Immutable, so safe from many threads.</summary>
/// <remarks>
/// Source: Rec. ITU-R P.1812, the digital maps DN50.TXT and N050.TXT that come with it, with bilinear interpolation between grid points.
/// The layout is from memory: 121 rows of 241 values every 1.5°, rows from 90° N to 90° S, columns from 0° to 360° E.
/// </remarks>
public sealed class RefractivityMap
{
    /// <summary>Rows, from 90° N to 90° S.</summary>
    public const int Rows = 121;

    /// <summary>Columns, from 0° to 360° E: the last repeats the first.</summary>
    public const int Columns = 241;

    /// <summary>Degrees from one grid point to the next, both ways.</summary>
    public const double StepDegrees = 1.5;

    private readonly double[] values;

    private RefractivityMap(double[] values) => this.values = values;

    /// <summary>Makes a map from its values, row by row from the north, each row from 0° E eastwards.</summary>
    /// <exception cref="ArgumentException">There are not 121 × 241 values, or one is not finite.</exception>
    public static RefractivityMap FromValues(ReadOnlySpan<double> values)
    {
        if (values.Length != Rows * Columns)
        {
            throw new ArgumentException(FormattableString.Invariant($"{values.Length} values were given; a map has {Rows} × {Columns}."), nameof(values));
        }

        foreach (double value in values)
        {
            if (!double.IsFinite(value))
            {
                throw new ArgumentException("A map holds finite values alone.", nameof(values));
            }
        }

        return new(values.ToArray());
    }

    /// <summary>The value at a place, in the map's unit, between its four grid points in proportion.</summary>
    public double At(GeoPoint place)
    {
        double east = place.LongitudeDegrees < 0 ? place.LongitudeDegrees + 360 : place.LongitudeDegrees;
        (int row, double down) = Cell((90 - place.LatitudeDegrees) / StepDegrees, Rows);
        (int column, double right) = Cell(east / StepDegrees, Columns);
        int corner = (row * Columns) + column;
        double upper = values[corner] + (right * (values[corner + 1] - values[corner]));
        double lower = values[corner + Columns] + (right * (values[corner + Columns + 1] - values[corner + Columns]));
        return upper + (down * (lower - upper));
    }

    /// <summary>The cell of a position in grid steps, and how far into it; the last grid line belongs to the cell before it.</summary>
    private static (int Index, double Share) Cell(double steps, int count)
    {
        int index = Math.Clamp((int)steps, 0, count - 2);
        return (index, Math.Clamp(steps - index, 0, 1));
    }
}
