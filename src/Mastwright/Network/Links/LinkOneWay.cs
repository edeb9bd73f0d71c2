using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Network.Links;

/// <summary>One direction of a pair of stations, as far as a matrix keeps it.</summary>
public sealed record LinkOneWay
{
    /// <summary>The judgement.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>Margin above the required level, in dB; null when an input is missing.</summary>
    public Estimate? MarginDb { get; init; }

    /// <summary>Level at the receiving antenna's connector, in dBm; null when an input is missing.</summary>
    public Estimate? LevelDbm { get; init; }

    /// <summary>Margin in dB that the odds stand on: the middle of its range at a location percentage of 50 %; zero when an input is missing.</summary>
    public double CentreDb { get; init; }

    /// <summary>Standard deviation in dB of what is not known about the link; zero when an input is missing.</summary>
    public double UnknownDb { get; init; }

    /// <summary>Standard deviation in dB of what varies from packet to packet; zero when an input is missing.</summary>
    public double FadingDb { get; init; }

    /// <summary>Whether it works, and what it delivers if it does; null when an input is missing.</summary>
    public LinkOdds? Odds { get; init; }

    /// <summary>Plan paths and tiles that are missing.</summary>
    public ImmutableArray<string> Missing { get; init; } = [];

    /// <summary>What a matrix keeps of a worked-out direction.</summary>
    public static LinkOneWay Of(LinkDirection direction, double locationShiftDb)
    {
        ArgumentNullException.ThrowIfNull(direction);
        return new()
        {
            Verdict = direction.Verdict,
            MarginDb = direction.MarginDb,
            LevelDbm = direction.LevelDbm,
            CentreDb = direction.MarginDb is { } margin ? ((margin.Low + margin.High) / 2) + locationShiftDb : 0,
            UnknownDb = direction.Spread?.Unknown.Total ?? 0,
            FadingDb = direction.Spread?.Fading.Total ?? 0,
            Odds = direction.Odds,
            Missing = direction.Missing,
        };
    }

    /// <summary>Margin and verdict.</summary>
    public override string ToString() => $"{MarginDb} dB, {Verdict}";
}
