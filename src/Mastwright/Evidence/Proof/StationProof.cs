using Mastwright.Evidence.Statistics;

namespace Mastwright.Evidence.Proof;

/// <summary>What is known of a shift when the weakest packets are never heard.</summary>
public enum ShiftKnowledge
{
    /// <summary>Nothing: not heard with a level in both periods.</summary>
    None,

    /// <summary>Its weakest packets stand well above the limit in both periods.</summary>
    Full,

    /// <summary>Losses were counted and are in the estimate.</summary>
    LossesCounted,

    /// <summary>Weak packets of before were never heard: the shift is at least this.</summary>
    AtLeast,

    /// <summary>Weak packets of after are never heard: the shift is at most this.</summary>
    AtMost,

    /// <summary>Weak packets of both periods were never heard: nothing can be said.</summary>
    Open,
}

/// <summary>How often a station was heard directly within a period.</summary>
/// <param name="Packets">Packets.</param>
/// <param name="DaysHeard">Days on which it was heard.</param>
/// <param name="Days">Days of the period on which anything was heard.</param>
/// <param name="ShareOfDays">Share of days with its interval (Wilson); null without a day.</param>
/// <param name="Counted">Packets of which it is known how many were lost beside them; 0 where neither numbers that count up nor a fixed interval tell.</param>
/// <param name="Lost">Packets that their numbers or the interval tell to be lost.</param>
/// <param name="Delivery">Delivery ratio with its interval (Wilson); null where losses cannot be counted.</param>
/// <param name="LowSnrDb">Signal-to-noise ratio that a tenth of the packets stays below; NaN without any.</param>
/// <param name="TypicalHops">Hops that most packets of the station took; null where none was heard or told.</param>
public sealed record HeardSummary(
    long Packets, int DaysHeard, int Days, ConfidenceInterval? ShareOfDays, long Counted, double Lost, ConfidenceInterval? Delivery, double LowSnrDb, int? TypicalHops)
{
    /// <summary>Share, 0 to 1, of its packets that were heard; null where the lost ones cannot be counted.</summary>
    public double? DeliveredShare => Delivery is null ? null : Counted / (Counted + Lost);

    /// <summary>Packets a day on which anything was heard; 0 without such a day.</summary>
    public double PacketsADay => Days == 0 ? 0 : (double)Packets / Days;
}

/// <summary>One other station in the two periods.</summary>
/// <param name="Station">Its place in the list of stations.</param>
/// <param name="Before">How it was heard before.</param>
/// <param name="After">How it was heard after.</param>
/// <param name="Chance">
/// Where it was heard directly in one period alone: the probability that days so many fall into one period by chance; null elsewhere.
/// </param>
/// <param name="Knowledge">What is known of its shift.</param>
/// <param name="SignalPower">Shift of its signal power in dB; null without one.</param>
/// <param name="Snr">Shift of its signal-to-noise ratio in dB; null without one.</param>
/// <param name="Drift">Shift in dB from the rest of the period before to its last week; null where that is too short.</param>
/// <param name="MovedAlone">Whether its shift stands apart from that of all others.</param>
/// <param name="OwnStep">A step within one of the periods that the other stations did not make; null without one.</param>
public sealed record StationProof(
    int Station, HeardSummary Before, HeardSummary After, double? Chance, ShiftKnowledge Knowledge, ShiftEstimate? SignalPower, ShiftEstimate? Snr, ShiftEstimate? Drift, bool MovedAlone, OwnStep? OwnStep)
{
    /// <summary>Whether its shift counts into the one over all stations.</summary>
    public bool IsCompared => !MovedAlone && OwnStep is null && Knowledge is ShiftKnowledge.Full or ShiftKnowledge.LossesCounted && SignalPower?.Interval is not null;

    /// <summary>Whether it was heard more often than the interval allows at which it is said to send: that tells nothing of its losses then.</summary>
    public bool SendsMoreOften { get; init; }

    /// <summary>Day scores behind the shift.</summary>
    internal DayScores? Scores { get; init; }
}

/// <summary>A step that one station made and the others did not: something changed at its own end.</summary>
/// <param name="TimeMicroseconds">The first day after it, in microseconds since 1970 UTC.</param>
/// <param name="StepDb">How far, against the other stations, in dB.</param>
public sealed record OwnStep(long TimeMicroseconds, double StepDb);

/// <summary>The shift over several stations.</summary>
/// <param name="Estimate">The shift with its interval.</param>
/// <param name="Stations">How many stations are in it.</param>
/// <param name="Better">How many of them shifted up.</param>
/// <param name="Weights">Weight of each station's shift, by its place in the list; they sum to one.</param>
public sealed record CombinedShift(ShiftEstimate Estimate, int Stations, int Better, IReadOnlyDictionary<int, double> Weights);

/// <summary>All that the records of two periods show of a station.</summary>
/// <param name="Before">The period before.</param>
/// <param name="After">The period after.</param>
/// <param name="Stations">Every other station that was heard, directly or not.</param>
/// <param name="Combined">The shift of signal power over all compared stations; null without one.</param>
/// <param name="NoiseFloor">Shift of the noise floor in dB; null where no reception tells it.</param>
/// <param name="StrangeBefore">Days of the period before on which most stations were far off their usual level.</param>
/// <param name="StrangeAfter">The same of the period after.</param>
/// <param name="OldWasFailing">Whether most stations fell in the last week before: the old fit-out failed already.</param>
/// <param name="LimitsAssumed">Whether a demodulation limit was taken from the data for want of a spreading factor.</param>
public sealed record ProofResult(
    ProofFold Before, ProofFold After, IReadOnlyList<StationProof> Stations, CombinedShift? Combined, ShiftEstimate? NoiseFloor, StrangeDays StrangeBefore, StrangeDays StrangeAfter, bool OldWasFailing, bool LimitsAssumed);

/// <summary>Days on which most stations were far off their own mean of the period.</summary>
/// <param name="Strong">Days far above: over-the-horizon propagation as a rule.</param>
/// <param name="Weak">Days far below: wet or iced antennas and leaves as a rule.</param>
/// <param name="Days">Days that could be looked at.</param>
public readonly record struct StrangeDays(int Strong, int Weak, int Days);
