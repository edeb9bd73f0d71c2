using System.Runtime.Intrinsics;

namespace Mastwright.Propagation.Area;

/// <summary>Chooses the widest vectors that this processor has.</summary>
internal static class SweepSolver
{
    /// <summary>Bits of those vectors; 0 where there are none: each cell is then solved in plain double precision.</summary>
    internal static int Bits => Vector512.IsHardwareAccelerated ? 512 : Vector256.IsHardwareAccelerated ? 256 : Vector128.IsHardwareAccelerated ? 128 : 0;

    /// <summary>The closed form at a width; widths that the processor lacks are correct and slow. Null at 0.</summary>
    internal static Action<SweepBatch>? Of(int bits, in SweepTerms terms, bool hasZones) => bits switch
    {
        512 => new VectorClosedForm<Lanes512>(in terms, hasZones).Solve,
        256 => new VectorClosedForm<Lanes256>(in terms, hasZones).Solve,
        128 => new VectorClosedForm<Lanes128>(in terms, hasZones).Solve,
        _ => null,
    };
}
