using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Ground;
using Mastwright.Quantities;

namespace Mastwright.Plans;

/// <summary>The bare ground at the foot of an antenna.</summary>
/// <param name="Metres">Height above sea level in metres.</param>
/// <param name="Findings">What is to be said of it.</param>
/// <param name="Assumptions">What was assumed.</param>
internal sealed record EndGround(Estimate Metres, ImmutableArray<Finding> Findings, ImmutableArray<Assumption> Assumptions)
{
    /// <summary>The plan's ground height if it gives one, else the source's.</summary>
    internal static EndGround At(GroundMosaic mosaic, TerrainProfile terrain, LinkStation station, bool isStart)
    {
        _ = mosaic;
        double source = isStart ? terrain.HeightsMetres[0] : terrain.HeightsMetres[^1];
        return new(station.GroundHeightMetres ?? Estimate.Exactly(source), [], []);
    }
}
