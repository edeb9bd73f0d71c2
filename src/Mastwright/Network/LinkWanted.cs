namespace Mastwright.Network;

/// <summary>What is wanted of a link, and the spreads to count with, each with where it comes from.</summary>
public sealed record LinkWanted
{
    /// <summary>Margin in dB below which a link is tight.</summary>
    public required double MarginDb { get; init; }

    /// <summary>Standard deviation in dB of the prediction's own error.</summary>
    public required double ModelErrorDb { get; init; }

    /// <summary>Where it comes from.</summary>
    public required string ModelErrorSource { get; init; }

    /// <summary>Standard deviation in dB of location variability.</summary>
    public required double LocationDb { get; init; }

    /// <summary>Where it comes from.</summary>
    public required string LocationSource { get; init; }

    /// <summary>Standard deviation in dB of fading from packet to packet.</summary>
    public required double FadingDb { get; init; }

    /// <summary>Where it comes from.</summary>
    public required string FadingSource { get; init; }
}
