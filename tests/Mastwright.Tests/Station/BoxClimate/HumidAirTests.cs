using CsCheck;
using Mastwright.Station.BoxClimate;

namespace Mastwright.Tests.Station.BoxClimate;

public sealed class HumidAirTests
{
    /// <summary>Saturation over water in hPa as Sonntag's reference form gives it (the reference sheet of this project): Magnus's form is within 0.5 % of it.</summary>
    public static TheoryData<double, double> Sonntag => new() { { 0, 6.1121 }, { 10, 12.2813 }, { 20, 23.3925 }, { 25, 31.6990 }, { 30, 42.4703 }, { 40, 73.8530 } };

    /// <summary>Dew points worked out from WMO-No. 8's constants by an independent script, to four decimals.</summary>
    public static TheoryData<double, double, double> DewPoints => new()
    {
        { 20, 0.50, 9.2552 }, { 25, 0.60, 16.6931 }, { 10, 0.90, 8.4339 }, { 30, 0.80, 26.1688 }, { 0, 0.95, -0.7057 },
        { 25, 0.10, -8.7735 }, { 50, 0.90, 47.9019 }, { -10, 0.80, -12.7969 }, { 35, 0.40, 19.3838 },
    };

    [Theory]
    [MemberData(nameof(Sonntag))]
    public void Saturation_is_within_half_a_percent_of_the_reference_form(double celsius, double hpa) =>
        Assert.Equal(hpa, HumidAir.SaturationHpa(celsius), 0.005 * hpa);

    [Theory]
    [InlineData(0, 6.1120)]
    [InlineData(10, 12.2603)]
    [InlineData(20, 23.3260)]
    [InlineData(50, 123.4516)]
    [InlineData(-20, 1.2597)]
    public void Saturation_over_water_is_that_of_the_printed_constants(double celsius, double hpa) => Assert.Equal(hpa, HumidAir.SaturationHpa(celsius), 1e-4);

    [Theory]
    [InlineData(-10, 2.5987)]
    [InlineData(-20, 1.0326)]
    public void Saturation_over_ice_is_that_of_the_printed_constants(double celsius, double hpa) => Assert.Equal(hpa, HumidAir.SaturationOverIceHpa(celsius), 1e-4);

    [Theory]
    [MemberData(nameof(DewPoints))]
    public void Dew_points_come_out_as_worked(double celsius, double humidity, double dew) => Assert.Equal(dew, HumidAir.DewPointCelsius(celsius, humidity), 1e-4);

    [Fact]
    public void Dew_points_agree_with_a_sensor_maker_s_printed_values_of_older_constants()
    {
        // An application note on humidity sensors (from memory): -8.69 °C at 25 °C and 10 %, 47.90 °C at 50 °C and 90 %; 0.1 K between sets of constants.
        Assert.Equal(-8.69, HumidAir.DewPointCelsius(25, 0.1), 0.1);
        Assert.Equal(47.90, HumidAir.DewPointCelsius(50, 0.9), 0.1);
    }

    [Theory]
    [InlineData(20, 1, 17.243)]
    [InlineData(20, 0.5, 8.621)]
    [InlineData(30, 0.8, 24.211)]
    public void Vapour_by_volume_comes_out_as_worked(double celsius, double humidity, double grams) =>
        Assert.Equal(grams, HumidAir.GramsPerCubicMetre(celsius, humidity * HumidAir.SaturationHpa(celsius)), 1e-3);

    [Fact]
    public void Saturated_air_is_at_its_dew_point() =>
        Gen.Double[-40, 60].Sample(celsius => Assert.Equal(celsius, HumidAir.DewPointCelsius(celsius, 1), 1e-9));

    [Fact]
    public void A_sealed_box_pulls_presses_and_would_breathe_as_an_ideal_gas()
    {
        // Independent script: 20 to -10 °C -10.369 kPa, 20 to 60 °C +13.826 kPa; 5 litres breathe 0.512 litres over 30 K; 311 N on a lid of 0.2 by 0.15 m.
        Assert.Equal(-10.369, SealedAir.OverpressureKilopascals(20, -10), 1e-3);
        Assert.Equal(13.826, SealedAir.OverpressureKilopascals(20, 60), 1e-3);
        Assert.Equal(0.512, SealedAir.Breath(5, 20, -10), 1e-3);
        Assert.Equal(311, -SealedAir.OverpressureKilopascals(20, -10) * 1000 * 0.2 * 0.15, 0.5);
    }
}
