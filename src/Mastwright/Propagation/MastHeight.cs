namespace Mastwright.Propagation;

/// <summary>How high the transmitting antenna must stand. For the other end, give the path reversed.</summary>
public static class MastHeight
{
    /// <summary>Least height that is tried or returned where even less would do, in metres above the ground.</summary>
    public const double LowestMetres = 1;

    /// <summary>Height searched up to unless said otherwise, in metres above the ground.</summary>
    public const double DefaultHighestMetres = 200;

    /// <summary>Heights tried between the lowest and the highest before the step that crosses is halved.</summary>
    private const int Trials = 48;

    /// <summary>Least height of the transmitting antenna that leaves a share of the first Fresnel zone free everywhere.</summary>
    /// <param name="profile">The path, transmitter first. Its cover counts except at the first and last points.</param>
    /// <param name="receiverHeightMetres">Height of the receiving antenna above the ground, in metres, zero or more.</param>
    /// <param name="frequencyHz">Frequency in Hz, above zero.</param>
    /// <param name="kFactor">Effective earth-radius factor, above zero.</param>
    /// <param name="radii">Share of the first Fresnel radius: 0.6 for a clear path.</param>
    /// <param name="highestMetres">Height above which the answer is null.</param>
    /// <param name="addCover">Whether the cover counts; false for a surface model.</param>
    /// <returns>Height above the ground in metres, at least <see cref="LowestMetres"/>; null when it would be above the highest.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double? ForClearance(
        PathProfile profile,
        double receiverHeightMetres,
        double frequencyHz,
        double kFactor,
        double radii = FresnelClearance.ClearRadii,
        double highestMetres = DefaultHighestMetres,
        bool addCover = true)
    {
        ArgumentNullException.ThrowIfNull(profile);
        double radius = EffectiveEarth.FromFactor(kFactor);
        double wavelength = FreeSpace.WavelengthMetres(frequencyHz);
        ReadOnlySpan<double> x = profile.DistancesMetres;
        double length = profile.LengthMetres;
        double hrs = profile.HeightsMetres[^1] + Domain.ZeroOrMore(receiverHeightMetres, nameof(receiverHeightMetres));
        double needed = double.NegativeInfinity;
        for (int i = 1; i < x.Length - 1; i++)
        {
            double toEnd = length - x[i];
            double edge = profile.HeightsMetres[i] + (addCover ? profile.CoverMetres[i] : 0)
                + (x[i] * toEnd / (2 * radius)) + (radii * Math.Sqrt(wavelength * x[i] * toEnd / length));

            // The line from the receiver over this edge, carried on to the transmitter.
            needed = Math.Max(needed, hrs + ((edge - hrs) * length / toEnd));
        }

        double height = Math.Max(needed - profile.HeightsMetres[0], LowestMetres);
        return height <= highestMetres ? height : null;
    }

    /// <summary>Least height of the transmitting antenna, to a centimetre, at which the path loses no more than wanted.</summary>
    /// <param name="profile">The path, transmitter first.</param>
    /// <param name="input">Radio and climate; its transmitter height is not used.</param>
    /// <param name="wantedLossDb">The most the path may lose, in dB.</param>
    /// <param name="highestMetres">Height searched up to, in metres above the ground.</param>
    /// <returns>Height above the ground in metres; null when no height that was tried reaches the wanted loss.</returns>
    /// <remarks>
    /// The model has small steps in height, so the loss need not fall everywhere: heights are tried from low to high and the first crossing
    /// is refined. The answer itself keeps the wanted loss.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The highest is below <see cref="LowestMetres"/>.</exception>
    public static double? ForLoss(PathProfile profile, P1812Input input, double wantedLossDb, double highestMetres = DefaultHighestMetres)
    {
        ArgumentNullException.ThrowIfNull(profile);
        ArgumentNullException.ThrowIfNull(input);
        Domain.Within(highestMetres, LowestMetres, double.MaxValue, nameof(highestMetres));
        double below = LowestMetres;
        for (int trial = 0; trial <= Trials; trial++)
        {
            // Even steps in the logarithm: the first metres matter most.
            double height = trial == Trials ? highestMetres : LowestMetres * Math.Pow(highestMetres / LowestMetres, (double)trial / Trials);
            if (LossDb(profile, input, height) <= wantedLossDb)
            {
                return Refine(profile, input, wantedLossDb, below, height);
            }

            below = height;
        }

        return null;
    }

    private static double Refine(PathProfile profile, P1812Input input, double wantedLossDb, double below, double enough)
    {
        while (enough - below > 0.01)
        {
            double middle = (below + enough) / 2;
            if (LossDb(profile, input, middle) <= wantedLossDb)
            {
                enough = middle;
            }
            else
            {
                below = middle;
            }
        }

        return enough;
    }

    private static double LossDb(PathProfile profile, P1812Input input, double height) =>
        PathLoss.Predict(profile, input with { TransmitterHeightMetres = height }).LossDb;
}
