namespace Mastwright.Station.Supply;

/// <summary>The moment that a supply is solved for.</summary>
/// <param name="Name">What a person reads: "on average", "at its peak".</param>
/// <param name="LoadWatts">What a load takes then, in watts.</param>
/// <param name="IsCharging">Whether batteries are being charged with all that their chargers give.</param>
internal sealed record SupplyDemand(string Name, Func<LoadProfile, double> LoadWatts, bool IsCharging)
{
    /// <summary>The mean over time, batteries full.</summary>
    internal static SupplyDemand Mean { get; } = new("on average", load => load.MeanWatts.Median, IsCharging: false);

    /// <summary>The least that the mean may be.</summary>
    internal static SupplyDemand LowMean { get; } = new("on average", load => load.MeanWatts.Low, IsCharging: false);

    /// <summary>The most that the mean may be.</summary>
    internal static SupplyDemand HighMean { get; } = new("on average", load => load.MeanWatts.High, IsCharging: false);

    /// <summary>Every load at its most at once, as after a mains failure, and batteries empty.</summary>
    internal static SupplyDemand Peak { get; } = new("at its peak", load => load.MostWatts, IsCharging: true);

    /// <summary>Every load that runs at its most at once: nothing starts.</summary>
    internal static SupplyDemand RunningPeak { get; } = new("at its peak", load => load.MostRunningWatts, IsCharging: true);
}
