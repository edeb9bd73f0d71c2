namespace Mastwright.Evidence;

/// <summary>One packet heard once by one station, as its source said it, in decoded fields.</summary>
/// <remarks>
/// What the source does not say is null: unknown, never a default. Stations are named by the source's own addresses.
/// Level and signal-to-noise ratio belong to the station that sent the packet last.
/// </remarks>
public sealed record ReceptionRecord
{
    /// <summary>The time of reception in whole microseconds since 1970-01-01T00:00:00 UTC, as the source's clock had it.</summary>
    public required long TimeMicroseconds { get; init; }

    /// <summary>The step of the source's time in microseconds, one or more: 1,000,000 where the source gives whole seconds.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The step is not above zero.</exception>
    public required long TimeResolutionMicroseconds { get; init => field = EvidenceDoor.AboveZero(value); }

    /// <summary>The time exactly as the source wrote it.</summary>
    public string? TimeText { get; init; }

    /// <summary>What the source's clock is ahead of UTC, in microseconds; null when unknown. It is told, not yet taken off.</summary>
    public long? ClockOffsetMicroseconds { get; init; }

    /// <summary>The address of the station that heard the packet.</summary>
    /// <exception cref="ArgumentException">The address is empty.</exception>
    public required string Receiver { get; init => field = EvidenceDoor.NotEmpty(value); }

    /// <summary>The address of the station that made the packet.</summary>
    public string? Originator { get; init; }

    /// <summary>The address of the station whose transmission was heard: the originator itself at no hop.</summary>
    public string? LastSender { get; init; }

    /// <summary>The reported level in dBm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The level is infinite or NaN.</exception>
    public double? LevelDbm { get; init => field = EvidenceDoor.Finite(value); }

    /// <summary>The reported signal-to-noise ratio in dB.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is infinite or NaN.</exception>
    public double? SnrDb { get; init => field = EvidenceDoor.Finite(value); }

    /// <summary>Whether the source has already taken the noise out of the level, so that the level is the signal power.</summary>
    public bool LevelIsSignalPower { get; init; }

    /// <summary>How many times the packet was passed on before this reception.</summary>
    public int? HopsTaken { get; init; }

    /// <summary>How many times the packet may be passed on in all.</summary>
    public int? HopLimit { get; init; }

    /// <summary>The carrier frequency in Hz.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is infinite or NaN.</exception>
    public double? FrequencyHz { get; init => field = EvidenceDoor.Finite(value); }

    /// <summary>The bandwidth in Hz.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The bandwidth is infinite or NaN.</exception>
    public double? BandwidthHz { get; init => field = EvidenceDoor.Finite(value); }

    /// <summary>The spreading factor.</summary>
    public int? SpreadingFactor { get; init; }

    /// <summary>The packet's own number (identifier or frame counter) as the source writes it.</summary>
    public string? PacketId { get; init; }

    /// <summary>Whatever else the source said, as one JSON object.</summary>
    public string? OtherFields { get; init; }

    /// <summary>
    /// The power of the signal in dBm, or null where it cannot be known: without a level, without a ratio (unless the source corrects), or
    /// where the sender that the level belongs to is unknown.
    /// </summary>
    public double? SignalPowerDbm => (LastSender, LevelDbm, SnrDb, LevelIsSignalPower) switch
    {
        (null, _, _, _) or (_, null, _, _) => null,
        (_, double level, _, true) => level,
        (_, double level, double snr, false) => SignalPower.Dbm(level, snr),
        _ => null,
    };

    /// <summary>The noise floor in dBm at this reception, or null where <see cref="SignalPowerDbm"/> is unknown or the ratio is saturated.</summary>
    /// <param name="saturationSnrDb">The ratio in dB from which the receiver's report is no longer used for the noise.</param>
    public double? NoiseFloorDbm(double saturationSnrDb = SignalPower.DefaultSaturationSnrDb) =>
        SignalPowerDbm is double power && SnrDb is double snr ? SignalPower.NoiseFloorDbm(power, snr, saturationSnrDb) : null;
}
