using Mastwright.Quantities;

namespace Mastwright.Station.Supply;

/// <summary>What a load draws and for how much of the time.</summary>
public sealed record LoadProfile
{
    /// <summary>What a person reads.</summary>
    public required string Name { get; init; }

    /// <summary>Whether it is a radio.</summary>
    public bool IsRadio { get; init; }

    /// <summary>Power asleep in watts, zero or more.</summary>
    public Estimate SleepWatts { get; init; }

    /// <summary>Power awake in watts, zero or more: a board idle, a radio receiving.</summary>
    public required Estimate AwakeWatts { get; init; }

    /// <summary>Power at its peak in watts, zero or more: a board busy, a radio transmitting.</summary>
    public required Estimate PeakWatts { get; init; }

    /// <summary>The most it takes while it starts, in watts, zero or more.</summary>
    public double BootWatts { get; init; }

    /// <summary>Share of time asleep, 0 to 1.</summary>
    public double SleepShare { get; init; }

    /// <summary>Share of time at its peak, 0 to 1; with <see cref="SleepShare"/> at most 1.</summary>
    public double PeakShare { get; init; }

    /// <summary>The least voltage at its input; null when unknown.</summary>
    public double? LeastVolts { get; init; }

    /// <summary>The most voltage at its input; null when unknown.</summary>
    public double? MostVolts { get; init; }

    /// <summary>Mean power in watts.</summary>
    public Estimate MeanWatts
    {
        get
        {
            double awake = Math.Max(0, 1 - SleepShare - PeakShare);
            return SleepWatts.Map(watts => watts * SleepShare) + AwakeWatts.Map(watts => watts * awake) + PeakWatts.Map(watts => watts * PeakShare);
        }
    }

    /// <summary>The most it ever takes in watts: at its peak, awake, or as it starts.</summary>
    public double MostWatts => Math.Max(BootWatts, Math.Max(PeakWatts.High, AwakeWatts.High));

    /// <summary>The most it takes once it runs, in watts.</summary>
    public double MostRunningWatts => Math.Max(PeakWatts.High, AwakeWatts.High);

    /// <summary>Mean power in watts over a time in which it is at its peak for another share than usual, such as one hour of heavy traffic.</summary>
    /// <param name="peakShare">Share of time at its peak, 0 to 1.</param>
    public Estimate MeanWattsWith(double peakShare) =>
        (this with { PeakShare = peakShare, SleepShare = Math.Min(SleepShare, 1 - peakShare) }).MeanWatts;
}
