using System.Runtime.Intrinsics;

namespace Mastwright.Propagation.Area;

/// <summary>A place at a fixed distance and bearing from a cell: which samples of the grid it lies between, and what each weighs.</summary>
internal readonly struct SweepOffset
{
    /// <summary>The place so many cells to the east and south of any cell, when a row lies so far behind the one before.</summary>
    internal SweepOffset(double east, double south, int pitch)
    {
        double west = Math.Floor(east);
        double above = Math.Floor(south);
        float across = (float)(east - west);
        float down = (float)(south - above);
        NorthWest = ((int)above * pitch) + (int)west;
        Nearest = ((int)Math.Floor(south + 0.5) * pitch) + (int)Math.Floor(east + 0.5);
        Northern = Twice((1 - across) * (1 - down), across * (1 - down));
        Southern = Twice((1 - across) * down, across * down);
    }

    /// <summary>Added to the index of a cell: the index of the sample north-west of the place.</summary>
    internal int NorthWest { get; }

    /// <summary>The same for the cell that the place lies in.</summary>
    internal int Nearest { get; }

    /// <summary>Weights of the two northern samples, western first, eight times.</summary>
    internal Vector512<float> Northern { get; }

    /// <summary>Those of the southern two.</summary>
    internal Vector512<float> Southern { get; }

    private static Vector512<float> Twice(float west, float east) =>
        Vector512.ConditionalSelect(Vector512.Create(0xffffffffL).AsSingle(), Vector512.Create(west), Vector512.Create(east));
}
