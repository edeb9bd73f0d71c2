namespace Mastwright.Station.BoxClimate;

/// <summary>The steady heat balance of a box: own heat, sun, sky, wind, and air that passes through.</summary>
/// <remarks>
/// <para>
/// Two temperatures, the air inside and the wall, in still or moving air: P = K₁·(Tᵢ − T_w) + G·(Tᵢ − Tₒ) and K₁·(Tᵢ − T_w) + X = K₂·(T_w − Tₒ), with K₁ = hᵢ·A,
/// K₂ = hₒ·A, G the heat that passing air carries off, and X what the wall takes up of the sun less what it loses to the sky. Outside film: hₒ = 4 + 4·v + 4·ε·σ·T³
/// (ISO 6946:2017, annex C, from memory). Inside film: what is left of the catalogue's transmittance U in still air at 20 °C, so that without sun, sky and
/// wind the rise is P/(U·A) to the letter.
/// </para>
/// <para>A box of some kilograms follows in well under an hour (m·c/(U·A)), so that an hourly year is a row of such balances.</para>
/// </remarks>
public readonly record struct BoxBalance
{
    private const double StillFilm = 4;
    private const double FilmPerMetrePerSecond = 4;
    private const double ReferenceCelsius = 20;

    private readonly double _inner;
    private readonly double _outer;
    private readonly double _through;

    /// <summary>Makes the balance of a box in the air of an hour.</summary>
    /// <param name="material">What it is made of; its U is below what the outside film alone lets through (<see cref="IsPossible"/>).</param>
    /// <param name="effectiveSquareMetres">The area that gives off heat in m², greater than zero.</param>
    /// <param name="outsideCelsius">Temperature of the air in °C.</param>
    /// <param name="windMetresPerSecond">Wind at the box in m/s, zero or more.</param>
    /// <param name="throughWattsPerKelvin">Heat that passing air carries off, in W/K, zero or more.</param>
    public BoxBalance(BoxMaterialRow material, double effectiveSquareMetres, double outsideCelsius, double windMetresPerSecond = 0, double throughWattsPerKelvin = 0)
    {
        ArgumentNullException.ThrowIfNull(material);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(effectiveSquareMetres);
        ArgumentOutOfRangeException.ThrowIfNegative(windMetresPerSecond);
        ArgumentOutOfRangeException.ThrowIfNegative(throughWattsPerKelvin);
        OuterFilm = Film(material.Emissivity, outsideCelsius, windMetresPerSecond);
        _inner = effectiveSquareMetres / ((1 / material.WattsPerSquareMetreKelvin) - (1 / Film(material.Emissivity, ReferenceCelsius, 0)));
        _outer = effectiveSquareMetres * OuterFilm;
        _through = throughWattsPerKelvin;
    }

    /// <summary>Heat in W/(m²·K) that the outside film lets through.</summary>
    public double OuterFilm { get; }

    /// <summary>Heat in W/K from the air inside to that outside, through the wall alone.</summary>
    public double WallWattsPerKelvin => _inner * _outer / (_inner + _outer);

    /// <summary>Share of what the wall takes up that warms the air inside.</summary>
    public double WallShare => _inner / (_inner + _outer);

    /// <summary>Whether a material's U can be: below what its outside film alone lets through.</summary>
    public static bool IsPossible(double wattsPerSquareMetreKelvin, double emissivity) => wattsPerSquareMetreKelvin < Film(emissivity, ReferenceCelsius, 0);

    /// <summary>Kelvins by which the air inside is warmer than that outside.</summary>
    /// <param name="ownWatts">Heat of the parts inside, in W.</param>
    /// <param name="wallWatts">What the wall takes up of the sun less what it loses to the sky, in W.</param>
    public double InsideRiseKelvin(double ownWatts, double wallWatts) => (ownWatts + (wallWatts * WallShare)) / (WallWattsPerKelvin + _through);

    /// <summary>Kelvins by which the wall, on the whole, is warmer than the air outside.</summary>
    /// <param name="ownWatts">Heat of the parts inside, in W.</param>
    /// <param name="wallWatts">What the wall takes up of the sun less what it loses to the sky, in W.</param>
    public double WallRiseKelvin(double ownWatts, double wallWatts) =>
        ((_inner * InsideRiseKelvin(ownWatts, wallWatts)) + wallWatts) / (_inner + _outer);

    /// <summary>Kelvins by which the roof is colder than the rest of the wall under a sky that takes heat from it: no more than a thin wall of poor conduction lets it be.</summary>
    /// <param name="roofLoss">What the roof loses to the sky, in W/m².</param>
    /// <param name="wallWatts">What the whole wall loses to it, in W.</param>
    /// <param name="effectiveSquareMetres">The area that gives off heat in m².</param>
    public double RoofDropKelvin(double roofLoss, double wallWatts, double effectiveSquareMetres) =>
        Math.Max(0, (roofLoss - (wallWatts / effectiveSquareMetres)) / (OuterFilm + (_inner / effectiveSquareMetres)));

    /// <summary>Rise in kelvins by the trade's plain form P/(U·A).</summary>
    /// <param name="watts">Heat in W.</param>
    /// <param name="wattsPerSquareMetreKelvin">U in W/(m²·K).</param>
    /// <param name="squareMetres">Area in m².</param>
    public static double PlainRiseKelvin(double watts, double wattsPerSquareMetreKelvin, double squareMetres) => watts / (wattsPerSquareMetreKelvin * squareMetres);

    /// <summary>Kelvins by which a surface in the sun is warmer than the air when nothing behind it takes heat: a·G/h (sol-air temperature).</summary>
    /// <param name="absorptivity">Share of the sun that it takes up.</param>
    /// <param name="sunWattsPerSquareMetre">The sun on it in W/m².</param>
    /// <param name="film">Heat that its film lets through in W/(m²·K).</param>
    public static double SolAirRiseKelvin(double absorptivity, double sunWattsPerSquareMetre, double film) => absorptivity * sunWattsPerSquareMetre / film;

    private static double Film(double emissivity, double celsius, double wind)
    {
        double kelvin = HumidAir.FreezingKelvin + celsius;
        return StillFilm + (FilmPerMetrePerSecond * wind) + (4 * emissivity * NightSky.StefanBoltzmann * kelvin * kelvin * kelvin);
    }
}
