using System.Collections.Immutable;

namespace Mastwright.Ground;

/// <summary>What stands on the ground, in the classes of ITU-R P.1812 (table of default clutter heights). The default is <see cref="Open"/>.</summary>
public enum CoverClass
{
    /// <summary>Open, rural.</summary>
    Open,

    /// <summary>Water, sea.</summary>
    Water,

    /// <summary>Suburban.</summary>
    Suburban,

    /// <summary>Urban, trees, forest.</summary>
    UrbanOrTrees,

    /// <summary>Dense urban.</summary>
    DenseUrban,
}

/// <summary>One row of the table from cover codes to classes.</summary>
/// <param name="Code">Code in the raster, 1 to 255.</param>
/// <param name="Name">What the raster's publisher calls it.</param>
/// <param name="CoverClass">Class of ITU-R P.1812.</param>
/// <param name="HeightMetres">Representative height above the ground in metres, 0 to 100.</param>
/// <param name="Reason">Why this class and height.</param>
/// <param name="Source">Document, "common practice" or "from memory".</param>
public sealed record CoverRow(byte Code, string Name, CoverClass CoverClass, double HeightMetres, string Reason, string Source);

/// <summary>The table from the codes of a cover raster to classes and representative heights.</summary>
/// <remarks>Immutable and safe from many threads. A code without a row counts as open ground of height 0.</remarks>
public sealed class CoverTable
{
    private readonly CoverRow?[] _byCode = new CoverRow?[256];

    private CoverTable(ImmutableArray<CoverRow> rows)
    {
        Rows = rows;
        foreach (CoverRow row in rows)
        {
            _byCode[row.Code] = row;
        }
    }

    /// <summary>A table without rows: everything is open ground.</summary>
    public static CoverTable Empty { get; } = new([]);

    /// <summary>The rows in the order of their codes.</summary>
    public ImmutableArray<CoverRow> Rows { get; }

    /// <summary>Makes a table.</summary>
    /// <exception cref="ArgumentException">Two rows have one code, a code is 0 (no data), or a height is outside 0 to 100 m.</exception>
    public static CoverTable Of(IEnumerable<CoverRow> rows)
    {
        ImmutableArray<CoverRow> sorted = [.. rows.OrderBy(row => row.Code)];
        for (int i = 0; i < sorted.Length; i++)
        {
            if (sorted[i].Code == 0 || (i > 0 && sorted[i].Code == sorted[i - 1].Code))
            {
                throw new ArgumentException($"Cover code {sorted[i].Code} is given twice, or is 0, which means that nothing is known.", nameof(rows));
            }

            if (!(sorted[i].HeightMetres is >= 0 and <= 100))
            {
                throw new ArgumentException($"The representative height of cover code {sorted[i].Code} is 0 to 100 m.", nameof(rows));
            }
        }

        return new(sorted);
    }

    /// <summary>The row of a code; null when it has none.</summary>
    public CoverRow? Find(byte code) => _byCode[code];

    /// <summary>The class of a code.</summary>
    public CoverClass ClassOf(byte code) => _byCode[code]?.CoverClass ?? CoverClass.Open;

    /// <summary>The representative height of a code, in metres.</summary>
    public double HeightMetres(byte code) => _byCode[code]?.HeightMetres ?? 0;
}
