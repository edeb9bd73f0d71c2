using System.Collections.Immutable;
using Mastwright.Geodesy;

namespace Mastwright.Plans;

/// <summary>The places at which a path is tried for an end that may be off by a radius.</summary>
internal static class PlaceSamples
{
    /// <summary>The best guess first; then, if there is a radius, places around it.</summary>
    /// <param name="position">The place and its radius.</param>
    /// <param name="groundStepMetres">Step of the ground data: within one step four places at the radius are enough, beyond it two rings of eight.</param>
    internal static ImmutableArray<GeoPoint> Around(LocatedPoint position, double groundStepMetres)
    {
        if (position.RadiusMetres <= 0)
        {
            return [position.Point];
        }

        (double Share, int Count)[] rings = position.RadiusMetres <= groundStepMetres ? [(1, 4)] : [(0.5, 8), (1, 8)];
        ImmutableArray<GeoPoint>.Builder places = ImmutableArray.CreateBuilder<GeoPoint>();
        places.Add(position.Point);
        foreach ((double share, int count) in rings)
        {
            for (int i = 0; i < count; i++)
            {
                places.Add(Geodesic.Direct(position.Point, 360.0 * i / count, share * position.RadiusMetres));
            }
        }

        return places.ToImmutable();
    }
}
