using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Mastwright.Propagation.Area;

/// <summary>Eight numbers that are written or read one by one and worked on as a vector.</summary>
[InlineArray(Count)]
internal struct EightLanes
{
    internal const int Count = 8;

    private double first;

    /// <summary>All of them.</summary>
    internal Vector512<double> All
    {
        readonly get => Vector512.LoadUnsafe(in first);
        set => value.StoreUnsafe(ref first);
    }
}
