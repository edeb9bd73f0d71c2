using System.Collections.Immutable;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;

namespace Mastwright.Plans;

/// <summary>How high an antenna's centre is above the ground at its foot.</summary>
internal static class EndHeight
{
    /// <summary>Least height above ground that a path is computed with, in metres: an antenna lying on the ground.</summary>
    internal const double LeastMetres = 0.1;

    /// <summary>Height above the ground, with its range; not below <see cref="LeastMetres"/>.</summary>
    /// <param name="mount">The height as given.</param>
    /// <param name="groundMetres">The ground at the foot, in metres above sea level.</param>
    /// <returns>The height, and whether it had to be raised because the antenna would be under the ground.</returns>
    internal static (Estimate Metres, bool IsBuried) AboveGround(MountHeight mount, Estimate groundMetres)
    {
        Estimate metres = mount.Above switch
        {
            HeightAbove.Roof => mount.Metres + (mount.RoofMetres ?? Estimate.Exactly(0)),
            HeightAbove.SeaLevel => mount.Metres - groundMetres,
            _ => mount.Metres,
        };
        bool isBuried = metres.Median < LeastMetres;
        return (metres.Map(value => Math.Max(value, LeastMetres)), isBuried);
    }

    /// <summary>The heights to try: the median first, then the ends of the range.</summary>
    internal static ImmutableArray<double> Tries(Estimate metres) =>
        metres.IsExact ? [metres.Median] : [metres.Median, metres.Low, metres.High];
}
