using Mastwright.Quantities;

namespace Mastwright.Tests.Quantities;

public sealed class NormalDistributionTests
{
    /// <summary>Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1: P(x) to 15 decimals.</summary>
    public static TheoryData<double, double> Table => new()
    {
        { 0.0, 0.5 },
        { 0.5, 0.691462461274013 },
        { 1.0, 0.841344746068543 },
        { 1.5, 0.933192798731142 },
        { 2.0, 0.977249868051821 },
        { 3.0, 0.998650101968370 },
    };

    [Theory, MemberData(nameof(Table))]
    public void Cumulative_equals_the_handbook_to_its_last_digit(double z, double probability) =>
        Assert.Equal(probability, NormalDistribution.Cumulative(z), 1e-15);

    [Fact]
    public void The_far_tail_keeps_its_relative_precision() =>
        // Q(6) = 9.865876450376981e-10 (NIST DLMF 7.2.2 by erfc(6/√2)/2).
        Assert.Equal(1, NormalDistribution.Cumulative(-6) / 9.865876450376981e-10, 1e-12);

    [Fact]
    public void Series_and_fraction_meet() =>
        Assert.Equal(NormalDistribution.Cumulative(-3 + 1e-12), NormalDistribution.Cumulative(-3 - 1e-12), 1e-13);

    [Fact]
    public void Both_sides_sum_to_one() =>
        Gen.Double[-30, 30].Sample(z => Math.Abs(NormalDistribution.Cumulative(z) + NormalDistribution.Cumulative(-z) - 1) < 1e-14);
}
