namespace Mastwright.Station.BoxClimate;

/// <summary>What a surface loses to a sky that is colder than the air.</summary>
public static class NightSky
{
    /// <summary>Constant of Stefan and Boltzmann in W/(m²·K⁴), CODATA 2018.</summary>
    public const double StefanBoltzmann = 5.670374419e-8;

    /// <summary>Radiation of a clear sky on a level surface in W/m²: that of a black body at 0.0552·T^1.5 kelvins (Swinbank 1963, from memory).</summary>
    /// <param name="celsius">Temperature of the air in °C.</param>
    public static double ClearSkyWattsPerSquareMetre(double celsius)
    {
        double sky = 0.0552 * Math.Pow(HumidAir.FreezingKelvin + celsius, 1.5);
        return StefanBoltzmann * sky * sky * sky * sky;
    }

    /// <summary>What a black surface at the air's temperature sends out, in W/m².</summary>
    /// <param name="celsius">Temperature of the air in °C.</param>
    public static double BlackWattsPerSquareMetre(double celsius)
    {
        double kelvin = HumidAir.FreezingKelvin + celsius;
        return StefanBoltzmann * kelvin * kelvin * kelvin * kelvin;
    }

    /// <summary>What a level surface at the air's temperature loses to the sky, in W/m²: zero or more.</summary>
    /// <param name="emissivity">Emissivity of the surface, 0 to 1.</param>
    /// <param name="celsius">Temperature of the air in °C.</param>
    /// <param name="skyWattsPerSquareMetre">Radiation of the sky on the level; null for a clear sky.</param>
    public static double LossWattsPerSquareMetre(double emissivity, double celsius, double? skyWattsPerSquareMetre = null) =>
        emissivity * Math.Max(0, BlackWattsPerSquareMetre(celsius) - (skyWattsPerSquareMetre ?? ClearSkyWattsPerSquareMetre(celsius)));
}
