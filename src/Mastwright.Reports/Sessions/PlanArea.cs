using Mastwright.Geodesy;
using Mastwright.Plans;

namespace Mastwright.Reports.Sessions;

/// <summary>The area that a plan's stations stand in, with the reach of their vagueness.</summary>
internal static class PlanArea
{
    internal static GeoBounds? Of(Plan plan)
    {
        LocatedPoint[] places = [.. plan.Sites.Select(site => site.Position), .. plan.Neighbours.Select(neighbour => neighbour.Position)];
        return places.Length == 0
            ? null
            : GeoBounds.Of([.. places.Select(place => place.Point)]).Expanded(Math.Max(100, places.Max(place => place.RadiusMetres)));
    }
}
