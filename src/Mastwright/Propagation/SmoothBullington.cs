namespace Mastwright.Propagation;

/// <summary>Bullington's edge over the smooth Earth, at the distances of the profile's points.</summary>
/// <remarks>
/// Height is zero everywhere, so each slope and v have one maximum over the distance, found by bisection over the points. For the slope
/// C(d − x) − h/x that is plain. For v, with w = x/(d − x), the derivative vanishes where (a − b w)(1 + w)² = 2K w(w − 1), a cubic
/// with one change of sign for positive a, b, K: one root.
/// </remarks>
internal static class SmoothBullington
{
    internal static double LossDb(ReadOnlySpan<double> x, double transmitterHeight, double receiverHeight, double radius, double wavelength)
    {
        double length = x[^1];
        double c = 0.5 / radius;
        double line = (receiverHeight - transmitterHeight) / length;
        double slopeT = LargestSlope(x, transmitterHeight, c, Math.Sqrt(transmitterHeight / c), false);
        double slopeR = LargestSlope(x, receiverHeight, c, length - Math.Sqrt(receiverHeight / c), true);
        double key = slopeT < line ? LargestClearanceKey(x, transmitterHeight, line, c) : double.NegativeInfinity;
        return new BullingtonReading(slopeT, slopeR, key).LossDb(length, line, wavelength);
    }

    private static double LargestSlope(ReadOnlySpan<double> x, double height, double c, double best, bool fromFarEnd)
    {
        int last = x.Length - 1;
        int above = x[1..last].BinarySearch(best);
        above = Math.Clamp((above < 0 ? ~above : above) + 1, 1, last - 1);
        int below = Math.Max(above - 1, 1);
        return Math.Max(Slope(x, below, height, c, fromFarEnd), Slope(x, above, height, c, fromFarEnd));
    }

    private static double Slope(ReadOnlySpan<double> x, int i, double height, double c, bool fromFarEnd)
    {
        double near = fromFarEnd ? x[^1] - x[i] : x[i];
        return (c * (x[^1] - near)) - (height / near);
    }

    private static double LargestClearanceKey(ReadOnlySpan<double> x, double transmitterHeight, double line, double c)
    {
        int low = 1;
        int high = x.Length - 2;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (Key(x, middle + 1, transmitterHeight, line, c) >= Key(x, middle, transmitterHeight, line, c))
            {
                low = middle + 1;
            }
            else
            {
                high = middle;
            }
        }

        return Key(x, low, transmitterHeight, line, c);
    }

    private static double Key(ReadOnlySpan<double> x, int i, double transmitterHeight, double line, double c)
    {
        double product = x[i] * (x[^1] - x[i]);
        double above = (c * product) - transmitterHeight - (line * x[i]);
        return above * Math.Abs(above) / product;
    }
}
