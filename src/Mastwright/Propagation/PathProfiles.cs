using Mastwright.Ground;

namespace Mastwright.Propagation;

/// <summary>From ground that was cut along a path to the profile that the loss models read.</summary>
public static class PathProfiles
{
    /// <summary>The profile of complete ground: distances, heights, cover heights and zones as they are.</summary>
    /// <exception cref="ArgumentException">The ground has gaps: ask <see cref="TerrainProfile.IsComplete"/> first.</exception>
    public static PathProfile From(TerrainProfile ground)
    {
        ArgumentNullException.ThrowIfNull(ground);
        if (!ground.IsComplete)
        {
            throw new ArgumentException($"The ground has gaps: {string.Join("; ", ground.Gaps)}.", nameof(ground));
        }

        double[] distances = new double[ground.Count];
        for (int i = 0; i < distances.Length; i++)
        {
            distances[i] = ground.DistanceMetres(i);
        }

        return PathProfile.FromSamples(distances, ground.HeightsMetres, ground.CoverHeightsMetres, ground.Zones);
    }
}
