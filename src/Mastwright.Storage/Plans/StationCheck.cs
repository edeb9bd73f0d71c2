using Mastwright.Geodesy;
using Mastwright.Plans;

namespace Mastwright.Storage.Plans;

/// <summary>Checks that concern all stations together: keys are one identity each, and two stations do not share a place.</summary>
internal static class StationCheck
{
    private const double SphereMetres = 6_371_000;

    /// <summary>Adds a problem for each key that means two stations, and a note for each station at another's place.</summary>
    internal static void Check(PlanBinding binding, PlanNode root, Plan plan)
    {
        Identities(binding, root, plan);
        Places(binding, root, plan);
    }

    private static void Identities(PlanBinding binding, PlanNode root, Plan plan)
    {
        Dictionary<string, string> owners = new(StringComparer.Ordinal);
        foreach (Site site in plan.Sites)
        {
            Claim(site.Key, $"sites/{site.Key}", "");
        }

        foreach (Neighbour neighbour in plan.Neighbours)
        {
            Claim(neighbour.Key, $"neighbours/{neighbour.Key}", "");
        }

        foreach (Site site in plan.Sites)
        {
            foreach (string key in site.Formerly)
            {
                Claim(key, $"sites/{site.Key}", "/formerly");
            }
        }

        foreach (Neighbour neighbour in plan.Neighbours)
        {
            foreach (string key in neighbour.Formerly)
            {
                Claim(key, $"neighbours/{neighbour.Key}", "/formerly");
            }
        }

        void Claim(string key, string owner, string tail)
        {
            if (!owners.TryAdd(key, owner))
            {
                binding.Add(PlanPath.Find(root, owner + tail) ?? root, owner + tail, "plan-identity", $"The key '{key}' belongs to {owners[key]} too.", "one station for each key, present and former");
            }
        }
    }

    private static void Places(PlanBinding binding, PlanNode root, Plan plan)
    {
        Dictionary<(long X, long Y, long Z), (string Owner, GeoPoint Point)> cells = [];
        foreach ((string owner, GeoPoint point) in plan.Sites.Select(site => ($"sites/{site.Key}", site.Position.Point))
            .Concat(plan.Neighbours.Select(neighbour => ($"neighbours/{neighbour.Key}", neighbour.Position.Point))))
        {
            (double x, double y, double z) = OnSphere(point);
            string? other = null;
            for (int i = 0; i < 27 && other is null; i++)
            {
                (long, long, long) cell = ((long)Math.Floor(x) + (i % 3) - 1, (long)Math.Floor(y) + (i / 3 % 3) - 1, (long)Math.Floor(z) + (i / 9) - 1);
                if (cells.TryGetValue(cell, out (string Owner, GeoPoint Point) near))
                {
                    (double u, double v, double w) = OnSphere(near.Point);
                    other = ((x - u) * (x - u)) + ((y - v) * (y - v)) + ((z - w) * (z - w)) <= 1 ? near.Owner : null;
                }
            }

            if (other is null)
            {
                cells.TryAdd(((long)Math.Floor(x), (long)Math.Floor(y), (long)Math.Floor(z)), (owner, point));
            }
            else if (PlanPath.Find(root, owner + "/position") is { } node && binding.Notes.Count < PlanLimits.Problems)
            {
                binding.Notes.Add(PlanBinding.At(node, owner + "/position", "sites-at-one-place", $"This is within a metre of {other}: no link between the two can be judged.", "different positions, or two fit-outs of one site"));
            }
        }
    }

    /// <summary>The place on a sphere in metres: enough to tell a metre, everywhere, across the antimeridian and at the poles.</summary>
    private static (double X, double Y, double Z) OnSphere(GeoPoint point)
    {
        (double sinLatitude, double cosLatitude) = Math.SinCos(double.DegreesToRadians(point.LatitudeDegrees));
        (double sinLongitude, double cosLongitude) = Math.SinCos(double.DegreesToRadians(point.LongitudeDegrees));
        return (SphereMetres * cosLatitude * cosLongitude, SphereMetres * cosLatitude * sinLongitude, SphereMetres * sinLatitude);
    }
}
