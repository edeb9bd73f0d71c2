namespace Mastwright.Station.BoxClimate;

/// <summary>Water vapour in air: saturation, dew point, vapour by volume.</summary>
/// <remarks>
/// Magnus's form over water, as WMO-No. 8 (2018), annex 4.B prints its constants; also used below 0 °C, where it is that of supercooled water and a few per
/// cent above that of ice: dew is then told a little early.
/// </remarks>
public static class HumidAir
{
    private const double SaturationAtFreezingHpa = 6.112;
    private const double Slope = 17.62;
    private const double OffsetCelsius = 243.12;

    /// <summary>216.7 g·K/(m³·hPa): one over the gas constant of water vapour.</summary>
    private const double GramKelvinPerHpa = 216.7;

    private const double IceSlope = 22.46;
    private const double IceOffsetCelsius = 272.62;

    /// <summary>Zero degrees Celsius in kelvins.</summary>
    public const double FreezingKelvin = 273.15;

    /// <summary>Saturation vapour pressure over water in hPa.</summary>
    /// <param name="celsius">Temperature in °C, above -243.</param>
    public static double SaturationHpa(double celsius) => SaturationAtFreezingHpa * Math.Exp(Slope * celsius / (OffsetCelsius + celsius));

    /// <summary>Saturation vapour pressure over ice in hPa.</summary>
    /// <param name="celsius">Temperature in °C, 0 or less.</param>
    public static double SaturationOverIceHpa(double celsius) => SaturationAtFreezingHpa * Math.Exp(IceSlope * celsius / (IceOffsetCelsius + celsius));

    /// <summary>Temperature in °C at which air begins to shed dew when it is cooled.</summary>
    /// <param name="celsius">Temperature in °C.</param>
    /// <param name="humidity">Relative humidity as a share: more than 0, usually at most 1.</param>
    public static double DewPointCelsius(double celsius, double humidity)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(humidity);
        double logarithm = Math.Log(humidity) + (Slope * celsius / (OffsetCelsius + celsius));
        return OffsetCelsius * logarithm / (Slope - logarithm);
    }

    /// <summary>Mass of water vapour in grams in a cubic metre of air.</summary>
    /// <param name="celsius">Temperature of the air in °C.</param>
    /// <param name="vapourHpa">Its vapour pressure in hPa.</param>
    public static double GramsPerCubicMetre(double celsius, double vapourHpa) => GramKelvinPerHpa * vapourHpa / (FreezingKelvin + celsius);
}
