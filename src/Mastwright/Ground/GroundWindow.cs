using System.Buffers.Binary;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Security.Cryptography;
using Mastwright.Geodesy;

namespace Mastwright.Ground;

/// <summary>A rectangle of ground in memory: one grid with heights, with cover codes, or with both.</summary>
/// <remarks>Immutable and safe from many threads. Heights outside <see cref="LowestHeightMetres"/> … <see cref="HighestHeightMetres"/> are voids.</remarks>
public sealed class GroundWindow
{
    /// <summary>Heights below this, in metres, are no heights but marks for "nothing known": the lowest land lies at about -430 m.</summary>
    public const float LowestHeightMetres = -500;

    /// <summary>Heights above this, in metres, are no heights but marks for "nothing known": the highest land lies at about 8,850 m.</summary>
    public const float HighestHeightMetres = 9_000;

    private readonly float[] _heights;
    private readonly byte[] _cover;
    private readonly Lazy<string> _contentHash;

    private GroundWindow(GridFrame frame, string name, float[] heights, byte[] cover)
    {
        Frame = frame;
        Name = name;
        _heights = heights;
        _cover = cover;
        _contentHash = new(Hash);
    }

    /// <summary>How the samples lie on the earth.</summary>
    public GridFrame Frame { get; }

    /// <summary>Name of the tile it was cut from.</summary>
    public string Name { get; }

    /// <summary>Name of the source it belongs to; empty when it has none.</summary>
    public string SourceName { get; private init; } = "";

    /// <summary>What the heights are of.</summary>
    public HeightKind Kind { get; private init; }

    /// <summary>Vertical datum as the source states it; empty when nobody said.</summary>
    public string Datum { get; private init; } = "";

    /// <summary>Distance of two samples on the ground, in metres.</summary>
    public double ResolutionMetres => Frame.ResolutionMetres;

    /// <summary>Heights row by row from the north-west, in metres; NaN where nothing is known; empty when the window has none.</summary>
    public ReadOnlySpan<float> Heights => _heights;

    /// <summary>Cover codes row by row from the north-west; 0 where nothing is known; empty when the window has none.</summary>
    public ReadOnlySpan<byte> Cover => _cover;

    /// <summary>SHA-256 of grid, heights and cover in lower-case hexadecimal: equal content has an equal hash, whatever file it came from.</summary>
    /// <remarks>Computed when first asked for.</remarks>
    public string ContentHash => _contentHash.Value;

    /// <summary>Memory the samples take, in bytes.</summary>
    public long SizeBytes => ((long)_heights.Length * sizeof(float)) + _cover.Length;

    /// <summary>A window of heights. The array is taken over and must not be changed afterwards.</summary>
    /// <exception cref="ArgumentException">There is not one height for each sample of the grid.</exception>
    public static GroundWindow FromHeights(
        GridFrame frame, float[] heights, string name, string sourceName = "", HeightKind kind = HeightKind.Unknown, string datum = "")
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(heights);
        CheckCount(frame, heights.Length);
        VoidWhatCannotBe(heights);
        return new(frame, name, heights, []) { SourceName = sourceName, Kind = kind, Datum = datum };
    }

    /// <summary>A window of cover codes. The array is taken over and must not be changed afterwards.</summary>
    /// <exception cref="ArgumentException">There is not one code for each sample of the grid.</exception>
    public static GroundWindow FromCover(GridFrame frame, byte[] codes, string name, string sourceName = "")
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(codes);
        CheckCount(frame, codes.Length);
        return new(frame, name, [], codes) { SourceName = sourceName };
    }

    /// <summary>The height at a place, bilinear between the four samples around it; NaN outside the samples or beside a void.</summary>
    public double HeightAt(GeoPoint point)
    {
        (double column, double row) = Frame.Locate(point);
        return HeightAt(column, row);
    }

    /// <summary>The cover code of the sample nearest to a place; 0 outside the window.</summary>
    public byte CoverAt(GeoPoint point)
    {
        (double column, double row) = Frame.Locate(point);
        return CoverAt(column, row);
    }

    /// <summary>Bilinear height at a position counted in samples; NaN outside the samples or beside a void.</summary>
    internal double HeightAt(double column, double row)
    {
        // A place on the edge may miss it by the error of its position, some millimetres.
        const double slack = 1e-3;
        GridFrame frame = Frame;
        if (!(column >= -slack && row >= -slack && column <= frame.Columns - 1 + slack && row <= frame.Rows - 1 + slack) || _heights.Length == 0)
        {
            return double.NaN;
        }

        column = Math.Clamp(column, 0, frame.Columns - 1);
        row = Math.Clamp(row, 0, frame.Rows - 1);
        int c = (int)column;
        int r = (int)row;
        double fc = column - c;
        double fr = row - r;
        int i = (r * frame.Columns) + c;

        // A neighbour of weight zero is not read: it may be a void, or not there at all.
        double top = fc == 0 ? _heights[i] : (_heights[i] * (1 - fc)) + (_heights[i + 1] * fc);
        if (fr == 0)
        {
            return top;
        }

        int j = i + frame.Columns;
        double bottom = fc == 0 ? _heights[j] : (_heights[j] * (1 - fc)) + (_heights[j + 1] * fc);
        return (top * (1 - fr)) + (bottom * fr);
    }

    /// <summary>Height of one sample; NaN outside the grid.</summary>
    internal float Sample(int column, int row) =>
        (uint)column < (uint)Frame.Columns && (uint)row < (uint)Frame.Rows && _heights.Length > 0 ? _heights[(row * Frame.Columns) + column] : float.NaN;

    /// <summary>Code of the nearest sample at a position counted in samples; 0 outside.</summary>
    internal byte CoverAt(double column, double row)
    {
        double c = Math.Floor(column + 0.5);
        double r = Math.Floor(row + 0.5);
        return c >= 0 && r >= 0 && c < Frame.Columns && r < Frame.Rows && _cover.Length > 0 ? _cover[((int)r * Frame.Columns) + (int)c] : (byte)0;
    }

    /// <summary>Name and grid.</summary>
    public override string ToString() => $"{Name}: {Frame}";

    /// <summary>Makes voids of what cannot be a height: eight at a time, for a tile has thirteen million.</summary>
    private static void VoidWhatCannotBe(Span<float> heights)
    {
        int i = 0;
        if (Vector256.IsHardwareAccelerated)
        {
            Vector256<float> lowest = Vector256.Create(LowestHeightMetres);
            Vector256<float> highest = Vector256.Create(HighestHeightMetres);
            Vector256<float> nothing = Vector256.Create(float.NaN);
            for (; i <= heights.Length - Vector256<float>.Count; i += Vector256<float>.Count)
            {
                Vector256<float> eight = Vector256.Create<float>(heights[i..]);
                Vector256<float> sound = Vector256.GreaterThanOrEqual(eight, lowest) & Vector256.LessThanOrEqual(eight, highest);
                Vector256.ConditionalSelect(sound, eight, nothing).CopyTo(heights[i..]);
            }
        }

        for (; i < heights.Length; i++)
        {
            if (!(heights[i] is >= LowestHeightMetres and <= HighestHeightMetres))
            {
                heights[i] = float.NaN;
            }
        }
    }

    private static void CheckCount(GridFrame frame, int count)
    {
        if ((long)frame.Columns * frame.Rows != count)
        {
            throw new ArgumentException($"A grid of {frame.Columns} × {frame.Rows} has one value for each sample, not {count}.", nameof(count));
        }
    }

    private string Hash()
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        string head = string.Create(
            CultureInfo.InvariantCulture,
            $"{Frame.UtmZone} {Frame.IsNorth} {Frame.OriginX:R} {Frame.OriginY:R} {Frame.StepX:R} {Frame.StepY:R} {Frame.Columns} {Frame.Rows} {Frame.SamplesAreAreas} {Kind} {_heights.Length} {_cover.Length}\n");
        hash.AppendData(System.Text.Encoding.UTF8.GetBytes(head));
        if (BitConverter.IsLittleEndian)
        {
            hash.AppendData(MemoryMarshal.AsBytes<float>(_heights));
        }
        else
        {
            Span<byte> four = stackalloc byte[4];
            foreach (float height in _heights)
            {
                BinaryPrimitives.WriteSingleLittleEndian(four, height);
                hash.AppendData(four);
            }
        }

        hash.AppendData(_cover);
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}
