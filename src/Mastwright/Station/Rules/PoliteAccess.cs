namespace Mastwright.Station.Rules;

/// <summary>Polite spectrum access: how long a station that listens first may be on the air.</summary>
/// <remarks>Source: ETSI EN 300 220-2 V3.3.1 (2025-03), Table 18, quoted in a public copy: 100 s an hour for each 200 kHz, one transmission at most 1 s.</remarks>
public static class PoliteAccess
{
    /// <summary>The longest single transmission in seconds.</summary>
    public const double LongestSeconds = 1;

    /// <summary>Seconds on the air in an hour for each slice of spectrum.</summary>
    public const double SecondsPerSlice = 100;

    /// <summary>Width of a slice in hertz.</summary>
    public const double SliceHz = 200e3;

    /// <summary>Seconds on the air in an hour over a width of spectrum.</summary>
    /// <param name="widthHz">Width that the station uses, in hertz: zero or more.</param>
    public static double SecondsPerHour(double widthHz) => SecondsPerSlice * widthHz / SliceHz;

    /// <summary>The same in percent of the hour, for a station on some channels of a band.</summary>
    /// <param name="channels">Number of channels that it uses: 1 or more.</param>
    /// <param name="occupiedHz">Occupied bandwidth of one, in hertz.</param>
    /// <param name="bandHz">Width of the band in hertz.</param>
    /// <remarks>A channel narrower than a slice counts as one slice, and all together as no more than the band.</remarks>
    public static double Percent(int channels, double occupiedHz, double bandHz) =>
        SecondsPerHour(Math.Min(bandHz, channels * Math.Max(SliceHz, occupiedHz))) / 36;
}
