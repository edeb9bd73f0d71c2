using Mastwright.Findings;
using Mastwright.Propagation;

namespace Mastwright.Tests.Propagation;

public sealed class PathLossTests
{
    [Fact]
    public void Lines_sum_to_the_loss() =>
        Gen.Select(TestProfiles.Any, Gen.Double[1, 50], Gen.Double[1, 99]).Sample((profile, time, places) =>
        {
            P1812Input input = TestProfiles.Input(time: time) with { LocationPercent = places, LocationSigmaDb = 5 };
            PathLossPrediction prediction = PathLoss.Predict(profile, input);
            Ledger ledger = prediction.Ledger;
            Assert.Equal(prediction.LossDb, ledger.Total, 1e-9);
            Assert.Equal(["free-space", "diffraction", "atmosphere", "places"], ledger.Lines.Select(line => line.Code));
            Assert.Equal(PathLoss.Recommendation, prediction.Method);
            Assert.Equal(prediction.LossDb, prediction.P1812Result!.Value.LbDb);
            Assert.Empty(prediction.RangeProblems);
        });

    [Fact]
    public void A_short_clear_path_is_free_space_and_says_so()
    {
        PathLossPrediction prediction = PathLoss.Predict(TestProfiles.Flat(200, 5), TestProfiles.Input(transmitter: 20, receiver: 20));
        Assert.Equal("free space and knife edge", prediction.Method);
        Assert.Equal(FreeSpace.LossDb(200, 868e6), prediction.LossDb, 1e-9);
        Assert.Null(prediction.P1812Result);
        Assert.Equal("distance", Assert.Single(prediction.RangeProblems).Code);
        Assert.Equal(prediction.LossDb, prediction.Ledger.Total, 1e-9);
    }

    [Fact]
    public void A_short_path_over_a_wall_has_its_knife_edge()
    {
        PathLossPrediction prediction = PathLoss.Predict(TestProfiles.Ridge(200, 100, 12), TestProfiles.Input(transmitter: 2, receiver: 2));
        double edge = KnifeEdge.LossDb(KnifeEdge.Parameter(10, 100, 100, 868e6));
        Assert.Equal(FreeSpace.LossDb(200, 868e6) + edge, prediction.LossDb, 0.01);
    }

    [Fact]
    public void Each_limit_is_listed_once_and_the_loss_is_still_a_number()
    {
        PathProfile profile = TestProfiles.Flat(4_000_000, 401);
        P1812Input input = new()
        {
            FrequencyHz = 10e9,
            TimePercent = 90,
            LocationPercent = 99.5,
            TransmitterHeightMetres = 0.5,
            ReceiverHeightMetres = 4000,
            PathCentreLatitudeDegrees = 0,
        };
        PathLossPrediction prediction = PathLoss.Predict(profile, input);
        Assert.Equal(
            ["frequency", "distance", "time-percent", "location-percent", "transmitter-height", "receiver-height"],
            prediction.RangeProblems.Select(problem => problem.Code));
        Assert.Equal("The frequency is 10000 MHz; ITU-R P.1812 is given for 30 to 6000 MHz.", prediction.RangeProblems[0].Text);
        Assert.True(double.IsFinite(prediction.LossDb));
        Assert.Equal(PathLoss.Predict(profile, input with { TimePercent = 50, LocationPercent = 99 }).LossDb, prediction.LossDb);
    }

    [Fact]
    public void The_two_methods_agree_where_they_meet_on_a_clear_path()
    {
        P1812Input input = TestProfiles.Input(transmitter: 20, receiver: 20);
        double below = PathLoss.Predict(TestProfiles.Flat(249.9, 9), input).LossDb;
        double above = PathLoss.Predict(TestProfiles.Flat(250.1, 9), input).LossDb;

        // P.1812 rounds the constant of free space down by 0.048 dB.
        Assert.Equal(below, above, 0.06);
    }
}
