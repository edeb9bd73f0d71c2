namespace Mastwright.Station.Sun;

/// <summary>Where the sun stands.</summary>
/// <remarks>
/// <para>Source: J. J. Michalsky, "The Astronomical Almanac's algorithm for approximate solar position (1950-2050)", Solar Energy 40 (1988), 227-235.</para>
/// <para>Error: within 0.01° of the ephemeris from 1950 to 2050, by the source; the example of NREL/TP-560-34302 is met within 0.02° (measured in SunPositionTests). Refraction is left out.</para>
/// </remarks>
public static class SunPosition
{
    /// <summary>Julian day number of noon on 1 January 2000 UT.</summary>
    private const double Epoch2000 = 2_451_545;

    /// <summary>Julian date of a moment.</summary>
    /// <param name="year">Year of the Gregorian calendar.</param>
    /// <param name="dayOfYear">Day of the year, from 1; a fraction is a part of the day, from midnight UT.</param>
    public static double JulianDate(int year, double dayOfYear)
    {
        int before = year - 1;
        int days = (365 * before) + (before / 4) - (before / 100) + (before / 400);
        return 1_721_424.5 + days + dayOfYear;
    }

    /// <summary>The sun's place in the sky.</summary>
    /// <param name="julianDate">Julian date in universal time.</param>
    /// <param name="place">Where one stands.</param>
    public static SunPlace Of(double julianDate, SunSite place)
    {
        double n = julianDate - Epoch2000;
        double meanLongitude = 280.460 + (0.985_647_4 * n);
        double anomaly = Radians(357.528 + (0.985_600_3 * n));
        double longitude = Radians(meanLongitude + (1.915 * Math.Sin(anomaly)) + (0.020 * Math.Sin(2 * anomaly)));
        double obliquity = Radians(23.439 - (0.000_000_4 * n));
        double ascension = Math.Atan2(Math.Cos(obliquity) * Math.Sin(longitude), Math.Cos(longitude));
        double declination = Math.Asin(Math.Sin(obliquity) * Math.Sin(longitude));
        double hours = (julianDate - 0.5 - Math.Floor(julianDate - 0.5)) * 24;
        double siderealHours = 6.697_375 + (0.065_709_824_2 * n) + hours;
        double hourAngle = Radians((siderealHours * 15) + place.LongitudeDegrees) - ascension;
        double latitude = Radians(place.LatitudeDegrees);
        double east = -Math.Cos(declination) * Math.Sin(hourAngle);
        double north = (Math.Sin(declination) * Math.Cos(latitude)) - (Math.Cos(declination) * Math.Sin(latitude) * Math.Cos(hourAngle));
        double up = (Math.Sin(declination) * Math.Sin(latitude)) + (Math.Cos(declination) * Math.Cos(latitude) * Math.Cos(hourAngle));
        double azimuth = double.RadiansToDegrees(Math.Atan2(east, north));
        double distance = 1.000_14 - (0.016_71 * Math.Cos(anomaly)) - (0.000_14 * Math.Cos(2 * anomaly));
        return new(double.RadiansToDegrees(Math.Asin(Math.Clamp(up, -1, 1))), azimuth < 0 ? azimuth + 360 : azimuth, distance);
    }

    private static double Radians(double degrees) => double.DegreesToRadians(degrees);
}

/// <summary>Where the sun stands, seen from a place.</summary>
/// <param name="ElevationDegrees">Angle above the level horizon, without refraction.</param>
/// <param name="AzimuthDegrees">Direction clockwise from true north, 0 to 360.</param>
/// <param name="DistanceAu">Distance from the earth in astronomical units.</param>
public readonly record struct SunPlace(double ElevationDegrees, double AzimuthDegrees, double DistanceAu)
{
    /// <summary>Sine of the elevation: what a level square metre sees of a beam.</summary>
    public double Up => Math.Sin(double.DegreesToRadians(ElevationDegrees));

    /// <summary>Elevation and azimuth, in the invariant culture.</summary>
    public override string ToString() => FormattableString.Invariant($"{ElevationDegrees:0.##}° high at {AzimuthDegrees:0.#}°");
}

/// <summary>Where on the earth one stands, as far as the sun asks.</summary>
/// <param name="LatitudeDegrees">Latitude, north positive.</param>
/// <param name="LongitudeDegrees">Longitude, east positive.</param>
public readonly record struct SunSite(double LatitudeDegrees, double LongitudeDegrees)
{
    private const double EarthKilometres = 6371;

    /// <summary>Distance to another place in kilometres, along a great circle of a round earth (mean radius 6371 km): within 0.6 %.</summary>
    /// <param name="other">The other place.</param>
    public double KilometresTo(SunSite other)
    {
        double Haversine(double degrees)
        {
            double sine = Math.Sin(double.DegreesToRadians(degrees) / 2);
            return sine * sine;
        }

        double across = Math.Cos(double.DegreesToRadians(LatitudeDegrees)) * Math.Cos(double.DegreesToRadians(other.LatitudeDegrees));
        double share = Haversine(other.LatitudeDegrees - LatitudeDegrees) + (across * Haversine(other.LongitudeDegrees - LongitudeDegrees));
        return 2 * EarthKilometres * Math.Asin(Math.Sqrt(Math.Min(1, share)));
    }

    /// <summary>Both, in the invariant culture.</summary>
    public override string ToString() => FormattableString.Invariant($"{LatitudeDegrees:0.####}, {LongitudeDegrees:0.####}");
}
