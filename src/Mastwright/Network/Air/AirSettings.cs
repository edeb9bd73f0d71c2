namespace Mastwright.Network.Air;

/// <summary>How long a station waits before it passes a packet on.</summary>
public enum RelayDelay
{
    /// <summary>Always <see cref="AirSettings.MostDelaySeconds"/>.</summary>
    Fixed,

    /// <summary>Anything between <see cref="AirSettings.LeastDelaySeconds"/> and <see cref="AirSettings.MostDelaySeconds"/>, drawn alike.</summary>
    Random,

    /// <summary>The weaker the packet was heard the shorter: who is far goes first. A tenth of the span is drawn besides.</summary>
    ByLevel,
}

/// <summary>What a simulation of the channel is run with.</summary>
public sealed record AirSettings
{
    /// <summary>Time on air of a packet in seconds: above zero.</summary>
    public required double AirtimeSeconds { get; init => field = value > 0 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "A packet takes time."); }

    /// <summary>Time from its beginning within which a receiver still turns to a much stronger packet, in seconds: the preamble.</summary>
    public double PreambleSeconds { get; init; }

    /// <summary>Simulated time in seconds.</summary>
    public double DurationSeconds { get; init; } = 86_400;

    /// <summary>Most links from the sender to a receiver; 1 means that nobody relays.</summary>
    public int HopLimit { get; init; } = 3;

    /// <summary>How long a station waits before it passes a packet on.</summary>
    public RelayDelay Delay { get; init; } = RelayDelay.Random;

    /// <summary>Least of the delay in seconds.</summary>
    public double LeastDelaySeconds { get; init; }

    /// <summary>Most of the delay in seconds.</summary>
    public double MostDelaySeconds { get; init; } = 2;

    /// <summary>Copies heard while waiting after which a station does not pass a packet on; 0 for never.</summary>
    public int CancelAfterCopies { get; init; }

    /// <summary>Probability that a station passes a packet on at all, 0 to 1.</summary>
    public double RelayProbability { get; init; } = 1;

    /// <summary>Whether a station looks for activity on the channel before it sends, and waits if there is any that it can receive.</summary>
    public bool ListensFirst { get; init; }

    /// <summary>Most seconds until it looks again.</summary>
    public double BackOffSeconds { get; init; } = 1;

    /// <summary>Share of any hour that a station may send, 0 to 1; 1 for no limit.</summary>
    public double DutyShare { get; init; } = 1;

    /// <summary>How much a packet must exceed all others at a receiver, in dB; infinity: any overlap destroys both.</summary>
    public double CaptureDb { get; init; } = 6;

    /// <summary>Standard deviation of fading from packet to packet, in dB.</summary>
    public double FadingDb { get; init; }

    /// <summary>Length of a slot in seconds at whose beginning alone stations send; 0 for no slots.</summary>
    public double SlotSeconds { get; init; }

    /// <summary>Packets that a station keeps waiting; more are dropped.</summary>
    public int QueueLimit { get; init; } = 16;

    /// <summary>What the draws hang on.</summary>
    public ulong Seed { get; init; } = 1;
}

/// <summary>What a station sends of its own.</summary>
/// <param name="ReportsAnHour">Packets an hour at a fixed interval, from a drawn moment on.</param>
/// <param name="MessagesAnHour">Packets an hour at random moments (Poisson).</param>
public readonly record struct AirTraffic(double ReportsAnHour, double MessagesAnHour)
{
    /// <summary>Both rates times a factor.</summary>
    public AirTraffic Times(double factor) => new(ReportsAnHour * factor, MessagesAnHour * factor);

    /// <summary>Both rates.</summary>
    public override string ToString() => FormattableString.Invariant($"{ReportsAnHour:0.##} reports and {MessagesAnHour:0.##} messages an hour");
}
