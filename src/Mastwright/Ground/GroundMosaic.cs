using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Geodesy;

namespace Mastwright.Ground;

/// <summary>A rectangle in degrees that a source could have a tile for.</summary>
/// <param name="Name">Name of the tile, such as "N46W019".</param>
/// <param name="SouthDegrees">Its southern edge.</param>
/// <param name="WestDegrees">Its western edge, in [-180, 180).</param>
/// <param name="SizeDegrees">Its width and height in degrees.</param>
public readonly record struct GroundTile(string Name, double SouthDegrees, double WestDegrees, double SizeDegrees)
{
    /// <summary>The one-degree tile that a place lies in, named by its south-western corner.</summary>
    public static GroundTile OneDegree(GeoPoint point)
    {
        int south = (int)Math.Min(89, Math.Floor(point.LatitudeDegrees));
        int west = (int)Math.Floor(point.LongitudeDegrees);
        return OneDegree(south, west);
    }

    /// <summary>The one-degree tile with a south-western corner; the longitude is brought into [-180, 180).</summary>
    public static GroundTile OneDegree(int southDegrees, int westDegrees)
    {
        int west = ((((westDegrees + 180) % 360) + 360) % 360) - 180;
        string name = string.Create(
            CultureInfo.InvariantCulture,
            $"{(southDegrees < 0 ? 'S' : 'N')}{Math.Abs(southDegrees):00}{(west < 0 ? 'W' : 'E')}{Math.Abs(west):000}");
        return new(name, southDegrees, west, 1);
    }

    /// <summary>Whether a place lies in the tile or on its edge.</summary>
    public bool Holds(double latitudeDegrees, double longitudeDegrees)
    {
        double east = longitudeDegrees - WestDegrees;
        east -= 360 * Math.Floor((east + 1e-9) / 360);
        return latitudeDegrees >= SouthDegrees - 1e-9 && latitudeDegrees <= SouthDegrees + SizeDegrees + 1e-9 && east <= SizeDegrees + 1e-9;
    }

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}

/// <summary>A height and where it comes from.</summary>
/// <param name="Metres">Height in metres; NaN when nothing is known.</param>
/// <param name="Window">The window it was read from; null when there is none.</param>
/// <param name="IsOpenSea">Whether the source's tile index leaves the place to the sea.</param>
public readonly record struct GroundHeight(double Metres, GroundWindow? Window, bool IsOpenSea)
{
    /// <summary>The height, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Metres:0.#} m");
}

/// <summary>Windows of ground laid over one another: the finest that knows a place answers for it.</summary>
/// <remarks>
/// A void in a finer window is filled from a coarser one. A place that no window knows is sea at 0 m where a source's own tile index
/// says so; otherwise its height is missing. Immutable and safe from many threads.
/// </remarks>
public sealed class GroundMosaic
{
    private const byte UniformCode = 255;

    /// <summary>The whole earth in a few samples of one code.</summary>
    private static readonly Lazy<GroundWindow> UniformCover = new(() => GroundWindow.FromCover(
        GridFrame.Geographic(-135, 45, 90, 90, 4, 2, samplesAreAreas: true), [.. Enumerable.Repeat(UniformCode, 8)], "cover of one height"));

    private GroundMosaic(ImmutableArray<GroundWindow> heights, ImmutableArray<GroundWindow> covers)
    {
        Heights = heights;
        Covers = covers;
    }

    /// <summary>A mosaic that knows nothing.</summary>
    public static GroundMosaic Empty { get; } = new([], []);

    /// <summary>Windows with heights, finest first; windows of equal step keep the order they were given in.</summary>
    public ImmutableArray<GroundWindow> Heights { get; }

    /// <summary>Windows with cover codes, finest first.</summary>
    public ImmutableArray<GroundWindow> Covers { get; }

    /// <summary>Tiles that a source's own index does not list: sea at 0 m where no window knows better.</summary>
    public ImmutableArray<GroundTile> SeaTiles { get; init; } = [];

    /// <summary>The table from cover codes to classes and heights.</summary>
    public CoverTable CoverTable { get; init; } = CoverTable.Empty;

    /// <summary>Where the sea is; null when it was not worked out: then only <see cref="SeaTiles"/> are sea and no land is coastal.</summary>
    public SeaMap? Sea { get; init; }

    /// <summary>Lays windows over one another.</summary>
    /// <param name="windows">Windows with heights or cover codes, in order of preference among those of equal step.</param>
    public static GroundMosaic Of(IEnumerable<GroundWindow> windows)
    {
        GroundWindow[] all = [.. windows];
        return new(
            [.. all.Where(window => !window.Heights.IsEmpty).OrderBy(StepKey)],
            [.. all.Where(window => !window.Cover.IsEmpty).OrderBy(StepKey)]);
    }

    /// <summary>The same mosaic with other tiles left to the sea, another cover table or another sea map.</summary>
    public GroundMosaic With(ImmutableArray<GroundTile> seaTiles, CoverTable coverTable, SeaMap? sea) =>
        new(Heights, Covers) { SeaTiles = seaTiles, CoverTable = coverTable, Sea = sea };

    /// <summary>The same ground without what stands on it: every kind of cover is as high as nothing; where water is stays known.</summary>
    public GroundMosaic Bare() => With(SeaTiles, CoverTable.Of(CoverTable.Rows.Select(row => row with { HeightMetres = 0 })), Sea);

    /// <summary>The same ground under cover of one height, where no cover is known at all; sea, and heights that hold the cover already, stay bare.</summary>
    /// <param name="metres">Height of the cover in metres, 0 to 100.</param>
    /// <exception cref="ArgumentException">The height is outside its range.</exception>
    public GroundMosaic WithUniformCover(double metres)
    {
        if (!Covers.IsEmpty)
        {
            return this;
        }

        CoverRow row = new(UniformCode, "cover of one height", CoverClass.UrbanOrTrees, metres, "a correction fitted to measurements", "plan");
        return new(Heights, [UniformCover.Value]) { SeaTiles = SeaTiles, CoverTable = CoverTable.Of([row]), Sea = Sea };
    }

    /// <summary>The height of a place.</summary>
    public GroundHeight HeightAt(GeoPoint point)
    {
        for (int i = 0; i < Heights.Length; i++)
        {
            GroundWindow window = Heights[i];
            (double column, double row) = window.Frame.Locate(point);
            double height = HeightIn(i, column, row);
            if (!double.IsNaN(height))
            {
                return new(height, window, IsOpenSea: false);
            }
        }

        return IsLeftToSea(point.LatitudeDegrees, point.LongitudeDegrees) ? new(0, null, IsOpenSea: true) : new(double.NaN, null, IsOpenSea: false);
    }

    /// <summary>The cover code of a place; 0 when nothing is known.</summary>
    public byte CoverAt(GeoPoint point)
    {
        foreach (GroundWindow window in Covers)
        {
            byte code = window.CoverAt(point);
            if (code != 0)
            {
                return code;
            }
        }

        return 0;
    }

    /// <summary>Whether a tile index leaves a place to the sea.</summary>
    internal bool IsLeftToSea(double latitudeDegrees, double longitudeDegrees)
    {
        foreach (GroundTile tile in SeaTiles)
        {
            if (tile.Holds(latitudeDegrees, longitudeDegrees))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Height in one window, at a position counted in its samples, across the seam to its neighbours; NaN when it does not know.</summary>
    internal double HeightIn(int index, double column, double row)
    {
        GroundWindow window = Heights[index];
        GridFrame frame = window.Frame;
        if (!(column >= -0.5 && row >= -0.5 && column <= frame.Columns - 0.5 && row <= frame.Rows - 0.5))
        {
            return frame.SamplesAreAreas ? double.NaN : window.HeightAt(column, row);
        }

        double height = window.HeightAt(column, row);
        bool insideSamples = column >= 0 && row >= 0 && column <= frame.Columns - 1 && row <= frame.Rows - 1;
        return insideSamples || !double.IsNaN(height) || !frame.SamplesAreAreas ? height : SeamHeight(window, column, row);
    }

    /// <summary>Bilinear between the last samples of an area grid and the first of the neighbouring tile; the last sample where there is none.</summary>
    private double SeamHeight(GroundWindow window, double column, double row)
    {
        int c = (int)Math.Floor(column);
        int r = (int)Math.Floor(row);
        double fc = column - c;
        double fr = row - r;
        double a = SampleAcross(window, c, r);
        double b = SampleAcross(window, c + 1, r);
        double d = SampleAcross(window, c, r + 1);
        double e = SampleAcross(window, c + 1, r + 1);
        double top = fc == 0 ? a : (a * (1 - fc)) + (b * fc);
        double bottom = fc == 0 ? d : (d * (1 - fc)) + (e * fc);
        return fr == 0 ? top : (top * (1 - fr)) + (bottom * fr);
    }

    private double SampleAcross(GroundWindow window, int column, int row)
    {
        GridFrame frame = window.Frame;
        if (column >= 0 && row >= 0 && column < frame.Columns && row < frame.Rows)
        {
            return window.Sample(column, row);
        }

        double x = frame.OriginX + (column * frame.StepX);
        double y = frame.OriginY - (row * frame.StepY);
        foreach (GroundWindow other in Heights)
        {
            GridFrame its = other.Frame;
            if (ReferenceEquals(other, window) || its.UtmZone != frame.UtmZone || its.IsNorth != frame.IsNorth
                || Math.Abs(its.StepX - frame.StepX) > frame.StepX * 1e-3 || Math.Abs(its.StepY - frame.StepY) > frame.StepY * 1e-3)
            {
                continue;
            }

            double turned = frame.IsGeographic ? x + its.Turn(x) : x;
            double height = other.Sample(
                (int)Math.Round((turned - its.OriginX) / its.StepX), (int)Math.Round((its.OriginY - y) / its.StepY));
            if (!double.IsNaN(height))
            {
                return height;
            }
        }

        // No neighbour: the outermost half cell keeps the value of its own sample.
        return window.Sample(Math.Clamp(column, 0, frame.Columns - 1), Math.Clamp(row, 0, frame.Rows - 1));
    }

    /// <summary>The step to three figures, so that tiles of one grid at different latitudes are equals.</summary>
    private static double StepKey(GroundWindow window)
    {
        double metres = window.Frame.IsGeographic ? window.Frame.StepY * 111_195 : Math.Max(window.Frame.StepX, window.Frame.StepY);
        double scale = Math.Pow(10, Math.Floor(Math.Log10(metres)) - 2);
        return Math.Round(metres / scale) * scale;
    }
}
