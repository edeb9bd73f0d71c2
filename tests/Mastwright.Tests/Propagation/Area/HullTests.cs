using Mastwright.Propagation.Area;

namespace Mastwright.Tests.Propagation.Area;

/// <summary>The structures of a radial against a look at every point.</summary>
public sealed class HullTests
{
    private static readonly Gen<double[]> Ground = Gen.OneOf(
        Gen.Double[0, 300].Array[1, 200],
        Gen.Int[0, 3].Select(step => (double)step).Array[1, 200],
        Gen.Int[1, 400].Select(count => Enumerable.Range(0, count).Select(i => -1e-6 * i * i).ToArray()));

    [Fact]
    public void A_tangent_touches_the_point_that_is_seen_highest() => Gen.Select(Ground, Gen.Double[0.5, 40], Gen.Double[-500, 500]).Sample((ground, beyond, height) =>
    {
        UpperHull hull = new(ground.Length + 1);
        for (int i = 0; i < ground.Length; i++)
        {
            hull.Push(i + 1, i + 1, ground[i]);
        }

        double x = ground.Length + beyond;
        double highest = ground.Select((z, i) => (z - height) / (x - i - 1)).Max();
        int point = hull.Tangent(x, height);
        return Math.Abs(highest - ((ground[point - 1] - height) / (x - point))) <= 1e-9 * Math.Max(1, Math.Abs(highest));
    });

    [Fact]
    public void The_restarted_hull_knows_the_highest_above_a_line_up_to_any_point() =>
        Gen.Select(Ground, Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[-50, 50]).Sample((ground, restart, end, slope) =>
        {
            RestartedHull hull = new(ground.Length + 1);
            int first = 1 + (int)(restart * (ground.Length - 1));
            for (int i = 1; i <= ground.Length; i++)
            {
                if (i == 1 || i == first)
                {
                    hull.Restart(i, i, ground[i - 1]);
                }
                else
                {
                    hull.Push(i, i, ground[i - 1]);
                }
            }

            int upTo = first + (int)(end * (ground.Length - first));
            double highest = Enumerable.Range(first, upTo - first + 1).Max(i => ground[i - 1] - (slope * i));
            int point = hull.Highest(upTo, slope);
            return point >= first && point <= upTo && Math.Abs(highest - (ground[point - 1] - (slope * point))) <= 1e-9 * Math.Max(1, Math.Abs(highest));
        });

    [Fact]
    public void The_point_nearest_to_a_clear_ray_is_found_among_all() =>
        Gen.Select(Gen.Double[0, 300].Array[1, 700], Gen.Double[1, 400], Gen.Double[1, 400]).Sample((ground, left, right) =>
        {
            const double step = 30;
            double[] z = [0, .. ground];
            int last = ground.Length;
            double length = (last + 1.7) * step;
            double start = 300 + left;
            double slope = (300 + right - start) / length;
            NearestToRay ray = new(z.Length);
            ray.Clear();
            for (int k = 1; k <= last; k += 1 + (last / 9))
            {
                int found = ray.Find(z, step, k, length, start, slope);
                double best = Enumerable.Range(1, k).Max(i => Key(z[i] - start - (slope * i * step), i * step, length));
                if (!(Math.Abs(Key(z[found] - start - (slope * found * step), found * step, length) - best) <= 1e-12 * Math.Abs(best)))
                {
                    return false;
                }
            }

            return true;
        });

    private static double Key(double above, double x, double length) => above * Math.Abs(above) / (x * (length - x));
}
