using System.Buffers;
using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Runtime.InteropServices;
using System.Text;
using Mastwright.Ground;

namespace Mastwright.Network.Reach;

/// <summary>Reads bytes of a stored piece: so many, from an offset.</summary>
/// <param name="offset">First byte wanted.</param>
/// <param name="into">Room for the bytes wanted.</param>
public delegate void PieceBytes(long offset, Span<byte> into);

/// <summary>A piece of a field as bytes, and rows of it out of such bytes without reading the others.</summary>
/// <remarks>
/// Layout, all little-endian: "MWREACH1"; first row, rows, cells and bytes of the gaps in four bytes each; of each row and once more its first
/// column and where it starts in four each; the gaps as lines of text; losses and elevations in four bytes a cell; flags in one.
/// </remarks>
public sealed class ReachPieceBytes
{
    private const int HeadBytes = 24;

    private readonly PieceBytes read;
    private readonly int firstRow;
    private readonly int cells;
    private readonly long samplesAt;
    private readonly (int Column, int Start)[] runs;

    /// <summary>Opens a stored piece.</summary>
    /// <param name="read">Its bytes.</param>
    /// <exception cref="InvalidDataException">They are no piece.</exception>
    public ReachPieceBytes(PieceBytes read)
    {
        ArgumentNullException.ThrowIfNull(read);
        this.read = read;
        Span<byte> head = stackalloc byte[HeadBytes];
        read(0, head);
        if (!head.StartsWith(Mark))
        {
            throw new InvalidDataException("These bytes are no piece of a reach field.");
        }

        firstRow = BinaryPrimitives.ReadInt32LittleEndian(head[8..]);
        runs = new (int, int)[BinaryPrimitives.ReadInt32LittleEndian(head[12..]) + 1];
        cells = BinaryPrimitives.ReadInt32LittleEndian(head[16..]);
        byte[] gaps = new byte[BinaryPrimitives.ReadInt32LittleEndian(head[20..])];
        byte[] table = new byte[8 * runs.Length];
        read(HeadBytes, table);
        for (int i = 0; i < runs.Length; i++)
        {
            runs[i] = (BinaryPrimitives.ReadInt32LittleEndian(table.AsSpan(8 * i)), BinaryPrimitives.ReadInt32LittleEndian(table.AsSpan((8 * i) + 4)));
        }

        read(HeadBytes + table.Length, gaps);
        Gaps = [.. Encoding.UTF8.GetString(gaps).Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(Gap)];
        samplesAt = HeadBytes + table.Length + gaps.Length;
    }

    /// <summary>Ground that the piece lacks, by tile.</summary>
    public ImmutableArray<ReachGap> Gaps { get; }

    private static ReadOnlySpan<byte> Mark => "MWREACH1"u8;

    /// <summary>A piece as bytes.</summary>
    public static byte[] Of(ReachPiece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        byte[] gaps = Encoding.UTF8.GetBytes(string.Concat(piece.Gaps.Select(gap => FormattableString.Invariant($"{gap.Tile}\t{(gap.IsVoid ? 1 : 0)}\t{gap.Cells}\t{gap.NearestMetres:R}\t{gap.BearingDegrees:R}\n"))));
        int count = piece.Flags.Length;
        byte[] bytes = new byte[HeadBytes + (8 * piece.Runs.Length) + gaps.Length + (9L * count)];
        Span<byte> rest = bytes;
        Mark.CopyTo(rest);
        BinaryPrimitives.WriteInt32LittleEndian(rest[8..], piece.FirstRow);
        BinaryPrimitives.WriteInt32LittleEndian(rest[12..], piece.Runs.Length - 1);
        BinaryPrimitives.WriteInt32LittleEndian(rest[16..], count);
        BinaryPrimitives.WriteInt32LittleEndian(rest[20..], gaps.Length);
        rest = rest[HeadBytes..];
        foreach ((int column, int start) in piece.Runs)
        {
            BinaryPrimitives.WriteInt32LittleEndian(rest, column);
            BinaryPrimitives.WriteInt32LittleEndian(rest[4..], start);
            rest = rest[8..];
        }

        gaps.CopyTo(rest);
        rest = rest[gaps.Length..];
        Put(piece.LossDb, rest);
        Put(piece.ElevationDegrees, rest[(4 * count)..]);
        MemoryMarshal.AsBytes(piece.Flags).CopyTo(rest[(8 * count)..]);
        return bytes;
    }

    /// <summary>Rows of a field out of its pieces, as a field of their own.</summary>
    /// <param name="pieces">How the field was cut.</param>
    /// <param name="parts">All its pieces.</param>
    /// <param name="firstRow">First row wanted.</param>
    /// <param name="rows">Number of rows wanted, 1 or more.</param>
    /// <param name="spent">A field that nobody asks any more: its arrays are used again; null for new ones.</param>
    /// <remarks>The gaps are those of the whole field.</remarks>
    public static ReachField Rows(ReachPieces pieces, IReadOnlyList<ReachPieceBytes> parts, int firstRow, int rows, ReachField? spent = null)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        ArgumentNullException.ThrowIfNull(parts);
        GridFrame band = pieces.Grid.Part(0, firstRow, pieces.Grid.Columns, rows);
        (float[] loss, float[] elevation, ReachFlags[] flags) = ReachField.ArraysFor(band.Columns * band.Rows, spent);
        Array.Fill(loss, float.NaN);
        Array.Fill(elevation, float.NaN);
        Array.Fill(flags, ReachFlags.Outside);
        foreach (ReachPieceBytes part in parts)
        {
            part.Lay(firstRow, band, loss, elevation, flags);
        }

        return ReachField.FromCells(pieces.Input, band, loss, elevation, flags, GapList.Joined(parts.SelectMany(part => part.Gaps)), pieces.StepMetres);
    }

    private void Lay(int bandRow, GridFrame band, float[] loss, float[] elevation, ReachFlags[] flags)
    {
        int from = Math.Max(bandRow - firstRow, 0);
        int to = Math.Min(bandRow + band.Rows - firstRow, runs.Length - 1);
        if (from >= to || runs[from].Start == runs[to].Start)
        {
            return;
        }

        int start = runs[from].Start;
        int count = runs[to].Start - start;
        float[] losses = ArrayPool<float>.Shared.Rent(count);
        float[] elevations = ArrayPool<float>.Shared.Rent(count);
        byte[] marks = ArrayPool<byte>.Shared.Rent(count);
        Get(losses.AsSpan(0, count), samplesAt + (4L * start));
        Get(elevations.AsSpan(0, count), samplesAt + (4L * cells) + (4L * start));
        read(samplesAt + (8L * cells) + start, marks.AsSpan(0, count));
        for (int row = from; row < to; row++)
        {
            int at = ((firstRow + row - bandRow) * band.Columns) + runs[row].Column;
            for (int i = runs[row].Start - start; i < runs[row + 1].Start - start; i++, at++)
            {
                ReachFlags mark = (ReachFlags)marks[i];
                if ((mark & ReachFlags.Outside) == ReachFlags.None)
                {
                    (loss[at], elevation[at], flags[at]) = (losses[i], elevations[i], mark);
                }
            }
        }

        ArrayPool<float>.Shared.Return(losses);
        ArrayPool<float>.Shared.Return(elevations);
        ArrayPool<byte>.Shared.Return(marks);
    }

    private static void Put(ReadOnlySpan<float> values, Span<byte> bytes)
    {
        MemoryMarshal.AsBytes(values).CopyTo(bytes);
        Turn(MemoryMarshal.Cast<byte, int>(bytes[..(4 * values.Length)]));
    }

    private void Get(Span<float> values, long offset)
    {
        read(offset, MemoryMarshal.AsBytes(values));
        Turn(MemoryMarshal.Cast<float, int>(values));
    }

    /// <summary>Turns the bytes of each number round on a big-endian machine.</summary>
    private static void Turn(Span<int> values)
    {
        if (!BitConverter.IsLittleEndian)
        {
            BinaryPrimitives.ReverseEndianness(values, values);
        }
    }

    private static ReachGap Gap(string line)
    {
        string[] parts = line.Split('\t');
        return new(
            parts[0],
            parts[1] == "1",
            int.Parse(parts[2], System.Globalization.CultureInfo.InvariantCulture),
            double.Parse(parts[3], System.Globalization.CultureInfo.InvariantCulture),
            double.Parse(parts[4], System.Globalization.CultureInfo.InvariantCulture));
    }
}
