using Mastwright.Ground;
using Mastwright.Propagation;

namespace Mastwright.Tests.Propagation;

public sealed class VirtualPointTests
{
    [Theory]
    [InlineData(100, 30, new double[] { 0, 30, 60, 70, 100 })]
    [InlineData(120, 30, new double[] { 0, 30, 60, 90, 120 })]
    [InlineData(61, 30, new double[] { 0, 30, 31, 61 })]
    [InlineData(60, 30, new double[] { 0, 30, 60 })]
    [InlineData(45, 30, new double[] { 0, 15, 45 })]
    [InlineData(30, 30, new double[] { 0, 15, 30 })]
    [InlineData(10, 30, new double[] { 0, 5, 10 })]
    public void Last_point_stands_one_step_before_the_receiver(double length, double step, double[] distances)
    {
        Assert.Equal(distances, VirtualPoint.DistancesMetres(length, step));
        Assert.Equal(distances.Length, VirtualPoint.Count(length, step));
    }

    [Fact]
    public void Distances_always_rise_and_the_gaps_are_at_most_a_step() =>
        Gen.Select(Gen.Double[1, 100_000], Gen.Double[10, 500]).Sample((length, step) =>
        {
            double[] distances = VirtualPoint.DistancesMetres(length, step);
            Assert.Equal(length, distances[^1]);
            for (int i = 1; i < distances.Length; i++)
            {
                Assert.InRange(distances[i] - distances[i - 1], double.Epsilon, step * (1 + 1e-6));
            }

            Assert.True(length <= step * 1.000001 || Math.Abs(length - step - distances[^2]) < 1e-6);
        });

    [Fact]
    public void A_step_that_divides_the_length_but_for_rounding_gives_no_twin_points()
    {
        // 0.1 and 0.3 are not whole in binary: 3 × 0.1 is a hair above 0.3.
        double[] distances = VirtualPoint.DistancesMetres(3 * 0.1, 0.1);
        Assert.Equal(4, distances.Length);
    }

    [Fact]
    public void A_radial_gives_the_path_to_any_receiver_on_it()
    {
        double[] heights = [0, 10, 20, 30, 40];
        double[] cover = [0, 5, 0, 7, 0];
        Zone[] zones = [Zone.Sea, Zone.Sea, Zone.Coast, Zone.Coast, Zone.Inland];
        PathProfile profile = VirtualPoint.FromRadial(110, 30, heights, cover, zones);
        Assert.Equal([0, 30, 60, 80, 110], profile.DistancesMetres.ToArray());
        Assert.Equal(80 / 3.0, profile.HeightsMetres[3], 1e-9);
        Assert.Equal(110 / 3.0, profile.HeightsMetres[4], 1e-9);
        Assert.Equal([0, 5, 0, 7, 0], profile.CoverMetres.ToArray());
        Assert.Equal(Zone.Inland, profile.Zones[4]);
    }

    [Fact]
    public void A_receiver_on_the_last_sample_gets_the_samples_as_they_are()
    {
        double[] heights = [3, 1, 4, 1, 5, 9];
        PathProfile profile = VirtualPoint.FromRadial(150, 30, heights, new double[6], new Zone[6]);
        Assert.Equal(heights, profile.HeightsMetres.ToArray());
    }

    [Fact]
    public void A_receiver_beyond_the_radial_is_refused()
    {
        Assert.Throws<ArgumentException>(() => VirtualPoint.FromRadial(151, 30, new double[6], new double[6], new Zone[6]));
        Assert.Throws<ArgumentException>(() => VirtualPoint.FromRadial(100, 30, new double[6], new double[5], new Zone[6]));
        Assert.Throws<ArgumentOutOfRangeException>(() => VirtualPoint.Count(1e9, 1));
    }
}
