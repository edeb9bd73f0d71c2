using Mastwright.Ground;
using Mastwright.Propagation;

namespace Mastwright.Tests.Propagation;

public sealed class HorizonAngleTests
{
    [Fact]
    public void It_is_the_angle_that_the_analysis_of_clearance_gives() =>
        Gen.Select(Gen.Double[0, 400].Array[3, 40], Gen.Double[0, 20].Array[40], Gen.Double[1, 60], Gen.Double[1, 60], Gen.Double[0.6, 3]).Sample((heights, covers, hts, hrs, k) =>
        {
            PathProfile profile = PathProfile.FromSamples(
                [.. heights.Select((_, i) => 80.0 * i)], heights, covers.AsSpan(0, heights.Length), new Zone[heights.Length]);
            double whole = FresnelClearance.Analyse(profile, hts, hrs, 868e6, k).TransmitterElevationDegrees;
            Assert.Equal(whole, HorizonAngle.TransmitterDegrees(profile, hts, hrs, k), 1e-9);
        });

    [Fact]
    public void A_wall_of_forty_five_degrees_is_seen_at_forty_five_degrees()
    {
        PathProfile wall = PathProfile.FromSamples([0, 100, 1_000], [0, 110, 0], [0, 0, 0], new Zone[3]);
        Assert.Equal(45, HorizonAngle.TransmitterDegrees(wall, 10, 10, 4 / 3.0), 0.01);
    }
}
