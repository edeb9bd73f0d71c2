using System.Globalization;

namespace Mastwright.Network.Reach;

/// <summary>How much better one map is than another of the same cells, such as a new fit-out than the old one.</summary>
/// <param name="Cells">Number of cells with a margin on both maps.</param>
/// <param name="MedianDb">Median over them of the difference of margins, in dB: positive where the first map is better.</param>
/// <param name="LowDb">The difference that a twentieth of the cells stays below, in dB.</param>
/// <param name="HighDb">The difference that a twentieth of the cells exceeds, in dB.</param>
/// <param name="GainedSquareMetres">Area with a margin of 0 dB or more on the first map only.</param>
/// <param name="LostSquareMetres">Area with a margin of 0 dB or more on the second map only.</param>
public sealed record ReachComparison(int Cells, double MedianDb, double LowDb, double HighDb, double GainedSquareMetres, double LostSquareMetres)
{
    /// <summary>Compares two maps.</summary>
    /// <exception cref="ArgumentException">The maps do not have the same cells, or no cell has a margin on both.</exception>
    public static ReachComparison Of(ReachMap map, ReachMap other, ReachDirection direction)
    {
        float[] differences = DifferencesDb(map, other, direction);
        float[] known = [.. differences.Where(difference => !float.IsNaN(difference)).Order()];
        if (known.Length == 0)
        {
            throw new ArgumentException("No cell has a margin on both maps.", nameof(other));
        }

        int gained = 0;
        int lost = 0;
        for (int i = 0; i < differences.Length; i++)
        {
            if (!float.IsNaN(differences[i]))
            {
                bool here = map.MarginDb(i, direction) >= 0;
                bool there = other.MarginDb(i, direction) >= 0;
                gained += here && !there ? 1 : 0;
                lost += there && !here ? 1 : 0;
            }
        }

        double cell = map.Field.CellAreaSquareMetres;
        return new(known.Length, Share(known, 0.5), Share(known, 0.05), Share(known, 0.95), gained * cell, lost * cell);
    }

    /// <summary>Margin on the first map less that on the second, cell by cell, in dB; NaN where either has none.</summary>
    /// <exception cref="ArgumentException">The maps do not have the same cells.</exception>
    public static float[] DifferencesDb(ReachMap map, ReachMap other, ReachDirection direction)
    {
        ArgumentNullException.ThrowIfNull(map);
        ArgumentNullException.ThrowIfNull(other);
        if (map.Field.Frame != other.Field.Frame)
        {
            throw new ArgumentException("Two maps are compared cell by cell: they have one grid.", nameof(other));
        }

        float[] first = map.MarginsDb(direction);
        float[] second = other.MarginsDb(direction);
        return [.. first.Zip(second, (one, two) => one - two)];
    }

    /// <summary>The differences in words, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{MedianDb:+0.0;-0.0;0.0} dB ({LowDb:+0.0;-0.0;0.0} to {HighDb:+0.0;-0.0;0.0} dB)");

    private static double Share(float[] sorted, double share) => sorted[(int)Math.Round(share * (sorted.Length - 1))];
}
