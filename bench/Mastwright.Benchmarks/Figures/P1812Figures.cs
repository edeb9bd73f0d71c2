using Mastwright.Ground;
using Mastwright.Propagation;

namespace Mastwright.Benchmarks.Figures;

/// <summary>The loss of one path, with every intermediate, by the number of its points.</summary>
internal static class P1812Figures
{
    /// <summary>Bounds in µs: below the 52 ns a point of the first trial of the equations, with room for a slower processor.</summary>
    private static readonly (int Points, double BoundMicroseconds)[] Cases = [(100, 2), (500, 4), (1_500, 10)];

    internal static IEnumerable<Figure> Measure()
    {
        foreach ((int points, double bound) in Cases)
        {
            PathProfile profile = Hills(points);
            P1812Input input = new()
            {
                FrequencyHz = 868e6,
                TimePercent = 10,
                TransmitterHeightMetres = 10,
                ReceiverHeightMetres = 6,
                PathCentreLatitudeDegrees = 46.4,
            };
            double sum = 0;
            yield return Sample.Time($"P.1812 path of {points} points", "µs", bound, 201, () => sum += P1812.Evaluate(profile, input).LbDb);
            GC.KeepAlive(sum);
        }
    }

    /// <summary>Hills with woods on them and a strait in the middle: every branch of the equations has something to do.</summary>
    internal static PathProfile Hills(int points)
    {
        const double step = 30;
        double[] distances = new double[points];
        double[] heights = new double[points];
        double[] cover = new double[points];
        Zone[] zones = new Zone[points];
        for (int i = 0; i < points; i++)
        {
            distances[i] = i * step;
            bool isSea = i > points * 0.45 && i < points * 0.55;
            heights[i] = isSea ? 0 : 60 + (40 * Math.Sin(i * 0.045)) + (9 * Math.Sin(i * 0.31)) + (i % 7);
            cover[i] = !isSea && i % 40 > 25 ? 15 : 0;
            zones[i] = isSea ? Zone.Sea : Zone.Coast;
        }

        return PathProfile.FromSamples(distances, heights, cover, zones);
    }
}
