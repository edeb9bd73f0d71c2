using Mastwright.Propagation;

namespace Mastwright.Tests.Propagation;

public sealed class MastHeightTests
{
    [Fact]
    public void The_height_for_clearance_clears_and_a_little_less_does_not() =>
        Gen.Select(TestProfiles.Any, Gen.Double[1, 300], Gen.Double[0.6, 5]).Sample((profile, receiver, k) =>
        {
            if (MastHeight.ForClearance(profile, receiver, 868e6, k) is not double height)
            {
                Assert.False(FresnelClearance.Analyse(profile, 200, receiver, 868e6, k).IsClear);
                return;
            }

            Assert.True(FresnelClearance.Analyse(profile, height + 1e-6, receiver, 868e6, k).IsClear);
            Assert.True(height == MastHeight.LowestMetres || !FresnelClearance.Analyse(profile, height - 1e-6, receiver, 868e6, k).IsClear);
        });

    [Fact]
    public void Over_flat_ground_the_height_is_that_of_the_middle()
    {
        // 10 km, k 4/3, receiver 10 m: 2 (1.472 + 0.6 · 29.3846) − 10 at the middle; the grid of points holds the true maximum closely.
        double? height = MastHeight.ForClearance(TestProfiles.Flat(10_000, 1001), 10, 868e6, 4.0 / 3);
        Assert.InRange(height!.Value, (2 * (1.472 + (0.6 * 29.3846))) - 10, 45);
    }

    [Fact]
    public void The_height_for_a_loss_keeps_it() =>
        Gen.Select(TestProfiles.Any, Gen.Double[90, 190]).Sample((profile, wanted) =>
        {
            P1812Input input = TestProfiles.Input();
            if (MastHeight.ForLoss(profile, input, wanted) is double height)
            {
                Assert.InRange(height, 1, 200);
                Assert.True(PathLoss.Predict(profile, input with { TransmitterHeightMetres = height }).LossDb <= wanted);
            }
            else
            {
                Assert.True(PathLoss.Predict(profile, input with { TransmitterHeightMetres = 200 }).LossDb > wanted);
            }
        });

    [Fact]
    public void A_loss_below_free_space_is_reached_by_no_mast() =>
        Assert.Null(MastHeight.ForLoss(TestProfiles.Flat(10_000, 101), TestProfiles.Input(), 100));

    [Fact]
    public void A_ridge_next_to_the_receiver_may_be_beyond_any_mast() =>
        Assert.Null(MastHeight.ForClearance(TestProfiles.Ridge(10_000, 9900, 60), 3, 868e6, 4.0 / 3));
}
