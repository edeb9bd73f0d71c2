using Mastwright.Quantities;

namespace Mastwright.Station.Supply;

/// <summary>A catalogue row: what a kind of board or radio draws.</summary>
public sealed record LoadRow
{
    /// <summary>Its key, such as "small-board".</summary>
    public required string Key { get; init; }

    /// <summary>What a person reads.</summary>
    public required string Name { get; init; }

    /// <summary>Whether it is a radio: its peak is transmitting and depends on its power setting.</summary>
    public required bool IsRadio { get; init; }

    /// <summary>Power asleep, in watts.</summary>
    public required Estimate SleepWatts { get; init; }

    /// <summary>Power awake in watts: a board idle, a radio receiving.</summary>
    public required Estimate AwakeWatts { get; init; }

    /// <summary>Power of a board that is busy, in watts; null for a radio.</summary>
    public Estimate? BusyWatts { get; init; }

    /// <summary>Power of a radio that transmits, in watts by conducted power in dBm; null for a board.</summary>
    public LinearCurve? TransmitWatts { get; init; }

    /// <summary>The most it takes while it starts, in watts.</summary>
    public required double BootWatts { get; init; }

    /// <summary>The least voltage at its input.</summary>
    public required double LeastVolts { get; init; }

    /// <summary>The most voltage at its input.</summary>
    public required double MostVolts { get; init; }

    /// <summary>Document, "common practice" or "from memory".</summary>
    public required string Source { get; init; }
}
