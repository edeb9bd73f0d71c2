using Mastwright.Network.Air;

namespace Mastwright.Plans;

/// <summary>How the stations of a plan pass on what they hear, as far as the plan says.</summary>
public sealed record RelayRules
{
    /// <summary>Most links from a sender to a receiver; null when not given.</summary>
    public int? HopLimit { get; init; }

    /// <summary>How a station waits before it passes a packet on; null when not given.</summary>
    public RelayDelay? Delay { get; init; }

    /// <summary>Least of that wait in seconds; null when not given.</summary>
    public double? LeastDelaySeconds { get; init; }

    /// <summary>Most of that wait in seconds; null when not given.</summary>
    public double? MostDelaySeconds { get; init; }

    /// <summary>Copies heard while waiting after which a packet is not passed on; null when not given.</summary>
    public int? CancelAfterCopies { get; init; }

    /// <summary>Probability that a station passes a packet on at all, 0 to 1; null when not given.</summary>
    public double? Probability { get; init; }

    /// <summary>Whether a station looks for activity on the channel before it sends; null when not given.</summary>
    public bool? ListensFirst { get; init; }

    /// <summary>Most seconds until it looks again; null when not given.</summary>
    public double? BackOffSeconds { get; init; }

    /// <summary>The settings with what the plan says in place of theirs.</summary>
    internal AirSettings In(AirSettings settings) => settings with
    {
        HopLimit = HopLimit ?? settings.HopLimit,
        Delay = Delay ?? settings.Delay,
        LeastDelaySeconds = LeastDelaySeconds ?? settings.LeastDelaySeconds,
        MostDelaySeconds = MostDelaySeconds ?? settings.MostDelaySeconds,
        CancelAfterCopies = CancelAfterCopies ?? settings.CancelAfterCopies,
        RelayProbability = Probability ?? settings.RelayProbability,
        ListensFirst = ListensFirst ?? settings.ListensFirst,
        BackOffSeconds = BackOffSeconds ?? settings.BackOffSeconds,
    };
}
