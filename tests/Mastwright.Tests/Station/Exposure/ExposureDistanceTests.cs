using CsCheck;
using Mastwright.Station.Exposure;

namespace Mastwright.Tests.Station.Exposure;

public sealed class ExposureDistanceTests
{
    /// <summary>A published module manual: 39.811 mW into 0 dBi are 0.007920 mW/cm² at 20 cm; tolerance is its rounding.</summary>
    [Fact]
    public void Density_agrees_with_a_printed_module_manual() =>
        Assert.Equal(0.007920, ExposureDistance.DensityWattsPerSquareMetre(0.039811, 0.2) / 10, 5e-7);

    /// <summary>A published calculation after OET Bulletin 65: 1 W into 6 dBi at 5 ft with a reflecting ground are 0.035 mW/cm².</summary>
    [Fact]
    public void Density_over_a_reflecting_ground_agrees_with_a_printed_calculation() =>
        Assert.Equal(0.034919, ExposureDistance.DensityWattsPerSquareMetre(Math.Pow(10, 0.6), 1.524, ExposureDistance.ReflectionFactor) / 10, 5e-6);

    /// <summary>
    /// Distances in metres from the check values: EIRP in watts, frequency in MHz; ICNIRP (f/200 W/m²), FCC (f/150 W/m²), and ICNIRP with
    /// reflection under FCC's limit as printed there. Tolerance: their rounding to four decimals, and of ERP to three digits.
    /// </summary>
    [Theory]
    [InlineData(0.8203, 869.5, 0.1225, 0.1061, 0.1698)]
    [InlineData(0.04101, 869.5, 0.0274, 0.0237, 0.0380)]
    [InlineData(4, 915, 0.2638, 0.2284, 0.3655)]
    [InlineData(1, 915, 0.1319, 0.1142, 0.1827)]
    public void Distances_agree_with_the_check_values(double eirpWatts, double megahertz, double icnirp, double fcc, double reflected)
    {
        Assert.Equal(icnirp, ExposureDistance.Metres(eirpWatts, megahertz / 200), 1e-4);
        Assert.Equal(fcc, ExposureDistance.Metres(eirpWatts, megahertz / 150), 1e-4);
        Assert.Equal(reflected, ExposureDistance.Metres(eirpWatts, megahertz / 150, ExposureDistance.ReflectionFactor), 1e-4);
    }

    /// <summary>Worked out in the check values: D 0.6 m at 915 MHz.</summary>
    [Fact]
    public void Near_and_far_field_begin_where_the_check_values_say()
    {
        Assert.Equal(2.1975, ExposureDistance.FarFieldMetres(0.6, 915e6), 5e-4);
        Assert.Equal(0.0521, ExposureDistance.ReactiveMetres(915e6), 1e-4);
    }

    [Fact]
    public void A_limit_of_nothing_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(() => ExposureDistance.Metres(1, 0));

    [Fact]
    public void More_power_is_never_nearer_and_at_the_distance_the_density_is_the_limit() =>
        Gen.Select(Gen.Double[1e-4, 100], Gen.Double[0, 100], Gen.Double[0.1, 50]).Sample((watts, more, limit) =>
            ExposureDistance.Metres(watts + more, limit) >= ExposureDistance.Metres(watts, limit)
            && Math.Abs(ExposureDistance.DensityWattsPerSquareMetre(watts, ExposureDistance.Metres(watts, limit)) - limit) < 1e-9 * limit);
}
