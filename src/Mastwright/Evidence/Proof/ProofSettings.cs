namespace Mastwright.Evidence.Proof;

/// <summary>What a proof is worked out with.</summary>
public sealed record ProofSettings
{
    /// <summary>Confidence of every interval.</summary>
    public double Confidence { get; init; } = 0.95;

    /// <summary>What the draws belong to: same seed and records, same answer.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Signal-to-noise ratio in dB below which a packet of a spreading factor is lost; null where it is not known.</summary>
    public Func<int, double?> LimitSnrDb { get; init; } = _ => null;

    /// <summary>Spreading factor of packets that do not tell theirs; 0 when not known.</summary>
    public int UsualSpreadingFactor { get; init; }

    /// <summary>Time in seconds from one own packet of a station, by its place in the list, to the next; null where it is not known.</summary>
    public Func<int, double?> SendsEverySeconds { get; init; } = _ => null;

    /// <summary>How far in dB the lowest tenth of a station's packets must stand above the limit for all of them to count as heard (common practice).</summary>
    public double ClearanceDb { get; init; } = 6;

    /// <summary>Shift in dB from the others beyond which a station is said to have moved alone, where the errors allow (common practice).</summary>
    public double AloneDb { get; init; } = 3;

    /// <summary>Distance in dB from the usual level beyond which a day is strange (common practice).</summary>
    public double StrangeDb { get; init; } = 4;
}
