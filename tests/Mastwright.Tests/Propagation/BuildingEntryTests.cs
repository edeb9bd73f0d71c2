using Mastwright.Propagation;

namespace Mastwright.Tests.Propagation;

/// <summary>Properties of the model; its coefficients are from memory and no published figures were at hand.</summary>
public sealed class BuildingEntryTests
{
    [Fact]
    public void Loss_never_falls_as_the_share_of_buildings_grows() =>
        Gen.Select(Gen.Double[80e6, 6e9], Gen.Double[1, 99], Gen.Double[1, 99], Gen.Bool).Sample((hertz, one, other, tight) =>
        {
            BuildingKind kind = tight ? BuildingKind.ThermallyEfficient : BuildingKind.Traditional;
            return BuildingEntry.LossDb(hertz, kind, Math.Max(one, other)) >= BuildingEntry.LossDb(hertz, kind, Math.Min(one, other)) - 1e-9;
        });

    [Fact]
    public void A_tight_building_costs_more_and_so_does_a_steep_path()
    {
        Assert.True(BuildingEntry.LossDb(868e6, BuildingKind.ThermallyEfficient) > BuildingEntry.LossDb(868e6, BuildingKind.Traditional) + 10);
        Assert.True(BuildingEntry.LossDb(868e6, BuildingKind.Traditional, 50, 30) > BuildingEntry.LossDb(868e6, BuildingKind.Traditional));
        Assert.Equal(BuildingEntry.LossDb(868e6, BuildingKind.Traditional, 50, -30), BuildingEntry.LossDb(868e6, BuildingKind.Traditional, 50, 30));
    }

    [Fact]
    public void At_1_GHz_the_median_is_the_power_sum_of_the_three_terms() =>
        Assert.Equal(
            10 * Math.Log10(Math.Pow(10, 1.264) + Math.Pow(10, 0.91) + Math.Pow(10, -0.3)),
            BuildingEntry.LossDb(1e9, BuildingKind.Traditional),
            1e-6);

    [Theory]
    [InlineData(79e6, 50, 0)]
    [InlineData(1e9, 0, 0)]
    [InlineData(1e9, 100, 0)]
    [InlineData(1e9, 50, 91)]
    public void What_the_model_does_not_take_is_refused(double hertz, double percent, double elevation) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => BuildingEntry.LossDb(hertz, BuildingKind.Traditional, percent, elevation));
}
