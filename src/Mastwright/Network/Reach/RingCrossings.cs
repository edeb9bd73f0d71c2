namespace Mastwright.Network.Reach;

/// <summary>Finds rings that cross or touch themselves or one another, or all but touch.</summary>
internal static class RingCrossings
{
    /// <summary>Numbers of the rings that do.</summary>
    /// <param name="rings">The rings.</param>
    /// <param name="metres">Side of the squares by which stretches are looked up, of the order of their length.</param>
    /// <param name="clearanceMetres">What counts as touching: above the rounding of whatever happens to the rings afterwards.</param>
    internal static HashSet<int> Find(IReadOnlyList<List<(double X, double Y)>> rings, double metres, double clearanceMetres = 0)
    {
        Dictionary<(long X, long Y), List<(int Ring, int Stretch)>> squares = [];
        HashSet<int> crossing = [];
        for (int ring = 0; ring < rings.Count; ring++)
        {
            for (int stretch = 0; stretch < rings[ring].Count; stretch++)
            {
                foreach ((long X, long Y) square in Squares(rings[ring], stretch, metres))
                {
                    if (!squares.TryGetValue(square, out List<(int Ring, int Stretch)>? here))
                    {
                        squares[square] = here = [];
                    }

                    foreach ((int otherRing, int otherStretch) in here)
                    {
                        if (!IsNeighbour(rings, ring, stretch, otherRing, otherStretch) && Meet(rings[ring], stretch, rings[otherRing], otherStretch, clearanceMetres))
                        {
                            crossing.Add(ring);
                            crossing.Add(otherRing);
                        }
                    }

                    here.Add((ring, stretch));
                }
            }
        }

        return crossing;
    }

    private static IEnumerable<(long X, long Y)> Squares(List<(double X, double Y)> ring, int stretch, double metres)
    {
        (double x1, double y1) = ring[stretch];
        (double x2, double y2) = ring[(stretch + 1) % ring.Count];
        for (long x = (long)Math.Floor(Math.Min(x1, x2) / metres); x <= (long)Math.Floor(Math.Max(x1, x2) / metres); x++)
        {
            for (long y = (long)Math.Floor(Math.Min(y1, y2) / metres); y <= (long)Math.Floor(Math.Max(y1, y2) / metres); y++)
            {
                yield return (x, y);
            }
        }
    }

    /// <summary>The same stretch, or one that shares an end with it.</summary>
    private static bool IsNeighbour(IReadOnlyList<List<(double X, double Y)>> rings, int ring, int stretch, int otherRing, int otherStretch)
    {
        int count = rings[ring].Count;
        int apart = Math.Abs(stretch - otherStretch);
        return ring == otherRing && (apart <= 1 || apart == count - 1);
    }

    private static bool Meet(List<(double X, double Y)> one, int i, List<(double X, double Y)> other, int j, double clearance)
    {
        (double X, double Y) a = one[i];
        (double X, double Y) b = one[(i + 1) % one.Count];
        (double X, double Y) c = other[j];
        (double X, double Y) d = other[(j + 1) % other.Count];

        // Stretches of one straight line lie on no side of each other, and still meet only where their boxes do.
        return Overlap(a.X, b.X, c.X, d.X, clearance) && Overlap(a.Y, b.Y, c.Y, d.Y, clearance)
            && Side(a, b, c, clearance) * Side(a, b, d, clearance) <= 0 && Side(c, d, a, clearance) * Side(c, d, b, clearance) <= 0;
    }

    private static bool Overlap(double a, double b, double c, double d, double clearance) =>
        Math.Max(a, b) + clearance >= Math.Min(c, d) && Math.Max(c, d) + clearance >= Math.Min(a, b);

    private static int Side((double X, double Y) a, (double X, double Y) b, (double X, double Y) point, double clearance)
    {
        double twice = ((b.X - a.X) * (point.Y - a.Y)) - ((point.X - a.X) * (b.Y - a.Y));
        return Math.Abs(twice) <= clearance * Math.Sqrt(((b.X - a.X) * (b.X - a.X)) + ((b.Y - a.Y) * (b.Y - a.Y))) ? 0 : Math.Sign(twice);
    }
}
