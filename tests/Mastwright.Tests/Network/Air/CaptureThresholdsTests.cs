using Mastwright.Network.Air;

namespace Mastwright.Tests.Network.Air;

public sealed class CaptureThresholdsTests
{
    /// <summary>Goursaud and Gorce 2015, table of co-channel rejection; Croce et al. 2018, table of measured thresholds (both read second-hand).</summary>
    [Theory]
    [InlineData(7, 7, 6, 1)]
    [InlineData(7, 12, -20, -9)]
    [InlineData(9, 9, 6, 1)]
    [InlineData(10, 8, -30, -18)]
    [InlineData(12, 11, -36, -23)]
    public void Are_those_of_their_sources(int wanted, int unwanted, double careful, double measured)
    {
        Assert.Equal(careful, CaptureThresholds.Db(wanted, unwanted));
        Assert.Equal(measured, CaptureThresholds.MeasuredDb(wanted, unwanted));
    }

    [Fact]
    public void A_slower_factor_bears_more_of_every_other_one()
    {
        for (int unwanted = 7; unwanted <= 12; unwanted++)
        {
            for (int wanted = 8; wanted <= 12; wanted++)
            {
                Assert.True(wanted == unwanted || wanted - 1 == unwanted || CaptureThresholds.Db(wanted, unwanted) <= CaptureThresholds.Db(wanted - 1, unwanted));
            }
        }

        Assert.Throws<ArgumentOutOfRangeException>(() => CaptureThresholds.Db(6, 7));
        Assert.Throws<ArgumentOutOfRangeException>(() => CaptureThresholds.MeasuredDb(7, 13));
    }
}
