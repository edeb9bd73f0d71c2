using Mastwright.Quantities;

namespace Mastwright.Station.BoxClimate;

/// <summary>A box with its numbers found, and what it comes to in the air of an hour.</summary>
public sealed record BoxModel
{
    /// <summary>Heat in J that a cubic metre of air takes up for each kelvin, at 20 °C and sea level.</summary>
    private const double AirJoulesPerCubicMetreKelvin = 1206;

    private const double SecondsPerHour = 3600;

    /// <summary>Its measures.</summary>
    public required BoxSurface Surface { get; init; }

    /// <summary>How it is mounted.</summary>
    public BoxMounting Mounting { get; init; }

    /// <summary>What it is made of.</summary>
    public required BoxMaterialRow Material { get; init; }

    /// <summary>Share of the sun's power that it takes up, 0 to 1.</summary>
    public required double Absorptivity { get; init; }

    /// <summary>Share of sun and sky that it sees, 0 to 1.</summary>
    public double OpenShare { get; init; } = 1;

    /// <summary>How often an hour its air is replaced.</summary>
    public Estimate AirChangesPerHour { get; init; }

    /// <summary>Heat of everything inside in W, heater included.</summary>
    public double OwnWatts { get; init; }

    /// <summary>The area in m² that gives off heat.</summary>
    public double EffectiveSquareMetres => Surface.EffectiveSquareMetres(Mounting);

    /// <summary>Its balance in still or moving air.</summary>
    /// <param name="outsideCelsius">Temperature of the air in °C.</param>
    /// <param name="windMetresPerSecond">Wind at the box in m/s.</param>
    public BoxBalance Balance(double outsideCelsius, double windMetresPerSecond = 0) => new(
        Material, EffectiveSquareMetres, outsideCelsius, windMetresPerSecond, AirJoulesPerCubicMetreKelvin * Surface.CubicMetres * AirChangesPerHour.Median / SecondsPerHour);

    /// <summary>What the wall takes up in the hottest hour, in W: the sun of <see cref="BoxDefaults"/> on the broadest side.</summary>
    public double DesignSunWatts => Absorptivity * OpenShare * BoxDefaults.SunWattsPerSquareMetre * Surface.LargestShadowSquareMetres;

    /// <summary>What the wall loses to the sky, in W.</summary>
    /// <param name="outsideCelsius">Temperature of the air in °C.</param>
    /// <param name="skyWattsPerSquareMetre">Radiation of the sky; null for a clear one.</param>
    public double SkyWatts(double outsideCelsius, double? skyWattsPerSquareMetre = null) => RoofLoss(outsideCelsius, skyWattsPerSquareMetre) * Surface.SkySquareMetres(Mounting);

    /// <summary>Temperature in °C of the air inside in the hottest hour: full sun, no wind.</summary>
    /// <param name="outsideCelsius">Temperature of the air outside in °C.</param>
    public double HottestCelsius(double outsideCelsius) => outsideCelsius + Balance(outsideCelsius).InsideRiseKelvin(OwnWatts, DesignSunWatts);

    /// <summary>Temperature in °C of the air inside in a clear, still night.</summary>
    /// <param name="outsideCelsius">Temperature of the air outside in °C.</param>
    public double NightCelsius(double outsideCelsius) => outsideCelsius + Balance(outsideCelsius).InsideRiseKelvin(OwnWatts, -SkyWatts(outsideCelsius));

    /// <summary>Temperature in °C of the roof, the coldest part of the wall, in a clear, still night.</summary>
    /// <param name="outsideCelsius">Temperature of the air outside in °C.</param>
    public double RoofCelsius(double outsideCelsius) => RoofCelsius(outsideCelsius, Balance(outsideCelsius), 0, null);

    /// <summary>Heat in W inside that keeps the roof at a temperature in a clear, still night; zero when it needs none.</summary>
    /// <param name="outsideCelsius">Temperature of the air outside in °C.</param>
    /// <param name="wantedCelsius">Temperature wanted of the roof in °C.</param>
    public double WattsForRoof(double outsideCelsius, double wantedCelsius)
    {
        // The roof's temperature is linear in the heat inside.
        double without = (this with { OwnWatts = 0 }).RoofCelsius(outsideCelsius);
        double byOne = (this with { OwnWatts = 1 }).RoofCelsius(outsideCelsius) - without;
        return Math.Max(0, (wantedCelsius - without) / byOne);
    }

    /// <summary>Air inside and coldest wall in an hour of weather, in °C.</summary>
    /// <param name="hour">The hour.</param>
    public (double Inside, double Cold, double Roof) Of(in BoxHour hour)
    {
        BoxBalance balance = Balance(hour.OutsideCelsius, hour.WindMetresPerSecond * BoxDefaults.WindShare);
        double sun = Absorptivity * OpenShare * Surface.SunWatts(hour.DirectNormal, hour.DiffuseHorizontal, hour.GlobalHorizontal, Mounting);
        double wall = sun - SkyWatts(hour.OutsideCelsius, hour.Sky);
        return (
            hour.OutsideCelsius + balance.InsideRiseKelvin(OwnWatts, wall),
            hour.OutsideCelsius + balance.InsideRiseKelvin(0, wall),
            RoofCelsius(hour.OutsideCelsius, balance, sun, hour.Sky));
    }

    private double RoofCelsius(double outside, in BoxBalance balance, double sunWatts, double? sky)
    {
        double skyWatts = SkyWatts(outside, sky);
        return outside + balance.WallRiseKelvin(OwnWatts, sunWatts - skyWatts) - balance.RoofDropKelvin(RoofLoss(outside, sky), skyWatts, EffectiveSquareMetres);
    }

    private double RoofLoss(double outside, double? sky) => OpenShare * NightSky.LossWattsPerSquareMetre(Material.Emissivity, outside, sky);
}
