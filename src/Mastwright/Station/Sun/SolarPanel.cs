namespace Mastwright.Station.Sun;

/// <summary>A solar panel as it is mounted.</summary>
public sealed record SolarPanel
{
    /// <summary>Power in watts under standard test conditions (1000 W/m², cells at 25 °C), greater than zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The power is not greater than zero.</exception>
    public required double Watts { get; init => field = value > 0 && double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(nameof(value), "A panel has more than 0 W."); }

    /// <summary>Angle from level in degrees, 0 (lies flat) to 90 (stands upright).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The angle is outside its range.</exception>
    public required double TiltDegrees { get; init => field = value is >= 0 and <= 90 ? value : throw new ArgumentOutOfRangeException(nameof(value), "A panel is tilted by 0 to 90 degrees."); }

    /// <summary>Direction that it faces, in degrees clockwise from true north.</summary>
    public required double AzimuthDegrees { get; init; }

    /// <summary>Temperature in °C that its cells reach under 800 W/m² at 20 °C.</summary>
    public double NominalCellCelsius { get; init; } = SunDefaults.NominalCellCelsius;

    /// <summary>Change of power with each kelvin above 25 °C, as a share: negative.</summary>
    public double PowerPerKelvin { get; init; } = SunDefaults.PowerPerKelvin;

    /// <summary>Share of the light or power lost to dirt, ageing, wiring and spread, 0 to below 1.</summary>
    public double LossShare { get; init; } = SunDefaults.LossShare;

    /// <summary>Share of the light on the ground that it throws back, 0 to 1.</summary>
    public double GroundReflects { get; init; } = SunDefaults.GroundReflects;

    /// <summary>Mean power of the light on a square metre of it, in watts.</summary>
    /// <param name="light">The light of the hour.</param>
    /// <param name="sun">The sun in the middle of the hour.</param>
    /// <param name="horizon">The horizon.</param>
    /// <remarks>
    /// Source: B. Y. H. Liu and R. C. Jordan, Solar Energy 7 (1963), 53-74: an even sky and even ground.
    /// Below its horizon the sun's beam is gone, and the sky gives the share that is left of it on level ground.
    /// </remarks>
    public double LightOn(HourLight light, SunPlace sun, HorizonLine horizon)
    {
        ArgumentNullException.ThrowIfNull(horizon);
        return ViewOf(sun, horizon).LightOf(light);
    }

    /// <summary>What falls on it of each part of the light, by the formula of <see cref="LightOn"/>: for many years of light under one sun.</summary>
    /// <param name="sun">The sun in the middle of the hour.</param>
    /// <param name="horizon">The horizon.</param>
    public PanelView ViewOf(SunPlace sun, HorizonLine horizon)
    {
        ArgumentNullException.ThrowIfNull(horizon);
        double cosine = Math.Cos(double.DegreesToRadians(TiltDegrees));
        return new(
            sun.ElevationDegrees > Math.Max(0, horizon.At(sun.AzimuthDegrees)) ? Math.Max(0, CosineOfIncidence(sun)) : 0,
            horizon.SkyShare * (1 + cosine) / 2,
            GroundReflects * (1 - cosine) / 2);
    }

    /// <summary>Cosine of the angle between the sun's beam and the panel's normal; negative behind it.</summary>
    public double CosineOfIncidence(SunPlace sun)
    {
        double elevation = double.DegreesToRadians(sun.ElevationDegrees);
        double tilt = double.DegreesToRadians(TiltDegrees);
        return (Math.Sin(elevation) * Math.Cos(tilt))
            + (Math.Cos(elevation) * Math.Sin(tilt) * Math.Cos(double.DegreesToRadians(sun.AzimuthDegrees - AzimuthDegrees)));
    }

    /// <summary>Temperature of its cells in °C.</summary>
    /// <param name="light">Mean power of the light on a square metre of it, in watts.</param>
    /// <param name="outsideCelsius">Temperature of the air.</param>
    /// <remarks>Source: the nominal operating cell temperature of IEC 61215, taken in proportion to the light (Ross 1976: common practice).</remarks>
    public double CellCelsius(double light, double outsideCelsius) => outsideCelsius + ((NominalCellCelsius - 20) / 800 * light);

    /// <summary>Factor on its power at a temperature of its cells, zero or more.</summary>
    public double TemperatureFactor(double cellCelsius) => Math.Max(0, 1 + (PowerPerKelvin * (cellCelsius - 25)));
}
