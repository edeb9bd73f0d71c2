namespace Mastwright.Propagation;

/// <summary>Extra loss of an antenna that stands lower than the houses or trees around it.</summary>
/// <remarks>
/// <para>
/// Source: Rec. ITU-R P.2108-1 section 3.1 (0.03 to 3 GHz). Checked against the published figures of that model to their 0.1 dB. The loss is
/// added to that of the path, and stands for the cover next to the antenna: the cover of the profile there must be taken out
/// (<see cref="WithoutCover"/>), and <see cref="LossDb(PathProfile, PathEnd, double, double, TerminalSurroundings, double?, double)"/>
/// refuses a profile that still has it.
/// </para>
/// </remarks>
public static class TerminalClutter
{
    /// <summary>Lowest frequency of the model, in Hz.</summary>
    public const double LowestFrequencyHz = 30e6;

    /// <summary>Highest frequency of the model, in Hz.</summary>
    public const double HighestFrequencyHz = 3e9;

    /// <summary>Width of the street taken where nobody gives one, in metres.</summary>
    public const double DefaultStreetWidthMetres = 27;

    /// <summary>
    /// How far from an antenna its own surroundings reach along the path, in metres: 100 m, some four streets (our choice; the Recommendation
    /// gives no distance). Cover farther off stays in the profile.
    /// </summary>
    public const double DefaultExtentMetres = 100;

    /// <summary>Representative height R of the cover, in metres.</summary>
    /// <remarks>Source: Rec. ITU-R P.2108-1 table 3. These are not the cover heights that P.1812 adds to a profile.</remarks>
    public static double CoverHeightMetres(TerminalSurroundings surroundings) => surroundings switch
    {
        TerminalSurroundings.Urban or TerminalSurroundings.Woodland => 15,
        TerminalSurroundings.DenseUrban => 20,
        _ => 10,
    };

    /// <summary>The extra loss in dB, zero when the antenna stands at or above the cover.</summary>
    /// <param name="frequencyHz">Frequency in Hz, 30 MHz to 3 GHz.</param>
    /// <param name="antennaHeightMetres">Height of the antenna above the ground, in metres, above zero.</param>
    /// <param name="surroundings">What stands around it.</param>
    /// <param name="coverHeightMetres">Height R of the cover in metres, above zero; null for the model's default.</param>
    /// <param name="streetWidthMetres">Width of the street in metres, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double LossDb(
        double frequencyHz,
        double antennaHeightMetres,
        TerminalSurroundings surroundings,
        double? coverHeightMetres = null,
        double streetWidthMetres = DefaultStreetWidthMetres)
    {
        double f = Domain.Within(frequencyHz, LowestFrequencyHz, HighestFrequencyHz, nameof(frequencyHz)) * 1e-9;
        double h = Domain.Positive(antennaHeightMetres, nameof(antennaHeightMetres));
        double cover = Domain.Positive(coverHeightMetres ?? CoverHeightMetres(surroundings), nameof(coverHeightMetres));
        double street = Domain.Positive(streetWidthMetres, nameof(streetWidthMetres));
        if (h >= cover)
        {
            return 0;
        }

        if (surroundings is TerminalSurroundings.Water or TerminalSurroundings.Open)
        {
            return -(21.8 + (6.2 * Math.Log10(f))) * Math.Log10(h / cover);
        }

        double below = cover - h;
        double angleDegrees = double.RadiansToDegrees(Math.Atan(below / street));
        double v = 0.342 * Math.Sqrt(f) * Math.Sqrt(below * angleDegrees);
        return KnifeEdge.LossDb(v) - 6.03;
    }

    /// <summary>The extra loss at one end of a path, refused when the profile still holds the cover that it stands for.</summary>
    /// <param name="profile">The path that the loss is added to.</param>
    /// <param name="end">The end in question.</param>
    /// <param name="frequencyHz">Frequency in Hz, 30 MHz to 3 GHz.</param>
    /// <param name="antennaHeightMetres">Height of the antenna above the ground, in metres, above zero.</param>
    /// <param name="surroundings">What stands around it.</param>
    /// <param name="coverHeightMetres">Height R of the cover in metres, above zero; null for the model's default.</param>
    /// <param name="streetWidthMetres">Width of the street in metres, above zero.</param>
    /// <exception cref="ArgumentException">The profile has cover within <see cref="DefaultExtentMetres"/> of that end: it would count twice.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double LossDb(
        PathProfile profile,
        PathEnd end,
        double frequencyHz,
        double antennaHeightMetres,
        TerminalSurroundings surroundings,
        double? coverHeightMetres = null,
        double streetWidthMetres = DefaultStreetWidthMetres) => HasCover(profile, end)
        ? throw new ArgumentException("The profile still holds the cover around this end; terminal clutter replaces it. Take it out with WithoutCover.", nameof(profile))
        : LossDb(frequencyHz, antennaHeightMetres, surroundings, coverHeightMetres, streetWidthMetres);

    /// <summary>Whether a profile has cover around one end (the end point itself is never counted).</summary>
    /// <param name="profile">The path.</param>
    /// <param name="end">The end in question.</param>
    /// <param name="extentMetres">Distance from that end in metres, zero or more.</param>
    public static bool HasCover(PathProfile profile, PathEnd end, double extentMetres = DefaultExtentMetres)
    {
        ArgumentNullException.ThrowIfNull(profile);
        for (int i = 1; i < profile.Count - 1; i++)
        {
            if (profile.CoverMetres[i] > 0 && IsNear(profile, end, i, extentMetres))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The same path with the cover around one end taken out.</summary>
    /// <inheritdoc cref="HasCover"/>
    public static PathProfile WithoutCover(PathProfile profile, PathEnd end, double extentMetres = DefaultExtentMetres)
    {
        ArgumentNullException.ThrowIfNull(profile);
        Domain.ZeroOrMore(extentMetres, nameof(extentMetres));
        double[] cover = profile.CoverMetres.ToArray();
        for (int i = 0; i < cover.Length; i++)
        {
            cover[i] = IsNear(profile, end, i, extentMetres) ? 0 : cover[i];
        }

        return PathProfile.FromSamples(profile.DistancesMetres, profile.HeightsMetres, cover, profile.Zones);
    }

    private static bool IsNear(PathProfile profile, PathEnd end, int point, double extentMetres) =>
        (end == PathEnd.Transmitter ? profile.DistancesMetres[point] : profile.LengthMetres - profile.DistancesMetres[point]) <= extentMetres;
}
