namespace Mastwright.Geodesy;

/// <summary>The ellipsoid on which every position of the program lies.</summary>
/// <remarks>Source: NGA.STND.0036 (World Geodetic System 1984), defining parameters a and 1/f; the others follow from them.</remarks>
public static class Wgs84
{
    /// <summary>Equatorial radius a, in metres.</summary>
    public const double EquatorialRadiusMetres = 6378137;

    /// <summary>Flattening f = (a - b)/a, dimensionless.</summary>
    public const double Flattening = 1 / 298.257223563;

    /// <summary>Polar radius b, in metres.</summary>
    public const double PolarRadiusMetres = EquatorialRadiusMetres * (1 - Flattening);

    /// <summary>First eccentricity squared, e² = f(2 - f).</summary>
    public const double EccentricitySquared = Flattening * (2 - Flattening);

    /// <summary>Second eccentricity squared, e'² = e²/(1 - e²).</summary>
    public const double SecondEccentricitySquared = EccentricitySquared / (1 - EccentricitySquared);

    /// <summary>Third flattening n = (a - b)/(a + b) = f/(2 - f).</summary>
    public const double ThirdFlattening = Flattening / (2 - Flattening);
}
