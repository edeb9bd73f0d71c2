using Mastwright.Geodesy;

namespace Mastwright.Ground;

/// <summary>Takes the sites' own buildings and trees out of a profile over a surface model.</summary>
public static class SurfaceSites
{
    /// <summary>The profile with the bare ground of its two sites at its ends, and without what stands on them beside the ends.</summary>
    /// <param name="profile">The profile.</param>
    /// <param name="mosaic">The ground it was cut from.</param>
    /// <param name="fromGroundMetres">Bare ground at the start in metres; null leaves the start as it is.</param>
    /// <param name="toGroundMetres">Bare ground at the end in metres; null leaves the end as it is.</param>
    /// <remarks>
    /// <para>
    /// The ends get the heights given. Over a surface source the neighbouring points within one and a half samples of an end, which the
    /// site's own roof leaks into by interpolation, are lowered to the neighbourhood rule of <see cref="SiteGround"/>, never raised. What
    /// stands farther away is not the site's own and stays.
    /// </para>
    /// </remarks>
    public static TerrainProfile TakeOut(TerrainProfile profile, GroundMosaic mosaic, double? fromGroundMetres, double? toGroundMetres)
    {
        ArgumentNullException.ThrowIfNull(profile);
        ArgumentNullException.ThrowIfNull(mosaic);
        double[] heights = profile.HeightsMetres.ToArray();
        Clear(profile, mosaic, heights, fromStart: true);
        Clear(profile, mosaic, heights, fromStart: false);
        heights[0] = fromGroundMetres ?? heights[0];
        heights[^1] = toGroundMetres ?? heights[^1];
        return profile.WithHeights(heights);
    }

    private static void Clear(TerrainProfile profile, GroundMosaic mosaic, double[] heights, bool fromStart)
    {
        GeoPoint end = fromStart ? profile.From : profile.To;
        if (mosaic.HeightAt(end).Window is not { Kind: HeightKind.Surface } window)
        {
            return;
        }

        double reach = 1.5 * window.ResolutionMetres;
        for (int i = 1; i < heights.Length - 1 && i * profile.StepMetres <= reach; i++)
        {
            int point = fromStart ? i : heights.Length - 1 - i;
            double bare = SiteGround.BareHeight(mosaic, profile.PointAt(point));
            heights[point] = double.IsNaN(bare) ? heights[point] : Math.Min(heights[point], bare);
        }
    }
}
