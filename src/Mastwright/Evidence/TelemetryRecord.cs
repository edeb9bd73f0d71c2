namespace Mastwright.Evidence;

/// <summary>What one station told of itself at one time: its power, its temperature, how busy its channel is.</summary>
/// <remarks>What the source does not say is null: unknown, never a default.</remarks>
public sealed record TelemetryRecord
{
    /// <summary>The time in whole microseconds since 1970-01-01T00:00:00 UTC, as the source's clock had it.</summary>
    public required long TimeMicroseconds { get; init; }

    /// <summary>The step of the source's time in microseconds, one or more.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The step is not above zero.</exception>
    public required long TimeResolutionMicroseconds { get; init => field = EvidenceDoor.AboveZero(value); }

    /// <summary>The time exactly as the source wrote it.</summary>
    public string? TimeText { get; init; }

    /// <summary>What the source's clock is ahead of UTC, in microseconds; null when unknown. It is told, not yet taken off.</summary>
    public long? ClockOffsetMicroseconds { get; init; }

    /// <summary>The address of the station.</summary>
    /// <exception cref="ArgumentException">The address is empty.</exception>
    public required string Station { get; init => field = EvidenceDoor.NotEmpty(value); }

    /// <summary>The voltage at the battery.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The voltage is infinite or NaN.</exception>
    public double? BatteryVolts { get; init => field = EvidenceDoor.Finite(value); }

    /// <summary>The voltage of the supply, panel or mains adapter.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The voltage is infinite or NaN.</exception>
    public double? SupplyVolts { get; init => field = EvidenceDoor.Finite(value); }

    /// <summary>The temperature that the station measures, in °C.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is infinite or NaN.</exception>
    public double? TemperatureCelsius { get; init => field = EvidenceDoor.Finite(value); }

    /// <summary>The part of the time in which the station found its channel in use, 0 to 1, over a period that is the source's own.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The part is infinite or NaN.</exception>
    public double? ChannelUseRatio { get; init => field = EvidenceDoor.Finite(value); }

    /// <summary>The part of the time in which the station itself transmitted, 0 to 1, over a period that is the source's own.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The part is infinite or NaN.</exception>
    public double? TransmitRatio { get; init => field = EvidenceDoor.Finite(value); }

    /// <summary>Whatever else the source said, as one JSON object.</summary>
    public string? OtherFields { get; init; }

    /// <summary>Whether it says anything of the station at all.</summary>
    public bool SaysSomething => (BatteryVolts ?? SupplyVolts ?? TemperatureCelsius ?? ChannelUseRatio ?? TransmitRatio) is not null;
}
