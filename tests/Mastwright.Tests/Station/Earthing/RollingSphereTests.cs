using CsCheck;
using Mastwright.Station.Earthing;

namespace Mastwright.Tests.Station.Earthing;

public sealed class RollingSphereTests
{
    /// <summary>Radius, height of the rod, reach on the ground: the first six are a public worked table of IEC 62305-3's rolling sphere, the rest the formula by hand.</summary>
    [Theory]
    [InlineData(60, 0.254, 5.515)] // half of the 11.03 m between two rods
    [InlineData(45, 0.254, 4.775)] // half of 9.55
    [InlineData(30, 0.254, 3.895)] // half of 7.79
    [InlineData(20, 0.254, 3.175)] // half of 6.35
    [InlineData(20, 1.219, 6.875)] // half of 13.75
    [InlineData(60, 1.219, 12.035)] // half of 24.07
    [InlineData(20, 5, 13.229)]
    [InlineData(30, 5, 16.583)]
    [InlineData(45, 5, 20.616)]
    [InlineData(60, 5, 23.979)]
    [InlineData(45, 10, 28.284)]
    public void The_ball_touches_the_ground_where_the_table_says(double radius, double height, double reach) =>
        Assert.Equal(reach, RollingSphere.GroundReachMetres(radius, height), 0.006);

    [Fact]
    public void The_zone_begins_at_the_rod_s_tip_and_ends_on_the_ground()
    {
        Assert.Equal(10, RollingSphere.ZoneHeightMetres(45, 10, 0), 1e-9);
        Assert.Equal(0, RollingSphere.ZoneHeightMetres(45, 10, 28.285), 1e-9);

        // Half way out the arc is R − √(R² − (d/2)²) high: 45 − √(2025 − 200) = 2.280 m, by hand.
        Assert.Equal(2.280, RollingSphere.ZoneHeightMetres(45, 10, 28.284 / 2), 1e-3);
    }

    [Fact]
    public void What_a_rod_has_above_the_ball_s_radius_counts_for_nothing() =>
        Assert.Equal(RollingSphere.ZoneHeightMetres(20, 20, 3), RollingSphere.ZoneHeightMetres(20, 40, 3), 1e-12);

    [Fact]
    public void Further_out_or_under_a_smaller_ball_the_zone_is_never_higher() =>
        Gen.Select(Gen.Double[0.5, 60], Gen.Double[0, 40], Gen.Double[0, 10]).Sample((rod, distance, more) =>
            RollingSphere.ZoneHeightMetres(45, rod, distance + more) <= RollingSphere.ZoneHeightMetres(45, rod, distance) + 1e-9
            && RollingSphere.ZoneHeightMetres(20, Math.Min(rod, 20), distance) <= RollingSphere.ZoneHeightMetres(60, Math.Min(rod, 20), distance) + 1e-9);

    [Fact]
    public void The_derived_angle_is_that_of_a_cone_of_the_arc_s_area()
    {
        // Area under the arc by 100000 strips, an independent way.
        double reach = RollingSphere.GroundReachMetres(45, 10);
        double area = Enumerable.Range(0, 100_000).Sum(i => RollingSphere.ZoneHeightMetres(45, 10, (i + 0.5) * reach / 100_000) * reach / 100_000);
        Assert.Equal(double.RadiansToDegrees(Math.Atan(2 * area / 100)), RollingSphere.ProtectionAngleDegrees(45, 10), 1e-3);
    }

    /// <summary>IEC 62305-3, (4) with ki 0.04 (IV), 0.06 (II), 0.08 (I): length 10 m.</summary>
    [Theory]
    [InlineData(0.04, 1, 1, 0.4)]
    [InlineData(0.04, 0.66, 1, 0.264)]
    [InlineData(0.04, 0.44, 1, 0.176)]
    [InlineData(0.06, 1, 1, 0.6)]
    [InlineData(0.08, 1, 1, 0.8)]
    [InlineData(0.04, 1, 0.5, 0.8)]
    public void The_separation_distance_is_that_of_the_formula(double classFactor, double share, double insulation, double distance) =>
        Assert.Equal(distance, RollingSphere.SeparationMetres(classFactor, share, insulation, 10), 1e-12);
}
