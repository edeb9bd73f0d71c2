using Mastwright.Station.Sun;

namespace Mastwright.Tests.Station.Sun;

public sealed class SunLightTests
{
    /// <summary>Published test values of the Haurwitz model by zenith (a well-known open library's own tests), and further ones from the formula.</summary>
    [Theory]
    [InlineData(85, 48.6298687941956)]
    [InlineData(80, 135.741748091813)]
    [InlineData(60, 487.894132885425)]
    [InlineData(40, 778.766689344363)]
    [InlineData(0, 1035.09203253450)]
    [InlineData(90, 0)]
    [InlineData(100, 0)]
    public void The_clear_sky_is_that_of_the_published_values(double zenith, double expected) =>
        Assert.Equal(expected, SunLight.ClearGlobal(zenith == 90 ? 0 : Math.Cos(double.DegreesToRadians(zenith))), 1e-6);

    /// <summary>
    /// Isotropic sky and ground (Liu and Jordan): 800, 700 and 263.769 W/m², the sun 50° high in the south, 30° of tilt: 689.365 + 246.100 + 10.718 W/m²;
    /// an upright panel under 450, 650, 125 W/m² and a sun 30° high: 562.917 + 62.5 + 45.0 W/m² (computed from the formula).
    /// </summary>
    [Theory]
    [InlineData(800, 700, 263.769, 50, 30, 946.183)]
    [InlineData(450, 650, 125, 30, 90, 670.417)]
    public void The_panel_gets_the_light_of_the_formula(double global, double direct, double diffuse, double elevation, double tilt, double expected) =>
        Assert.Equal(
            expected,
            new SolarPanel { Watts = 1, TiltDegrees = tilt, AzimuthDegrees = 180 }.LightOn(new(global, direct, diffuse), new(elevation, 180, 1), HorizonLine.Level),
            0.001);

    /// <summary>45 °C nominal, 1000 W/m² at 25 °C: 56.25 °C; at -0.4 % a kelvin a factor of 0.875.</summary>
    [Fact]
    public void Warm_cells_give_less()
    {
        SolarPanel panel = new() { Watts = 1, TiltDegrees = 0, AzimuthDegrees = 0, NominalCellCelsius = 45, PowerPerKelvin = -0.004 };
        Assert.Equal(56.25, panel.CellCelsius(1000, 25), 1e-9);
        Assert.Equal(0.875, panel.TemperatureFactor(56.25), 1e-9);
    }

    [Fact]
    public void The_parts_of_the_light_make_up_the_whole() =>
        Gen.Select(Gen.Double[0.01, 90], Gen.Double[0, 1100]).Sample((elevation, global) =>
        {
            SunPlace sun = new(elevation, 180, 1);
            HourLight light = SunLight.Split(global, sun);
            Assert.Equal(global, (light.Direct * sun.Up) + light.Diffuse, 1e-9);
            Assert.True(light.Direct >= 0 && light.Diffuse >= -1e-9 && light.Direct <= 1400);
        });

    /// <summary>A wall all round up to 30° hides sin² 30° = a quarter of an even sky.</summary>
    [Fact]
    public void A_wall_hides_its_share_of_the_sky()
    {
        HorizonLine wall = HorizonLine.Of([30, 30, 30, 30]);
        Assert.Equal(0.75, wall.SkyShare, 1e-12);
        Assert.Equal(15, HorizonLine.Of([0, 30, 0, 0]).At(45), 1e-12);
        Assert.Equal(15, HorizonLine.Of([30, 0, 0, 0]).At(315), 1e-12);
        Assert.Equal(30, HorizonLine.Of([30, 0, 0, 0]).At(-360), 1e-12);
    }
}
