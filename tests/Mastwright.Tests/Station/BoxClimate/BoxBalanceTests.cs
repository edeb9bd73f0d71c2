using CsCheck;
using Mastwright.Quantities;
using Mastwright.Station.BoxClimate;

namespace Mastwright.Tests.Station.BoxClimate;

public sealed class BoxBalanceTests
{
    private static readonly BoxMaterialRow Painted = new("painted-steel", 5.5, 0.9, "test");

    private static Gen<BoxModel> Boxes { get; } = Gen.Select(Gen.Double[0.1, 1], Gen.Double[0.1, 1], Gen.Double[0.05, 0.6], Gen.Double[0, 1], Gen.Double[0, 20], Gen.Double[0, 10])
        .Select((width, height, depth, absorptivity, own, changes) => new BoxModel
        {
            Surface = new(width, height, depth),
            Material = Painted,
            Absorptivity = absorptivity,
            OwnWatts = own,
            AirChangesPerHour = Estimate.Exactly(changes),
        });

    /// <summary>P/(U·A) for makers' U, worked by an independent script.</summary>
    [Theory]
    [InlineData(3, 5.5, 0.16, 0.9, 3.409)]
    [InlineData(10, 5.5, 0.5, 0.9, 3.636)]
    [InlineData(10, 3.6, 0.5, 0.3, 5.556)]
    public void Without_sun_sky_and_wind_the_rise_is_the_trade_s_plain_form(double watts, double through, double area, double emissivity, double kelvin)
    {
        Assert.Equal(kelvin, BoxBalance.PlainRiseKelvin(watts, through, area), 5e-4);
        Assert.Equal(kelvin, new BoxBalance(new("m", through, emissivity, ""), area, 20).InsideRiseKelvin(watts, 0), 5e-4);
    }

    /// <summary>Sun on 0.04 m² at 1000 W/m² of a box of 0.16 m² and U 5.5, the sun counted as if it came in whole: independent script. The wall lets less of it in.</summary>
    [Theory]
    [InlineData(0.25, 10, 11.364)]
    [InlineData(0.5, 20, 22.727)]
    [InlineData(0.7, 28, 31.818)]
    [InlineData(0.95, 38, 43.182)]
    public void The_sun_warms_no_more_than_if_all_of_it_came_in(double absorptivity, double watts, double kelvin)
    {
        Assert.Equal(watts, absorptivity * 1000 * 0.04, 1e-9);
        Assert.Equal(kelvin, BoxBalance.PlainRiseKelvin(watts, 5.5, 0.16), 5e-4);
        double rise = new BoxBalance(Painted, 0.16, 20).InsideRiseKelvin(0, watts);
        Assert.InRange(rise, 0.5 * kelvin, kelvin);
    }

    [Fact]
    public void Sol_air_temperatures_come_out_as_worked()
    {
        // Independent script: h 17 W/(m²·K), 1000 W/m², absorptivity 0.26 and 0.90.
        Assert.Equal(15.294, BoxBalance.SolAirRiseKelvin(0.26, 1000, 17), 5e-4);
        Assert.Equal(52.941, BoxBalance.SolAirRiseKelvin(0.90, 1000, 17), 5e-4);
    }

    [Fact]
    public void The_outside_film_in_wind_is_that_of_the_building_standard()
    {
        // ISO 6946 prints a surface resistance of 0.04 m²K/W at 4 m/s, emissivity 0.9 (from memory).
        Assert.Equal(0.04, 1 / new BoxBalance(Painted, 1, 10, 4).OuterFilm, 1e-3);
    }

    [Fact]
    public void A_box_of_48_by_36_by_16_inches_has_42_667_square_feet()
    {
        // A maker's public chart example counts 42 ft²; exactly it is 42.667.
        BoxSurface box = new(48 * 0.0254, 36 * 0.0254, 16 * 0.0254);
        Assert.Equal(42.667, box.WholeSquareMetres / 0.09290304, 1e-3);
        Assert.Equal(3.9639, box.WholeSquareMetres, 1e-4);
    }

    [Fact]
    public void Effective_areas_are_the_trade_s_formulas()
    {
        BoxSurface box = new(0.4, 0.6, 0.2);
        Assert.Equal((1.8 * 0.6 * (0.4 + 0.2)) + (1.4 * 0.4 * 0.2), box.EffectiveSquareMetres(BoxMounting.Free), 1e-12);
        Assert.Equal((1.4 * 0.4 * (0.6 + 0.2)) + (1.8 * 0.2 * 0.6), box.EffectiveSquareMetres(BoxMounting.Wall), 1e-12);
    }

    [Fact]
    public void No_sun_from_anywhere_meets_more_than_the_broadest_side() =>
        Gen.Select(Gen.Double[0.05, 2], Gen.Double[0.05, 2], Gen.Double[0.05, 2], Gen.Double[0, 1]).Sample((width, height, depth, sine) =>
        {
            BoxSurface box = new(width, height, depth);
            Assert.True(box.SunWatts(1000, 0, 1000 * sine, BoxMounting.Free) - (0.2 * 1000 * sine * (box.RoofSquareMetres + (height * (width + depth)))) <= (1000 * box.LargestShadowSquareMetres) + 1e-9);
        });

    [Fact]
    public void More_heat_inside_never_makes_it_cooler() =>
        Gen.Select(Boxes, Gen.Double[-30, 45], Gen.Double[0, 10]).Sample((box, outside, more) =>
        {
            BoxModel warmer = box with { OwnWatts = box.OwnWatts + more };
            Assert.True(warmer.HottestCelsius(outside) >= box.HottestCelsius(outside) - 1e-9);
            Assert.True(warmer.RoofCelsius(outside) >= box.RoofCelsius(outside) - 1e-9);
        });

    [Fact]
    public void A_lighter_colour_is_never_hotter_in_the_sun() =>
        Gen.Select(Boxes, Gen.Double[-30, 45], Gen.Double[0, 1]).Sample((box, outside, share) =>
            Assert.True((box with { Absorptivity = box.Absorptivity * share }).HottestCelsius(outside) <= box.HottestCelsius(outside) + 1e-9));

    [Fact]
    public void Shade_is_never_hotter_by_day_nor_colder_by_night() =>
        Gen.Select(Boxes, Gen.Double[-30, 45], Gen.Double[0, 1]).Sample((box, outside, share) =>
        {
            BoxModel shaded = box with { OpenShare = share };
            Assert.True(shaded.HottestCelsius(outside) <= box.HottestCelsius(outside) + 1e-9);
            Assert.True(shaded.RoofCelsius(outside) >= box.RoofCelsius(outside) - 1e-9);
        });

    [Fact]
    public void More_wind_never_makes_a_warm_box_warmer() =>
        Gen.Select(Boxes, Gen.Double[-30, 45], Gen.Double[0, 20], Gen.Double[0, 20]).Sample((box, outside, wind, more) =>
            Assert.True(box.Balance(outside, wind + more).InsideRiseKelvin(box.OwnWatts, box.DesignSunWatts)
                <= box.Balance(outside, wind).InsideRiseKelvin(box.OwnWatts, box.DesignSunWatts) + 1e-9));

    [Fact]
    public void What_comes_in_goes_out() =>
        Gen.Select(Boxes, Gen.Double[-30, 45], Gen.Double[0, 20], Gen.Double[-50, 200]).Sample((box, outside, wind, wall) =>
        {
            // Energy: own heat and the wall's leave through the outside film and with the air that passes.
            BoxBalance balance = box.Balance(outside, wind);
            double through = 1206 * box.Surface.CubicMetres * box.AirChangesPerHour.Median / 3600;
            double leaves = (balance.OuterFilm * box.EffectiveSquareMetres * balance.WallRiseKelvin(box.OwnWatts, wall)) + (through * balance.InsideRiseKelvin(box.OwnWatts, wall));
            Assert.Equal(box.OwnWatts + wall, leaves, 1e-6);
        });

    [Fact]
    public void The_heat_that_keeps_the_roof_dry_does_so() =>
        Gen.Select(Boxes, Gen.Double[-20, 20], Gen.Double[0.5, 1]).Sample((box, outside, humidity) =>
        {
            double dew = HumidAir.DewPointCelsius(outside, humidity);
            double watts = box.WattsForRoof(outside, dew);
            Assert.True((box with { OwnWatts = watts }).RoofCelsius(outside) >= dew - 1e-6);
            Assert.True(watts == 0 || (box with { OwnWatts = 0.99 * watts }).RoofCelsius(outside) < dew);
        });

    [Fact]
    public void A_clear_sky_at_freezing_point_takes_some_90_watts_from_a_square_metre()
    {
        // Swinbank's form by hand: 0.0552·273.15^1.5 = 249.2 K; σ·(273.15⁴ − 249.2⁴) = 97 W/m², times 0.9.
        Assert.Equal(87.4, NightSky.LossWattsPerSquareMetre(0.9, 0), 0.5);
        Assert.Equal(0, NightSky.LossWattsPerSquareMetre(0.9, 0, 400));
    }
}
