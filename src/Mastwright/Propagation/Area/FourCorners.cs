using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Mastwright.Propagation.Area;

/// <summary>The numbers of a grid at eight places and at their neighbours to the east, south and south-east.</summary>
/// <remarks>Two neighbours are read as one number of twice the size, then taken apart: half the reading.</remarks>
internal readonly struct FourCorners
{
    // Those of the places in the lower half, those to the south in the upper.
    private readonly Vector512<float> western;
    private readonly Vector512<float> eastern;

    private FourCorners(Vector512<float> western, Vector512<float> eastern)
    {
        this.western = western;
        this.eastern = eastern;
    }

    /// <summary>Reads them.</summary>
    /// <param name="first">The first number in memory.</param>
    /// <param name="pitch">From a number to its southern neighbour.</param>
    /// <param name="places">Eight indices, all of whose four corners are in memory.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static FourCorners Read(ref float first, int pitch, ref long places)
    {
        Vector512<long> north = Pairs(ref first, ref places, 0);
        Vector512<long> south = Pairs(ref first, ref places, pitch);
        return new(
            Vector512.Narrow(north, south).AsSingle(),
            Vector512.Narrow(Vector512.ShiftRightLogical(north, 32), Vector512.ShiftRightLogical(south, 32)).AsSingle());
    }

    /// <summary>Lanes where any of the four is a certain number.</summary>
    internal ulong With(float number)
    {
        Vector512<float> all = Vector512.Create(number);
        ulong any = (Vector512.Equals(western, all) | Vector512.Equals(eastern, all)).ExtractMostSignificantBits();
        return (any | (any >> 8)) & 0xFF;
    }

    /// <summary>What lies between them, bilinear.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal Vector512<double> Between(Vector512<double> across, Vector512<double> down)
    {
        (Vector512<double> northWest, Vector512<double> southWest) = Vector512.Widen(western);
        (Vector512<double> northEast, Vector512<double> southEast) = Vector512.Widen(eastern);
        Vector512<double> north = northWest + (across * (northEast - northWest));
        Vector512<double> south = southWest + (across * (southEast - southWest));
        return north + (down * (south - north));
    }

    /// <summary>Indices in memory. Taken out of the vector one by one: what is written as one and read one by one at once, the processor waits for.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static ref long OneByOne(Vector512<long> places, Span<long> room)
    {
        room[7] = places[7];
        room[6] = places[6];
        room[5] = places[5];
        room[4] = places[4];
        room[3] = places[3];
        room[2] = places[2];
        room[1] = places[1];
        room[0] = places[0];
        return ref MemoryMarshal.GetReference(room);
    }

    /// <summary>A number and its eastern neighbour, the number in the lower half, at eight places.</summary>
    /// <remarks>The offset is not added to the reference: one that points outside its array is lost when the array is moved in memory.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Vector512<long> Pairs(ref float first, ref long places, nint offset) => Vector512.Create(
        Pair(ref first, (nint)Unsafe.Add(ref places, 0) + offset),
        Pair(ref first, (nint)Unsafe.Add(ref places, 1) + offset),
        Pair(ref first, (nint)Unsafe.Add(ref places, 2) + offset),
        Pair(ref first, (nint)Unsafe.Add(ref places, 3) + offset),
        Pair(ref first, (nint)Unsafe.Add(ref places, 4) + offset),
        Pair(ref first, (nint)Unsafe.Add(ref places, 5) + offset),
        Pair(ref first, (nint)Unsafe.Add(ref places, 6) + offset),
        Pair(ref first, (nint)Unsafe.Add(ref places, 7) + offset));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static long Pair(ref float first, nint place) => Unsafe.ReadUnaligned<long>(ref Unsafe.As<float, byte>(ref Unsafe.Add(ref first, place)));
}
