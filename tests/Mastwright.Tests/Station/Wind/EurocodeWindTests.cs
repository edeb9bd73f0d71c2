using CsCheck;
using Mastwright.Station.Wind;

namespace Mastwright.Tests.Station.Wind;

public sealed class EurocodeWindTests
{
    private static readonly Dictionary<string, TerrainRow> Terrains = new(StringComparer.Ordinal)
    {
        ["0"] = WindRowsForTests.Sea,
        ["I"] = WindRowsForTests.Flat,
        ["II"] = WindRowsForTests.Open,
        ["III"] = WindRowsForTests.Village,
        ["IV"] = WindRowsForTests.Town,
    };

    /// <summary>
    /// vb, category, z, and what public worked examples of EN 1991-1-4 clauses 4.3 to 4.5 print for kr, cr, vm, Iv, qp in kN/m². The tolerances are half of
    /// the last digit printed.
    /// </summary>
    public static TheoryData<double, string, double, double, double, double, double, double> Worked => new()
    {
        { 22, "III", 7.02, 0.215389, 0.68, 14.939, 0.31718482, 0.449 },
        { 25, "0", 77.36, 0.156, 1.585, 39.624, 0.098, 1.658 },
        { 25, "0", 28, 0.156, 1.426, 35.659, 0.109, 1.403 },
    };

    [Theory, MemberData(nameof(Worked))]
    public void Every_intermediate_agrees_with_public_worked_examples(
        double speed, string category, double height, double factor, double roughness, double mean, double intensity, double peak)
    {
        TerrainRow terrain = Terrains[category];

        Assert.Equal(factor, EurocodeWind.TerrainFactor(terrain), 5e-4);
        Assert.Equal(roughness, EurocodeWind.RoughnessFactor(terrain, height), 1e-3);
        Assert.Equal(mean, EurocodeWind.RoughnessFactor(terrain, height) * speed, 0.02);
        Assert.Equal(intensity, EurocodeWind.TurbulenceIntensity(terrain, height, 1), 5e-4);
        Assert.Equal(peak * 1000, EurocodeWind.PeakPressurePa(terrain, speed, height), 0.6);
    }

    /// <summary>The first is printed by a public worked example (0.989 kN/m²); the others were worked out from the formulas by an independent script.</summary>
    [Theory]
    [InlineData(27, "I", 3.5, 988.95)]
    [InlineData(26, "II", 10, 993.84)]
    [InlineData(26, "I", 15, 1274.45)]
    [InlineData(26, "III", 10, 722.13)]
    [InlineData(26, "IV", 10, 496.93)]
    [InlineData(30, "II", 20, 1580.60)]
    [InlineData(24, "II", 5, 694.56)]
    public void The_peak_pressure_agrees_with_independent_figures(double speed, string category, double height, double pressure) =>
        Assert.Equal(pressure, EurocodeWind.PeakPressurePa(Terrains[category], speed, height), 0.01);

    [Fact]
    public void A_printed_example_that_forgot_a_square_is_not_met()
    {
        // vb 40.9, category I, z 5: kr, cr, vm and Iv are printed right (0.170, 1.055, 43.1, 0.161), and qp 2.345 kPa with cr in place of its square.
        Assert.Equal(2474.3, EurocodeWind.PeakPressurePa(WindRowsForTests.Flat, 40.9, 5), 0.1);
    }

    [Theory]
    [InlineData(50, 1)] // EN 1991-1-4 (4.2): yearly probability 0.02.
    [InlineData(10, 0.9020)] // √((1 − 0.2·ln(−ln 0.9))/(1 − 0.2·ln(−ln 0.98))), by hand: √(1.45007/1.78040).
    [InlineData(100, 1.0386)] // √(1.92003/1.78040), by hand.
    public void The_probability_factor_is_that_of_the_formula(int years, double factor) => Assert.Equal(factor, EurocodeWind.ProbabilityFactor(years), 6e-4);

    [Fact]
    public void Higher_is_never_less_wind_where_there_is_no_hill() =>
        Gen.Select(Gen.Int[0, 4], Gen.Double[0, 200], Gen.Double[0, 200]).Sample((category, one, other) =>
        {
            TerrainRow terrain = Terrains.Values.ElementAt(category);
            return EurocodeWind.PeakPressurePa(terrain, 26, Math.Max(one, other)) >= EurocodeWind.PeakPressurePa(terrain, 26, Math.Min(one, other)) - 1e-9;
        });

    [Fact]
    public void A_hill_never_lessens_the_wind() =>
        Gen.Select(Gen.Double[0, 200], Gen.Double[1, 1.6]).Sample((height, orography) =>
            EurocodeWind.PeakPressurePa(WindRowsForTests.Open, 26, height, orography) >= EurocodeWind.PeakPressurePa(WindRowsForTests.Open, 26, height) - 1e-9);
}
