using System.Globalization;

namespace Mastwright.Geodesy;

/// <summary>A place in the Universal Transverse Mercator grid on WGS 84.</summary>
public sealed record UtmPosition
{
    /// <summary>Makes a position.</summary>
    /// <param name="zone">Zone, 1 to 60.</param>
    /// <param name="north">True for the northern grid, false for the southern one, whose equator has the northing 10,000,000 m.</param>
    /// <param name="eastingMetres">Easting in metres, -4,000,000 to 5,000,000; 500,000 on the zone's meridian.</param>
    /// <param name="northingMetres">Northing in metres, -10,000,000 to 20,000,000.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public UtmPosition(int zone, bool north, double eastingMetres, double northingMetres)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(zone, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(zone, 60);
        if (!(eastingMetres is >= -4e6 and <= 5e6))
        {
            throw new ArgumentOutOfRangeException(nameof(eastingMetres), eastingMetres, "An easting is within 4,500 km of 500,000 m.");
        }

        if (!(northingMetres is >= -1e7 and <= 2e7))
        {
            throw new ArgumentOutOfRangeException(nameof(northingMetres), northingMetres, "A northing is between -10,000 and 20,000 km.");
        }

        (Zone, North, EastingMetres, NorthingMetres) = (zone, north, eastingMetres, northingMetres);
    }

    /// <summary>Zone, 1 to 60.</summary>
    public int Zone { get; }

    /// <summary>Whether the northing counts from the equator (true) or from 10,000 km south of it.</summary>
    public bool North { get; }

    /// <summary>Easting in metres, 500,000 on the zone's meridian.</summary>
    public double EastingMetres { get; }

    /// <summary>Northing in metres.</summary>
    public double NorthingMetres { get; }

    /// <summary>Zone and hemisphere in words, easting, northing in whole metres: "28 north 400000 5139000".</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Zone} {(North ? "north" : "south")} {EastingMetres:0} {NorthingMetres:0}");
}
