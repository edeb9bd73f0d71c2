using System.Collections.Immutable;
using Mastwright.Geodesy;

namespace Mastwright.Plans;

/// <summary>The places at which a path is tried for an end that may be off by a radius.</summary>
internal static class PlaceSamples
{
    private const int PlacesOnRing = 8;

    /// <summary>The best guess first; then, if the radius is more than a step of the ground data, two rings of eight places around it.</summary>
    /// <param name="position">The place and its radius.</param>
    /// <param name="groundStepMetres">Step of the ground data. Within one step the data tell no place from another: location variability stands for what differs there.</param>
    internal static ImmutableArray<GeoPoint> Around(LocatedPoint position, double groundStepMetres)
    {
        if (position.RadiusMetres <= groundStepMetres)
        {
            return [position.Point];
        }

        ImmutableArray<GeoPoint>.Builder places = ImmutableArray.CreateBuilder<GeoPoint>();
        places.Add(position.Point);
        foreach (double share in (double[])[0.5, 1])
        {
            for (int i = 0; i < PlacesOnRing; i++)
            {
                places.Add(Geodesic.Direct(position.Point, 360.0 * i / PlacesOnRing, share * position.RadiusMetres));
            }
        }

        return places.ToImmutable();
    }
}
