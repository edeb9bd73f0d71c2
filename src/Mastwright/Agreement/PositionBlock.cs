using System.Globalization;

namespace Mastwright.Agreement;

/// <summary>Squares of ground whose links are left out together: places near one another share what stands around them.</summary>
public static class PositionBlock
{
    /// <summary>Side of a square in metres (common practice: some times the size of a hill or a quarter).</summary>
    public const double SideMetres = 2000;

    private const double MetresPerDegree = 111_195;

    /// <summary>The name of the square that a place lies in.</summary>
    /// <param name="latitudeDegrees">Latitude, −90 to 90.</param>
    /// <param name="longitudeDegrees">Longitude, −180 to 180.</param>
    /// <remarks>Rows go by latitude; the squares of a row are cut by the length of a degree in it.</remarks>
    public static string Of(double latitudeDegrees, double longitudeDegrees)
    {
        double row = Math.Floor(latitudeDegrees * MetresPerDegree / SideMetres);
        double middle = double.DegreesToRadians((row + 0.5) * SideMetres / MetresPerDegree);
        double column = Math.Floor(longitudeDegrees * MetresPerDegree * Math.Cos(middle) / SideMetres);
        return string.Create(CultureInfo.InvariantCulture, $"{row:0} {column:0}");
    }
}
