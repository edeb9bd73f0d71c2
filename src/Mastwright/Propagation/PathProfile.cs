using Mastwright.Ground;

namespace Mastwright.Propagation;

/// <summary>Ground, cover and zone along a path, as the loss models read it: flat arrays of one length.</summary>
/// <remarks>Immutable and safe from many threads. Used as given: nothing is resampled or moved.</remarks>
public sealed class PathProfile
{
    private readonly double[] distancesMetres;
    private readonly double[] heightsMetres;
    private readonly double[] coverMetres;
    private readonly Zone[] zones;

    private PathProfile(double[] distancesMetres, double[] heightsMetres, double[] coverMetres, Zone[] zones)
    {
        this.distancesMetres = distancesMetres;
        this.heightsMetres = heightsMetres;
        this.coverMetres = coverMetres;
        this.zones = zones;
        HasCover = coverMetres.AsSpan()[1..^1].ContainsAnyExcept(0.0);
        Climate = RadioClimate.Of(distancesMetres, zones);
        (FirstSum, SecondSum) = SmoothEarthFit.Sums(distancesMetres, heightsMetres);
    }

    /// <summary>Distance of each point from the first, in metres: the first is 0, strictly rising.</summary>
    public ReadOnlySpan<double> DistancesMetres => distancesMetres;

    /// <summary>Height of the ground at each point, in metres above sea level.</summary>
    public ReadOnlySpan<double> HeightsMetres => heightsMetres;

    /// <summary>Representative height of the cover at each point, in metres above the ground: zero or more.</summary>
    public ReadOnlySpan<double> CoverMetres => coverMetres;

    /// <summary>Zone of each point.</summary>
    public ReadOnlySpan<Zone> Zones => zones;

    /// <summary>Number of points: three or more.</summary>
    public int Count => distancesMetres.Length;

    /// <summary>Length of the path, in metres.</summary>
    public double LengthMetres => distancesMetres[^1];

    /// <summary>Whether any point between the first and the last has cover.</summary>
    internal bool HasCover { get; }

    /// <summary>Stretches of sea, coast and inland: a matter of the profile alone, found once.</summary>
    internal RadioClimate Climate { get; }

    /// <summary>The two sums of the smooth-Earth fit, P.1812 equations (83) and (84), in m² and m³.</summary>
    internal double FirstSum { get; }

    /// <inheritdoc cref="FirstSum"/>
    internal double SecondSum { get; }

    /// <summary>Copies the samples of a path.</summary>
    /// <exception cref="ArgumentException">
    /// Fewer than three points, spans of different length, distances that do not start at 0 and rise strictly, a value that is not
    /// finite, or a cover height below zero.
    /// </exception>
    public static PathProfile FromSamples(
        ReadOnlySpan<double> distancesMetres,
        ReadOnlySpan<double> heightsMetres,
        ReadOnlySpan<double> coverMetres,
        ReadOnlySpan<Zone> zones)
    {
        int count = distancesMetres.Length;
        if (count < 3)
        {
            throw new ArgumentException("A profile has at least three points.", nameof(distancesMetres));
        }

        if (heightsMetres.Length != count || coverMetres.Length != count || zones.Length != count)
        {
            throw new ArgumentException("The spans of a profile have one length.", nameof(distancesMetres));
        }

        if (distancesMetres[0] != 0)
        {
            throw new ArgumentException("A profile starts at distance 0.", nameof(distancesMetres));
        }

        for (int i = 0; i < count; i++)
        {
            if (!double.IsFinite(distancesMetres[i]) || !double.IsFinite(heightsMetres[i]) || !(coverMetres[i] >= 0) || !double.IsFinite(coverMetres[i]))
            {
                throw new ArgumentException($"Profile point {i} holds a value that is not finite, or a cover height below zero.", nameof(heightsMetres));
            }

            if (i > 0 && distancesMetres[i] <= distancesMetres[i - 1])
            {
                throw new ArgumentException($"The distances of a profile rise; point {i} does not.", nameof(distancesMetres));
            }
        }

        return new(distancesMetres.ToArray(), heightsMetres.ToArray(), coverMetres.ToArray(), zones.ToArray());
    }

    /// <summary>The same path walked from the other end.</summary>
    public PathProfile Reversed()
    {
        double length = LengthMetres;
        double[] reversed = new double[Count];
        for (int i = 0; i < reversed.Length; i++)
        {
            reversed[i] = length - distancesMetres[Count - 1 - i];
        }

        reversed[0] = 0;
        return new(reversed, [.. heightsMetres.Reverse()], [.. coverMetres.Reverse()], [.. zones.Reverse()]);
    }
}
