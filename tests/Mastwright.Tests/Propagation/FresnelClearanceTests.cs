using Mastwright.Propagation;

namespace Mastwright.Tests.Propagation;

public sealed class FresnelClearanceTests
{
    [Fact]
    public void Flat_ground_is_cleared_by_antenna_height_less_bulge()
    {
        ClearanceAnalysis path = FresnelClearance.Analyse(TestProfiles.Flat(10_000, 101), 50, 50, 868e6, 4.0 / 3);
        ClearancePoint middle = path.Points[50];
        Assert.Equal(50 - 1.472, middle.ClearanceMetres, 5e-4); // bulge of the middle, 1.472 m
        Assert.Equal(29.3846, middle.FresnelRadiusMetres, 5e-5); // Rec. ITU-R P.526 section 2.1
        Assert.Equal(middle.DistanceMetres, path.Worst.DistanceMetres);
        Assert.True(path.IsClear);
        Assert.True(path.IsLineOfSight);
    }

    [Fact]
    public void A_ridge_above_the_ray_is_found_with_its_edge_loss()
    {
        ClearanceAnalysis path = FresnelClearance.Analyse(TestProfiles.Ridge(10_000, 3000, 120), 60, 60, 868e6, 4.0 / 3);
        Obstruction ridge = Assert.Single(path.Obstructions);
        Assert.Equal(3000, ridge.Worst.DistanceMetres, 1e-9);
        Assert.True(ridge.BlocksTheRay);
        Assert.False(path.IsLineOfSight);
        double rise = 60 + EffectiveEarth.BulgeMetres(3000, 7000, EffectiveEarth.FromFactor(4.0 / 3));
        Assert.Equal(-rise, ridge.Worst.ClearanceMetres, 1e-9);
        Assert.Equal(KnifeEdge.LossDb(KnifeEdge.Parameter(rise, 3000, 7000, 868e6)), ridge.EdgeLossDb, 1e-9);

        // The horizon is the ridge: 60 m above the antenna, 3 km away, less the drop of the Earth.
        Assert.Equal(
            double.RadiansToDegrees(Math.Atan((60.0 / 3000) - (3000 / (2 * EffectiveEarth.FromFactor(4.0 / 3))))),
            path.TransmitterElevationDegrees,
            1e-9);
    }

    [Fact]
    public void Elevation_of_a_clear_line_is_below_level_at_both_ends_by_half_the_arc()
    {
        ClearanceAnalysis path = FresnelClearance.Analyse(TestProfiles.Flat(10_000, 101), 50, 50, 868e6, 4.0 / 3);
        double halfArc = double.RadiansToDegrees(5000 / EffectiveEarth.FromFactor(4.0 / 3));
        Assert.Equal(-halfArc, path.TransmitterElevationDegrees, 1e-6);
        Assert.Equal(-halfArc, path.ReceiverElevationDegrees, 1e-6);
    }

    [Fact]
    public void Two_ridges_are_two_obstructions_and_the_worst_is_the_worse()
    {
        double[] heights = new double[101];
        heights[20] = 30;
        heights[70] = 45;
        PathProfile flat = TestProfiles.Flat(10_000, 101);
        PathProfile profile = PathProfile.FromSamples(flat.DistancesMetres, heights, flat.CoverMetres, flat.Zones);
        ClearanceAnalysis path = FresnelClearance.Analyse(profile, 40, 40, 868e6, 4.0 / 3);
        Assert.Equal([2000.0, 7000.0], path.Obstructions.Select(obstruction => obstruction.Worst.DistanceMetres));
        Assert.Equal(7000, path.Worst.DistanceMetres);
        Assert.Equal([false, true], path.Obstructions.Select(obstruction => obstruction.BlocksTheRay));
    }

    [Fact]
    public void Loss_and_clearance_agree_on_what_is_clear() =>
        Gen.Select(TestProfiles.Any, Gen.Double[1, 300], Gen.Double[1, 300]).Sample((profile, transmitter, receiver) =>
        {
            ClearanceAnalysis path = FresnelClearance.Analyse(profile, transmitter, receiver, 868e6, 1.3);
            Assert.Equal(profile.Count, path.Points.Length);
            Assert.Equal(path.IsClear, path.Worst.ClearanceRadii >= 0.6);

            // 0.6 radii of clearance is v = −0.85, below which the Bullington part is nothing.
            if (path.IsClear)
            {
                Assert.Equal(0, DeltaBullington.Evaluate(profile, transmitter, receiver, 868e6, EffectiveEarth.FromFactor(1.3)).ActualDb);
            }
        });

    [Fact]
    public void Seen_from_the_other_end_everything_is_mirrored() =>
        Gen.Select(TestProfiles.Any, Gen.Double[1, 300], Gen.Double[1, 300]).Sample((profile, transmitter, receiver) =>
        {
            ClearanceAnalysis there = FresnelClearance.Analyse(profile, transmitter, receiver, 868e6, 1.3);
            ClearanceAnalysis back = FresnelClearance.Analyse(profile.Reversed(), receiver, transmitter, 868e6, 1.3);
            Assert.Equal(there.TransmitterElevationDegrees, back.ReceiverElevationDegrees, 1e-9);
            Assert.Equal(there.Worst.ClearanceMetres, back.Worst.ClearanceMetres, 1e-6);
            Assert.Equal(there.Obstructions.Length, back.Obstructions.Length);
        });
}
