using System.Globalization;
using Mastwright.Geodesy;

namespace Mastwright.Workbench.Tiles;

/// <summary>A tile of the web's square map: 2^zoom tiles a side, counted from the north-west, 256 pixels each.</summary>
/// <remarks>Source: OGC Two Dimensional Tile Matrix Set, WebMercatorQuad (spherical formulas on WGS 84 coordinates).</remarks>
internal readonly record struct TileAddress(int Zoom, int X, int Y)
{
    /// <summary>Pixels a side.</summary>
    public const int Side = 256;

    /// <summary>The largest zoom that is answered.</summary>
    public const int MostZoom = 22;

    private const double EquatorMetres = 40_075_016.685578488;

    /// <summary>Whether there is such a tile.</summary>
    public bool Exists => Zoom is >= 0 and <= MostZoom && X >= 0 && Y >= 0 && X < 1 << Zoom && Y < 1 << Zoom;

    /// <summary>The rectangle it shows.</summary>
    public GeoBounds Bounds => new(LatitudeDegrees(Side), LongitudeDegrees(0), LatitudeDegrees(0), LongitudeDegrees(Side));

    /// <summary>Side of a pixel on the ground in the tile's middle, in metres.</summary>
    public double PixelMetres => EquatorMetres / (1L << Zoom) / Side * Math.Cos(LatitudeDegrees(Side / 2.0) * Math.PI / 180);

    /// <summary>The four tiles that show the same at twice the scale: north-west, north-east, south-west, south-east.</summary>
    public TileAddress Child(int number) => new(Zoom + 1, (2 * X) + (number & 1), (2 * Y) + (number >> 1));

    /// <summary>Longitude at a number of pixels from the western edge.</summary>
    public double LongitudeDegrees(double pixels) => ((X + (pixels / Side)) / (1L << Zoom) * 360) - 180;

    /// <summary>Latitude at a number of pixels from the northern edge.</summary>
    public double LatitudeDegrees(double pixels) =>
        Math.Atan(Math.Sinh(Math.PI * (1 - (2 * (Y + (pixels / Side)) / (1L << Zoom))))) * 180 / Math.PI;

    /// <summary>Zoom, column and row.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Zoom}/{X}/{Y}");
}
