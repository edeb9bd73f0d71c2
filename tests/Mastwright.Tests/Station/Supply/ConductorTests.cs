using CsCheck;
using Mastwright.Station.Supply;

namespace Mastwright.Tests.Station.Supply;

public sealed class ConductorTests
{
    /// <summary>Gauge, diameter, section and resistance: ASTM B258's formula with IEC 60028's copper. The last column is a printed wire table's figure in ohm/km.</summary>
    public static TheoryData<int, double, double, double, double> Gauges => new()
    {
        { 18, 1.0237, 0.82305, 20.948, 20.95 },
        { 20, 0.8118, 0.51762, 33.308, 33.30 },
        { 22, 0.6438, 0.32553, 52.962, 52.95 },
        { 23, 0.5733, 0.25816, 66.784, 66.80 },
        { 24, 0.5106, 0.20473, 84.213, 84.22 },
        { 26, 0.4049, 0.12876, 133.904, 133.89 },
    };

    [Theory, MemberData(nameof(Gauges))]
    public void A_gauge_has_its_diameter_section_and_resistance(int gauge, double millimetres, double squareMillimetres, double ohms, double printed)
    {
        Assert.Equal(millimetres, Conductor.DiameterMillimetres(gauge), 5e-5);
        Assert.Equal(squareMillimetres, Conductor.AreaSquareMillimetres(gauge), 5e-6);

        // The values were reckoned with 0.017241 Ω·mm²/m for 1/58, 2 parts in 100 000 less, and rounded.
        double found = Conductor.OhmsPerKilometre(Conductor.AreaSquareMillimetres(gauge));
        Assert.Equal(ohms, found, ohms * 5e-5);
        Assert.Equal(printed, found, printed * 1e-3);
    }

    /// <summary>R = R20·(1 + 0.00393·(T − 20)), coefficient of IEC 60028.</summary>
    [Theory]
    [InlineData(60, 97.436)]
    [InlineData(45, 92.473)]
    [InlineData(-20, 70.964)]
    public void Copper_of_84_2_ohms_changes_with_temperature(double celsius, double ohms) =>
        Assert.Equal(ohms, 84.2 * Conductor.TemperatureFactor(celsius), 1e-3);

    [Fact]
    public void Clad_aluminium_lies_between_copper_and_aluminium()
    {
        double copper = Conductor.OhmsPerKilometre(1);
        double clad = Conductor.OhmsPerKilometre(1, ConductorMetal.CopperCladAluminium);
        double aluminium = Conductor.OhmsPerKilometre(1, ConductorMetal.Aluminium);
        Assert.True(copper < clad && clad < aluminium);

        // A tenth of the section conducts as 58, nine tenths as 1/0.028264 S·m/mm².
        Assert.Equal(1 / ((0.1 * 58) + (0.9 / 0.028264)), clad / 1000, 1e-9);
    }

    [Fact]
    public void A_thicker_wire_never_resists_more() =>
        Gen.Select(Gen.Int[0, 39], Gen.Int[1, 40]).Sample((gauge, more) =>
            gauge + more > 40 || Conductor.AreaSquareMillimetres(gauge) > Conductor.AreaSquareMillimetres(gauge + more));

    [Fact]
    public void What_is_no_wire_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Conductor.DiameterMillimetres(41));
        Assert.Throws<ArgumentOutOfRangeException>(() => Conductor.DiameterMillimetres(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Conductor.OhmsPerKilometre(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Conductor.OhmsPerKilometre(double.NaN));
    }
}
