using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Writers;
using Mastwright.Storage.Ground;

namespace Mastwright.Workbench.Tiles;

/// <summary>Tiles of a plan's own ground: its heights for relief and contours, and what lies on it as a picture.</summary>
/// <remarks>
/// Tiles from <see cref="DirectZoom"/> on are sampled from the height files; smaller zooms are the mean of the four tiles below them, so that
/// the memory in use never grows with the area shown. Where no file reaches, no work is done. Safe from many threads.
/// </remarks>
internal sealed class GroundTiles(GroundLibrary ground)
{
    /// <summary>The least zoom that is sampled from the files: a tile is then at most 80 km wide.</summary>
    public const int DirectZoom = 9;

    /// <summary>Pixels a side of a picture: it shows the ground as finely as the four tiles of heights below it.</summary>
    public const int PictureSide = 2 * TileAddress.Side;

    private const long HeightBytes = 24L << 20;
    private const long PictureBytes = 16L << 20;

    private readonly GeoBounds[] files = [.. ground.HeightBounds];
    private readonly BoundedCache<TileAddress, float[]> heights = new(HeightBytes, tile => Math.Max(64, tile.Length * sizeof(float)));
    private readonly BoundedCache<(TileAddress Tile, PictureKind? Kind, Theme Theme), byte[]> pictures = new(PictureBytes, picture => picture.Length);

    /// <summary>The zoom beyond which tiles hold nothing new: their pixels are finer than the ground's samples. Between 9 and 15.</summary>
    public int LargestZoom { get; } = FinestZoom(ground);

    /// <summary>The rectangle that the height files cover; null when there are none.</summary>
    public GeoBounds? Bounds => files.Length == 0
        ? null
        : GeoBounds.Of([.. files.SelectMany(one => new GeoPoint[] { new(one.SouthDegrees, one.WestDegrees), new(one.NorthDegrees, one.EastDegrees) })]);

    /// <summary>Heights as a PNG picture, metres = red × 256 + green + blue / 256 − 32768; 0 m where nothing is known.</summary>
    public byte[] HeightPng(TileAddress tile) => pictures.Get((tile, null, Theme.Light), one => HeightPicture.Write(Heights(one.Tile)));

    /// <summary>The ground as a picture of <see cref="PictureSide"/> pixels: sea, woods, houses, hatched where no height is known, and the light on its slopes. The relief alone is transparent and so PNG, the others are JPEG.</summary>
    public byte[] Picture(TileAddress tile, PictureKind kind, Theme theme) => pictures.Get((tile, kind, theme), one => Draw(one.Tile, kind, theme));

    /// <summary>Heights of a tile's pixels, row by row from the north-west, in metres; NaN where nothing is known; empty when nothing is known of any.</summary>
    public float[] Heights(TileAddress tile) => heights.Get(tile, Make);

    private static int FinestZoom(GroundLibrary ground)
    {
        double finest = ground.FinestMetres ?? 30;
        int zoom = DirectZoom;
        while (zoom < 15 && new TileAddress(zoom, 0, 1 << (zoom - 1)).PixelMetres > finest * 1.5)
        {
            zoom++;
        }

        return zoom;
    }

    private bool IsNear(TileAddress tile) => files.Any(tile.Bounds.Intersects);

    /// <summary>The ground of a tile; empty for small zooms, whose pictures show heights alone.</summary>
    private GroundMosaic MosaicOf(TileAddress tile) => tile.Zoom < DirectZoom || Math.Abs(tile.LatitudeDegrees(128)) > 84 ? GroundMosaic.Empty : ground.MosaicFor(tile.Bounds);

    private byte[] Draw(TileAddress tile, PictureKind kind, Theme theme)
    {
        float[] metres = new float[PictureSide * PictureSide];
        Array.Fill(metres, float.NaN);
        byte[] pixels = new byte[4 * metres.Length];
        for (int number = 0; number < 4; number++)
        {
            TileAddress child = tile.Child(number);
            float[] part = Heights(child);
            int corner = ((number >> 1) * TileAddress.Side * PictureSide) + ((number & 1) * TileAddress.Side);
            for (int row = 0; part.Length > 0 && row < TileAddress.Side; row++)
            {
                part.AsSpan(row * TileAddress.Side, TileAddress.Side).CopyTo(metres.AsSpan(corner + (row * PictureSide)));
            }

            if (kind != PictureKind.Relief)
            {
                LandPicture.Draw(MosaicOf(child), part, child, theme, pixels.AsSpan(4 * corner), PictureSide);
            }
        }

        if (kind != PictureKind.Land)
        {
            ReliefPicture.Draw(metres, PictureSide, tile.PixelMetres / 2, theme, pixels);
        }

        PixelImage image = PixelImage.FromPixels(PictureSide, PictureSide, pixels);
        return kind == PictureKind.Relief ? PixelPng.Write(image) : PixelJpeg.Write(image);
    }

    private float[] Make(TileAddress tile)
    {
        if (tile.Zoom < DirectZoom)
        {
            return IsNear(tile) ? MeanOfChildren(tile) : [];
        }

        GroundMosaic mosaic = MosaicOf(tile);
        return mosaic.Heights.IsEmpty && mosaic.SeaTiles.IsEmpty ? [] : Sample(mosaic, tile, Math.Clamp((int)(tile.PixelMetres / (ground.FinestMetres ?? 30) / 1.5), 1, 2));
    }

    /// <summary>The mean of n × n places in each pixel, of those that are known.</summary>
    private static float[] Sample(GroundMosaic mosaic, TileAddress tile, int n)
    {
        float[] made = new float[TileAddress.Side * TileAddress.Side];
        for (int row = 0; row < TileAddress.Side; row++)
        {
            for (int column = 0; column < TileAddress.Side; column++)
            {
                double sum = 0;
                int known = 0;
                for (int i = 0; i < n * n; i++)
                {
                    double height = mosaic.HeightAt(new(tile.LatitudeDegrees(row + ((i / n) + 0.5) / n), tile.LongitudeDegrees(column + ((i % n) + 0.5) / n))).Metres;
                    if (!double.IsNaN(height))
                    {
                        sum += height;
                        known++;
                    }
                }

                made[(row * TileAddress.Side) + column] = known == 0 ? float.NaN : (float)(sum / known);
            }
        }

        return made;
    }

    private float[] MeanOfChildren(TileAddress tile)
    {
        const int half = TileAddress.Side / 2;
        float[] made = new float[TileAddress.Side * TileAddress.Side];
        Array.Fill(made, float.NaN);
        bool isKnown = false;
        for (int child = 0; child < 4; child++)
        {
            float[] below = Heights(tile.Child(child));
            if (below.Length == 0)
            {
                continue;
            }

            isKnown = true;
            int at = ((child >> 1) * half * TileAddress.Side) + ((child & 1) * half);
            for (int row = 0; row < half; row++)
            {
                for (int column = 0; column < half; column++)
                {
                    made[at + (row * TileAddress.Side) + column] = Mean(below, (2 * row * TileAddress.Side) + (2 * column));
                }
            }
        }

        return isKnown ? made : [];
    }

    private static float Mean(float[] below, int at)
    {
        ReadOnlySpan<float> four = [below[at], below[at + 1], below[at + TileAddress.Side], below[at + TileAddress.Side + 1]];
        float sum = 0;
        int known = 0;
        foreach (float height in four)
        {
            if (!float.IsNaN(height))
            {
                sum += height;
                known++;
            }
        }

        return known == 0 ? float.NaN : sum / known;
    }
}
