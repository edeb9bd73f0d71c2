using Mastwright.Geodesy;
using Mastwright.Plans;

namespace Mastwright.Storage.Plans;

/// <summary>Checks that concern all stations together: keys are one identity each, and two stations do not share a place.</summary>
internal static class StationCheck
{
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
            // A station that stands twice was told as a key that stands twice.
            if (!owners.TryAdd(key, owner) && owners[key] != owner)
            {
                binding.Add(PlanPath.Find(root, owner + tail) ?? root, owner + tail, "plan-identity", $"The key '{key}' belongs to {owners[key]} too.", "one station for each key, present and former");
            }
        }
    }

    /// <summary>Stations are sorted into cells of eight metres, so that each is held only against those nearby.</summary>
    private static void Places(PlanBinding binding, PlanNode root, Plan plan)
    {
        Dictionary<long, Occupant> cells = [];
        foreach (Site site in plan.Sites)
        {
            Place($"sites/{site.Key}", site.Position.Point);
        }

        foreach (Neighbour neighbour in plan.Neighbours)
        {
            Place($"neighbours/{neighbour.Key}", neighbour.Position.Point);
        }

        void Place(string owner, GeoPoint point)
        {
            Occupant here = new(owner, point, null);
            if (Near(cells, here) is not { } other)
            {
                long cell = here.Cell(0);
                cells[cell] = here with { Next = cells.GetValueOrDefault(cell) };
            }
            else if (PlanPath.Find(root, owner + "/position") is { } node && binding.Notes.Count < PlanLimits.Problems)
            {
                binding.Notes.Add(PlanBinding.At(node, owner + "/position", "sites-at-one-place", $"This is within a metre of {other.Owner}: no link between the two can be judged.", "different positions, or two fit-outs of one site"));
            }
        }
    }

    private static Occupant? Near(Dictionary<long, Occupant> cells, Occupant here)
    {
        for (int i = 0; i < 27; i++)
        {
            // Within a cell no two are kept that are within a metre, so its list stays short.
            for (Occupant? other = cells.GetValueOrDefault(here.Cell(i)); other is not null; other = other.Next)
            {
                if (here.IsWithinAMetre(other))
                {
                    return other;
                }
            }
        }

        return null;
    }

    /// <summary>A station on a sphere, in metres: enough to tell a metre, everywhere, across the antimeridian and at the poles.</summary>
    private sealed record Occupant
    {
        private const double SphereMetres = 6_371_000;
        private const double CellMetres = 8;

        private readonly double x;
        private readonly double y;
        private readonly double z;

        internal Occupant(string owner, GeoPoint point, Occupant? next)
        {
            Owner = owner;
            Next = next;
            (double sinLatitude, double cosLatitude) = Math.SinCos(double.DegreesToRadians(point.LatitudeDegrees));
            (double sinLongitude, double cosLongitude) = Math.SinCos(double.DegreesToRadians(point.LongitudeDegrees));
            x = SphereMetres * cosLatitude * cosLongitude;
            y = SphereMetres * cosLatitude * sinLongitude;
            z = SphereMetres * sinLatitude;
        }

        internal string Owner { get; }

        internal Occupant? Next { get; init; }

        /// <summary>The cell of this place (0) or one of the 26 around it.</summary>
        internal long Cell(int around)
        {
            (int a, int b, int c) = (Step(around % 3), Step(around / 3 % 3), Step(around / 9));
            return Index(x, a) | (Index(y, b) << 21) | (Index(z, c) << 42);
        }

        internal bool IsWithinAMetre(Occupant other) =>
            ((x - other.x) * (x - other.x)) + ((y - other.y) * (y - other.y)) + ((z - other.z) * (z - other.z)) <= 1;

        private static int Step(int third) => third == 2 ? -1 : third;

        private static long Index(double metres, int step) => (long)Math.Floor(metres / CellMetres) + step + (1 << 20);
    }
}
