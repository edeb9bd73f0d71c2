using System.Runtime.InteropServices;

namespace Mastwright.Records.Store.Columns;

/// <summary>Receptions of one receiver as columns of bytes, in the order in which they came.</summary>
/// <remarks>
/// In this computer's byte order, as the file does not leave it. Levels and ratios are thousandths of a decibel in four bytes where all of a piece
/// come back from them to the last bit, as what radios report does; else eight bytes. A byte at the front says which.
/// </remarks>
internal sealed class ColumnPiece
{
    private const int Unknown = int.MinValue;
    private readonly List<ColumnRow> rows = [];

    internal int Count => rows.Count;

    internal long FirstMicroseconds { get; private set; } = long.MaxValue;

    internal long LastMicroseconds { get; private set; } = long.MinValue;

    internal void Add(in ColumnRow row)
    {
        rows.Add(row);
        FirstMicroseconds = Math.Min(FirstMicroseconds, row.TimeMicroseconds);
        LastMicroseconds = Math.Max(LastMicroseconds, row.TimeMicroseconds);
    }

    /// <summary>The senders, four bytes each.</summary>
    internal byte[] Senders() => MemoryMarshal.AsBytes(rows.Select(row => row.LastSender).ToArray().AsSpan()).ToArray();

    /// <summary>Everything else.</summary>
    internal byte[] Rest()
    {
        using MemoryStream bytes = new();
        bool isShort = rows.TrueForAll(row => IsThousandths(row.LevelDbm) && IsThousandths(row.SnrDb));
        bytes.WriteByte(isShort ? (byte)0 : (byte)1);
        void Put<T>(Func<ColumnRow, T> value)
            where T : unmanaged => bytes.Write(MemoryMarshal.AsBytes(rows.Select(value).ToArray().AsSpan()));
        Put(row => row.TimeMicroseconds);
        Put(row => row.Originator);
        Put(row => row.Counter);
        if (isShort)
        {
            Put(row => Thousandths(row.LevelDbm));
            Put(row => Thousandths(row.SnrDb));
        }
        else
        {
            Put(row => row.LevelDbm);
            Put(row => row.SnrDb);
        }

        Put(row => (short)row.Hops);
        Put(row => (byte)row.SpreadingFactor);
        Put(row => row.LevelIsSignalPower ? (byte)1 : (byte)0);
        return bytes.ToArray();
    }

    private static bool IsThousandths(double value) => double.IsNaN(value) || (Math.Abs(value) < 1e6 && BitConverter.DoubleToInt64Bits(Math.Round(value * 1000) / 1000) == BitConverter.DoubleToInt64Bits(value));

    private static int Thousandths(double value) => double.IsNaN(value) ? Unknown : (int)Math.Round(value * 1000);

    /// <summary>A piece that was kept.</summary>
    internal readonly ref struct Kept
    {
        private readonly int receiver;
        private readonly bool isShort;
        private readonly ReadOnlySpan<int> senders;
        private readonly ReadOnlySpan<byte> rest;
        private readonly int levelsAt;

        internal Kept(int receiver, ReadOnlySpan<int> senders, ReadOnlySpan<byte> rest)
        {
            this.receiver = receiver;
            this.senders = senders;
            isShort = rest[0] == 0;
            this.rest = rest[1..];
            levelsAt = 20 * senders.Length;
            if (this.rest.Length != (20 + (isShort ? 8 : 16) + 4) * senders.Length)
            {
                throw new InvalidDataException("A piece of columns is not as long as it says.");
            }
        }

        internal long TimeMicroseconds(int row) => MemoryMarshal.Read<long>(rest[(8 * row)..]);

        internal ColumnRow Row(int row)
        {
            int count = senders.Length;
            int size = isShort ? 4 : 8;
            int after = levelsAt + (2 * size * count);
            return new()
            {
                Receiver = receiver,
                TimeMicroseconds = TimeMicroseconds(row),
                LastSender = senders[row],
                Originator = MemoryMarshal.Read<int>(rest[((8 * count) + (4 * row))..]),
                Counter = MemoryMarshal.Read<long>(rest[((12 * count) + (8 * row))..]),
                LevelDbm = Decibels(levelsAt + (size * row)),
                SnrDb = Decibels(levelsAt + (size * (count + row))),
                Hops = MemoryMarshal.Read<short>(rest[(after + (2 * row))..]),
                SpreadingFactor = rest[after + (2 * count) + row],
                LevelIsSignalPower = rest[after + (3 * count) + row] != 0,
            };
        }

        private double Decibels(int at)
        {
            if (!isShort)
            {
                return MemoryMarshal.Read<double>(rest[at..]);
            }

            int thousandths = MemoryMarshal.Read<int>(rest[at..]);
            return thousandths == Unknown ? double.NaN : thousandths / 1000.0;
        }
    }
}
