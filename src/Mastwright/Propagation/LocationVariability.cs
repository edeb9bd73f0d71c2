namespace Mastwright.Propagation;

/// <summary>How the loss differs from place to place around the receiver.</summary>
/// <remarks>
/// Source: Rec. ITU-R P.1812 sections 4.7 and 4.9. The factor 0.024 is printed as 0.0024 in edition 5; the notes beside the published
/// validation set call that a misprint.
/// </remarks>
public static class LocationVariability
{
    /// <summary>Standard deviation over the places of a square, for outdoor receivers, in dB.</summary>
    /// <param name="frequencyHz">Frequency in Hz, above zero.</param>
    /// <param name="squareMetres">Side wa of the prediction square in metres, above zero: the size of the area the prediction stands for.</param>
    /// <param name="receiverHeightMetres">Height of the receiver above ground in metres, zero or more.</param>
    /// <param name="coverHeightMetres">Representative height R of the cover around the receiver in metres, zero or more.</param>
    /// <remarks>σL = (0.52 + 0.024 f) wa^0.28, full below the cover, falling to nothing 10 m above it.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double SigmaDb(double frequencyHz, double squareMetres, double receiverHeightMetres, double coverHeightMetres)
    {
        double above = Domain.ZeroOrMore(receiverHeightMetres, nameof(receiverHeightMetres)) - Domain.ZeroOrMore(coverHeightMetres, nameof(coverHeightMetres));
        double share = Math.Clamp(1 - (above / 10), 0, 1);
        return share
            * (0.52 + (0.024 * Domain.Positive(frequencyHz, nameof(frequencyHz)) * 1e-9))
            * Math.Pow(Domain.Positive(squareMetres, nameof(squareMetres)), 0.28);
    }

    /// <summary>What the loss at a share of the places has over the median, in dB: positive above 50 %, negative below.</summary>
    /// <param name="locationPercent">Share of the places at which the loss is not exceeded, in percent, between 0 and 100.</param>
    /// <param name="sigmaDb">Standard deviation in dB, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double LossDb(double locationPercent, double sigmaDb) => locationPercent is > 0 and < 100
        ? -InverseNormal.Of(locationPercent / 100) * Domain.ZeroOrMore(sigmaDb, nameof(sigmaDb))
        : throw new ArgumentOutOfRangeException(nameof(locationPercent), locationPercent, "A percentage between 0 and 100 is needed.");
}
