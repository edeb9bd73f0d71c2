using Mastwright.Network.Reach;

namespace Mastwright.Storage.Reach;

/// <summary>Cuts areas at the meridian of 180°, so that no part of one crosses it: RFC 7946 section 3.1.9.</summary>
internal static class AntimeridianCut
{
    /// <summary>The polygons of a patch, each its outer line and then its holes, in degrees of longitude (−180 to 180) and latitude.</summary>
    internal static IEnumerable<List<List<(double X, double Y)>>> Polygons(ReachPatch patch)
    {
        double about = patch.Outer.Places[0].LongitudeDegrees;
        List<List<(double X, double Y)>> rings =
        [
            .. patch.Holes.Prepend(patch.Outer).Select(ring => ring.Places
                .Select(place => (place.LongitudeDegrees + (360 * Math.Round((about - place.LongitudeDegrees) / 360)), place.LatitudeDegrees)).ToList()),
        ];

        // The longitudes run on past the meridian on whichever side the first place does not lie.
        double line = about >= 0 ? 180 : -180;
        bool crosses = rings[0].Exists(place => place.X < line) && rings[0].Exists(place => place.X >= line);
        if (!crosses)
        {
            return [rings];
        }

        // Beyond the line the longitudes belong to the other side of the earth.
        return [.. Side(rings, line, isWest: true, line < 0 ? 360 : 0), .. Side(rings, line, isWest: false, line > 0 ? -360 : 0)];
    }

    /// <summary>The part of a polygon on one side of a line.</summary>
    /// <remarks>
    /// A ring is walked with the area on its left. Where it leaves the side, the area goes on along the line: northwards on the western side, southwards on the eastern one, to the
    /// next place at which a ring comes back.
    /// </remarks>
    private static IEnumerable<List<List<(double X, double Y)>>> Side(List<List<(double X, double Y)>> rings, double line, bool isWest, double shift)
    {
        List<List<(double X, double Y)>> whole = [];
        List<List<(double X, double Y)>> chains = [];
        foreach (List<(double X, double Y)> ring in rings)
        {
            int first = Enumerable.Range(0, ring.Count).FirstOrDefault(i => !IsIn(ring[i]) && IsIn(ring[(i + 1) % ring.Count]), -1);
            if (first >= 0)
            {
                chains.AddRange(Chains(ring, first));
            }
            else if (IsIn(ring[0]))
            {
                whole.Add(ring);
            }
        }

        List<List<List<(double X, double Y)>>> polygons = [.. Joined(chains, isWest ? 1 : -1).Select(outer => new List<List<(double X, double Y)>> { outer })];
        foreach (List<(double X, double Y)> hole in whole)
        {
            polygons.Find(polygon => ReachContour.Holds(polygon[0], hole[0]))?.Add(hole);
        }

        return polygons.Select(polygon => polygon.ConvertAll(ring => ring.ConvertAll(place => (place.X + shift, place.Y))));

        bool IsIn((double X, double Y) place) => place.X < line == isWest;

        IEnumerable<List<(double X, double Y)>> Chains(List<(double X, double Y)> ring, int first)
        {
            List<(double X, double Y)>? chain = null;
            for (int step = 0; step < ring.Count; step++)
            {
                (double X, double Y) here = ring[(first + step) % ring.Count];
                (double X, double Y) there = ring[(first + step + 1) % ring.Count];
                if (IsIn(here) == IsIn(there))
                {
                    chain?.Add(there);
                    continue;
                }

                double latitude = here.Y + ((there.Y - here.Y) * (line - here.X) / (there.X - here.X));
                if (IsIn(there))
                {
                    chain = [(line, latitude), there];
                }
                else
                {
                    chain!.Add((line, latitude));
                    yield return chain;
                    chain = null;
                }
            }
        }
    }

    /// <summary>Rings of chains whose ends lie on the line: from the end of each to the next beginning along the line.</summary>
    private static IEnumerable<List<(double X, double Y)>> Joined(List<List<(double X, double Y)>> chains, int sign)
    {
        List<List<(double X, double Y)>> left = [.. chains];
        while (left.Count > 0)
        {
            List<(double X, double Y)> ring = [.. left[0]];
            List<(double X, double Y)> start = left[0];
            left.RemoveAt(0);
            while (left.Where(chain => Ahead(chain) >= 0 && Ahead(chain) < Ahead(start)).MinBy(Ahead) is { } next)
            {
                ring.AddRange(next);
                left.Remove(next);
            }

            yield return ring;

            // A ring closes when its own beginning is the next one along the line.
            double Ahead(List<(double X, double Y)> chain) => sign * (chain[0].Y - ring[^1].Y) is double ahead and >= 0 ? ahead : double.PositiveInfinity;
        }
    }
}
