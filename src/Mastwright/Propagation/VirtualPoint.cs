using Mastwright.Ground;

namespace Mastwright.Propagation;

/// <summary>The one convention for the points of a sampled path: the last before the receiver stands one step in front of it.</summary>
/// <remarks>
/// Points stand at 0, s, 2s … as far as they are more than one step from the receiver, then at D − s, then at D. ITU-R P.1812 leaves the
/// spacing free, and with cover the gap in front of a low antenna moves the loss by some tenths of a dB on average; with one rule for the
/// single path and the area sweep, map and profile agree. A path of two steps or less has its points at 0, D − s and D; one of a step or
/// less at 0, D/2 and D. A profile that the user gives is used as given.
/// </remarks>
public static class VirtualPoint
{
    /// <summary>Number of points of a path, three or more.</summary>
    /// <param name="lengthMetres">Length D of the path in metres, above zero.</param>
    /// <param name="stepMetres">Step s in metres, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not above zero, or the points would be more than 16 million.</exception>
    public static int Count(double lengthMetres, double stepMetres) => PlainPoints(lengthMetres, stepMetres) + 3;

    /// <summary>The distances of the points from the transmitter, in metres, strictly rising.</summary>
    /// <inheritdoc cref="Count"/>
    public static double[] DistancesMetres(double lengthMetres, double stepMetres)
    {
        int plain = PlainPoints(lengthMetres, stepMetres);
        double[] distances = new double[plain + 3];
        for (int i = 1; i <= plain; i++)
        {
            distances[i] = i * stepMetres;
        }

        distances[^2] = lengthMetres > stepMetres * (1 + 1e-9) ? lengthMetres - stepMetres : lengthMetres / 2;
        distances[^1] = lengthMetres;
        return distances;
    }

    /// <summary>The path to a receiver anywhere on a radial that was sampled at even steps.</summary>
    /// <param name="lengthMetres">Distance D of the receiver in metres, above zero, not beyond the last sample.</param>
    /// <param name="stepMetres">Step s of the samples in metres, above zero; the first sample stands at the transmitter.</param>
    /// <param name="heightsMetres">Heights of the ground; between samples a straight line is taken.</param>
    /// <param name="coverMetres">Heights of the cover; between samples that of the nearest is taken.</param>
    /// <param name="zones">Zones; between samples that of the nearest is taken.</param>
    /// <exception cref="ArgumentException">The spans differ in length, or the receiver stands beyond the last sample.</exception>
    public static PathProfile FromRadial(
        double lengthMetres,
        double stepMetres,
        ReadOnlySpan<double> heightsMetres,
        ReadOnlySpan<double> coverMetres,
        ReadOnlySpan<Zone> zones)
    {
        if (coverMetres.Length != heightsMetres.Length || zones.Length != heightsMetres.Length)
        {
            throw new ArgumentException("The spans of a radial have one length.", nameof(coverMetres));
        }

        double[] distances = DistancesMetres(lengthMetres, stepMetres);
        if (!(lengthMetres <= (heightsMetres.Length - 1) * stepMetres * (1 + 1e-12)))
        {
            throw new ArgumentException("The receiver stands beyond the last sample of the radial.", nameof(lengthMetres));
        }

        double[] heights = new double[distances.Length];
        double[] cover = new double[distances.Length];
        Zone[] zone = new Zone[distances.Length];
        for (int i = 0; i < distances.Length; i++)
        {
            double place = distances[i] / stepMetres;
            int left = Math.Clamp((int)place, 0, Math.Max(heightsMetres.Length - 2, 0));
            int right = Math.Min(left + 1, heightsMetres.Length - 1);
            double share = place - left;
            heights[i] = heightsMetres[left] + (share * (heightsMetres[right] - heightsMetres[left]));
            int nearest = share < 0.5 ? left : right;
            cover[i] = coverMetres[nearest];
            zone[i] = zones[nearest];
        }

        return PathProfile.FromSamples(distances, heights, cover, zone);
    }

    /// <summary>Points at whole steps that are more than a step from the receiver, the transmitter not counted.</summary>
    private static int PlainPoints(double lengthMetres, double stepMetres)
    {
        double steps = Domain.Positive(lengthMetres, nameof(lengthMetres)) / Domain.Positive(stepMetres, nameof(stepMetres));
        if (steps > 1 << 24)
        {
            throw new ArgumentOutOfRangeException(nameof(stepMetres), stepMetres, "A path has at most 16 million points.");
        }

        // A step that divides the length exactly must not give two points a rounding error apart.
        return Math.Max(0, (int)Math.Ceiling(steps - 1 - 1e-9) - 1);
    }
}
