using System.Runtime.InteropServices;
using Mastwright.Ground;

namespace Mastwright.Propagation;

/// <summary>How a path divides into sea, coast and inland, and what follows for ducts.</summary>
/// <param name="SeaFraction">Share ω of the path over sea, 0 to 1 (P.1812 table 5).</param>
/// <param name="LongestLandMetres">Longest continuous stretch dtm of land, coast or inland, in metres (P.1812 section 3.6).</param>
/// <param name="LongestInlandMetres">Longest continuous stretch dlm of inland, in metres (P.1812 section 3.6).</param>
/// <remarks>Each point stands for the ground half way to its neighbours; the published results confirm that.</remarks>
public readonly record struct RadioClimate(double SeaFraction, double LongestLandMetres, double LongestInlandMetres)
{
    /// <summary>Reads the zones of a profile.</summary>
    public static RadioClimate Of(PathProfile profile)
    {
        ArgumentNullException.ThrowIfNull(profile);
        return profile.Climate;
    }

    internal static RadioClimate Of(ReadOnlySpan<double> d, ReadOnlySpan<Zone> zones)
    {
        if (MemoryMarshal.Cast<Zone, int>(zones).IndexOfAnyExcept((int)Zone.Inland) < 0)
        {
            return new(0, d[^1], d[^1]);
        }

        double sea = 0;
        double land = 0;
        double inland = 0;
        double longestLand = 0;
        double longestInland = 0;
        for (int i = 0; i < d.Length; i++)
        {
            double share = (d[Math.Min(i + 1, d.Length - 1)] - d[Math.Max(i - 1, 0)]) / 2;
            if (zones[i] == Zone.Sea)
            {
                sea += share;
                land = 0;
                inland = 0;
                continue;
            }

            land += share;
            inland = zones[i] == Zone.Inland ? inland + share : 0;
            longestLand = Math.Max(longestLand, land);
            longestInland = Math.Max(longestInland, inland);
        }

        bool allSea = longestLand == 0;
        return new(allSea ? 1 : sea / d[^1], longestLand, longestInland);
    }

    /// <summary>Parameter τ of the land that keeps ducts away, dimensionless.</summary>
    /// <remarks>Source: Rec. ITU-R P.1812 equation (3).</remarks>
    internal double Tau => 1 - Math.Exp(-4.12e-4 * Math.Pow(LongestInlandMetres / 1000, 2.41));

    /// <summary>Share β0 of the time, in percent, in which ducting is expected, at the middle of the path.</summary>
    /// <param name="latitudeDegrees">Latitude of the middle of the path, −90 to 90.</param>
    /// <remarks>Source: Rec. ITU-R P.1812 section 3.6, equations (2) to (5).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The latitude is outside its range.</exception>
    public double DuctingPercent(double latitudeDegrees) => DuctingPercent(Domain.Within(latitudeDegrees, -90, 90, nameof(latitudeDegrees)), Tau);

    internal double DuctingPercent(double latitudeDegrees, double tau)
    {
        double phi = Math.Abs(latitudeDegrees);
        double mu1 = Math.Min(1, Math.Pow(
            Math.Pow(10, -LongestLandMetres / 1000 / (16 - (6.6 * tau))) + Math.Pow(10, -5 * (0.496 + (0.354 * tau))),
            0.2));
        return phi <= 70
            ? Math.Pow(10, (-0.015 * phi) + 1.67) * mu1 * Math.Pow(mu1, -0.935 + (0.0176 * phi))
            : 4.17 * mu1 * Math.Pow(mu1, 0.3);
    }

    /// <summary>Distance over land from one end of a path to the first sea along it, in metres; 500 km when there is none.</summary>
    /// <param name="profile">The path.</param>
    /// <param name="end">The end in question.</param>
    /// <remarks>
    /// Source: Rec. ITU-R P.1812 section 3.4 (0 for an antenna at sea). The coast lies half way between the last point on land and the first at
    /// sea. The published results do not derive it: they take 500 km unless the end is at sea, as <see cref="P1812Input"/> does by default.
    /// </remarks>
    public static double DistanceToCoastMetres(PathProfile profile, PathEnd end)
    {
        ArgumentNullException.ThrowIfNull(profile);
        ReadOnlySpan<double> d = profile.DistancesMetres;
        int sea = end == PathEnd.Transmitter ? profile.Zones.IndexOf(Zone.Sea) : profile.Zones.LastIndexOf(Zone.Sea);
        return (sea, end) switch
        {
            ( < 0, _) => 500_000,
            (0, PathEnd.Transmitter) => 0,
            (_, PathEnd.Transmitter) => (d[sea] + d[sea - 1]) / 2,
            _ when sea == d.Length - 1 => 0,
            _ => d[^1] - ((d[sea] + d[sea + 1]) / 2),
        };
    }
}
