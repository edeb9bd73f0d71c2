using CsCheck;
using Mastwright.Station.Wind;

namespace Mastwright.Tests.Station.Wind;

/// <summary>ASCE/SEI 7-16, round members of EN 1991-1-4 and ice of ISO 12494 against figures worked out from the printed formulas by an independent script.</summary>
public sealed class WindFormsTests
{
    [Theory]
    [InlineData(4.57, 0.8488)] // Table 26.10-1 prints 0.85 for 15 ft.
    [InlineData(3, 0.8488)] // Below 15 ft it is that at 15 ft.
    [InlineData(10, 1.0009)]
    public void The_exposure_coefficient_is_that_of_the_table(double height, double coefficient) =>
        Assert.Equal(coefficient, AsceWind.ExposureCoefficient(WindRowsForTests.ExposureC, height), 1e-4);

    [Theory]
    [InlineData(50, 0.85, 0.95, 1237.5)]
    [InlineData(50, 0.85, 0.85, 1107.2)]
    public void The_velocity_pressure_of_the_american_form_agrees(double speed, double exposure, double directionality, double pressure) =>
        Assert.Equal(pressure, AsceWind.PressurePa(exposure, 1, directionality, 1, speed), 0.1);

    [Fact]
    public void A_hundred_miles_an_hour_press_with_25_6_pounds_a_square_foot() =>
        Assert.Equal(25.6, AsceWind.PressurePa(1, 1, 1, 1, 44.704) / 47.880259, 0.02); // 0.00256·V², the form in customary units; the two constants agree to 0.1 %.

    /// <summary>EN 1991-1-4, Figure 7.28, at 40 m/s and 0.2 mm: diameter in mm, Reynolds number, coefficient.</summary>
    [Theory]
    [InlineData(48.3, 1.29e5, 1.2)]
    [InlineData(60.3, 1.61e5, 1.2)]
    [InlineData(100, 2.67e5, 0.8030)]
    [InlineData(300, 8.0e5, 0.7925)]
    public void The_coefficient_of_a_round_member_is_that_of_the_figure(double diameter, double reynolds, double coefficient)
    {
        double pressure = 0.5 * 1.25 * 40 * 40;

        Assert.Equal(reynolds, CylinderDrag.Reynolds(diameter / 1000, pressure, 1.25), reynolds * 0.005);
        Assert.Equal(coefficient, CylinderDrag.Coefficient(diameter / 1000 * 40 / 15e-6, diameter / 1000, CylinderDrag.GalvanisedRoughnessMetres), 5e-4);
    }

    [Fact]
    public void The_coefficient_stays_between_what_round_members_can_have() =>
        Gen.Select(Gen.Double[0, 5e6], Gen.Double[0.003, 0.6]).Sample((reynolds, diameter) =>
            CylinderDrag.Coefficient(reynolds, diameter, CylinderDrag.GalvanisedRoughnessMetres) is > 0.3 and <= 1.2);

    /// <summary>ISO 12494: π·t·(D + t)·ρ with glaze of 900 kg/m³.</summary>
    [Theory]
    [InlineData(60.3, 20, 4.541)]
    [InlineData(60.3, 30, 7.660)]
    [InlineData(12, 20, 1.810)]
    public void Glaze_weighs_what_the_standard_s_formula_says(double diameter, double thickness, double mass) =>
        Assert.Equal(mass, IceCoat.MassKilogramsPerMetre(diameter / 1000, thickness / 1000, 900), 5e-4);

    [Fact]
    public void Glaze_of_a_class_grows_the_member_by_twice_its_thickness() =>
        Assert.Equal(0.1003, IceCoat.On(WindRowsForTests.Glaze20, 0.0603, 900).DiameterMetres, 1e-9);

    [Fact]
    public void Rime_taken_as_a_round_coat_has_the_mass_of_its_class()
    {
        (double mass, double diameter) = IceCoat.On(WindRowsForTests.Rime3, 0.03, 500);

        Assert.Equal(1.6, mass, 1e-12);
        Assert.Equal(1.6, Math.PI / 4 * ((diameter * diameter) - (0.03 * 0.03)) * 500, 1e-9);
    }
}
