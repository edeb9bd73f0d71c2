namespace Mastwright.Station.BoxClimate;

/// <summary>The air in a box that is shut tight: its pressure and what it would breathe, by the law of ideal gases.</summary>
public static class SealedAir
{
    /// <summary>One atmosphere in kPa.</summary>
    public const double AtmosphereKilopascals = 101.325;

    /// <summary>Overpressure in kPa, negative for suction, of a box that was shut at one temperature and came to another.</summary>
    /// <param name="shutCelsius">Temperature in °C at which it was shut.</param>
    /// <param name="celsius">Temperature in °C that its air comes to.</param>
    /// <param name="ambientKilopascals">Pressure of the air around it in kPa.</param>
    public static double OverpressureKilopascals(double shutCelsius, double celsius, double ambientKilopascals = AtmosphereKilopascals) =>
        ambientKilopascals * (celsius - shutCelsius) / (HumidAir.FreezingKelvin + shutCelsius);

    /// <summary>Volume of air that a box which can breathe takes in while it cools, in the unit of its own volume.</summary>
    /// <param name="volume">Volume of the box.</param>
    /// <param name="fromCelsius">Temperature in °C before.</param>
    /// <param name="toCelsius">Temperature in °C after, not above the one before.</param>
    public static double Breath(double volume, double fromCelsius, double toCelsius) =>
        volume * (fromCelsius - toCelsius) / (HumidAir.FreezingKelvin + fromCelsius);
}
