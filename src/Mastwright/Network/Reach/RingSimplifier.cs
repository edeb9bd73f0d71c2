namespace Mastwright.Network.Reach;

/// <summary>Leaves out points of a ring that lie within a tolerance of the line between those that stay (Douglas and Peucker, 1973).</summary>
internal static class RingSimplifier
{
    /// <summary>The simplified ring; the ring itself where fewer than four points would be left.</summary>
    internal static List<(double X, double Y)> Simplify(List<(double X, double Y)> ring, double toleranceMetres)
    {
        // A ring has no ends: it is cut at its first point and at the one farthest from it.
        int far = 0;
        for (int i = 1; i < ring.Count; i++)
        {
            far = Square(ring[0], ring[i]) > Square(ring[0], ring[far]) ? i : far;
        }

        bool[] keep = new bool[ring.Count + 1];
        keep[0] = true;
        keep[far] = true;
        keep[ring.Count] = true;
        Stack<(int From, int To)> open = new([(0, far), (far, ring.Count)]);
        while (open.TryPop(out (int From, int To) span))
        {
            int worst = -1;
            double most = toleranceMetres;
            for (int i = span.From + 1; i < span.To; i++)
            {
                double off = Distance(ring[i], ring[span.From], ring[span.To % ring.Count]);
                if (off > most)
                {
                    most = off;
                    worst = i;
                }
            }

            if (worst >= 0)
            {
                keep[worst] = true;
                open.Push((span.From, worst));
                open.Push((worst, span.To));
            }
        }

        List<(double X, double Y)> simple = [.. ring.Where((_, i) => keep[i])];
        return simple.Count >= 4 ? simple : ring;
    }

    private static double Square((double X, double Y) a, (double X, double Y) b) => ((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y));

    /// <summary>Distance of a point from the stretch between two others.</summary>
    private static double Distance((double X, double Y) point, (double X, double Y) from, (double X, double Y) to)
    {
        double square = Square(from, to);
        double along = square == 0 ? 0 : Math.Clamp((((point.X - from.X) * (to.X - from.X)) + ((point.Y - from.Y) * (to.Y - from.Y))) / square, 0, 1);
        return Math.Sqrt(Square(point, (from.X + (along * (to.X - from.X)), from.Y + (along * (to.Y - from.Y)))));
    }
}
