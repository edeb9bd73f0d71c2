using System.Collections.Immutable;

namespace Mastwright.Station.Sun;

/// <summary>The smallest panel, and the smallest battery, with which a year keeps its target.</summary>
public static class SolarSizes
{
    private const int MostParallel = 64;

    /// <summary>Rated powers of panels that are made, in watts (common practice).</summary>
    public static ImmutableArray<double> PanelWatts { get; } = [5, 10, 15, 20, 30, 40, 50, 60, 80, 100, 120, 150, 200, 250, 300, 400];

    /// <summary>The smallest panel that keeps the target with the battery as it is; null when none of those made does.</summary>
    /// <param name="setup">Panel, battery and loads.</param>
    /// <param name="yield">What the panel gives.</param>
    /// <param name="mostHours">Hours a year without service that are borne.</param>
    /// <remarks>More panel never means more hours without service (tested), so the answer is found by halving.</remarks>
    public static double? SmallestPanelWatts(SolarSetup setup, SolarYield yield, double mostHours)
    {
        ArgumentNullException.ThrowIfNull(setup);
        int index = First(PanelWatts.Length, i => Keeps(setup with { Panel = setup.Panel with { Watts = PanelWatts[i] } }, yield, mostHours));
        return index < PanelWatts.Length ? PanelWatts[index] : null;
    }

    /// <summary>The fewest cells side by side that keep the target with the panel as it is; null when 64 do not.</summary>
    /// <inheritdoc cref="SmallestPanelWatts"/>
    public static int? FewestParallel(SolarSetup setup, SolarYield yield, double mostHours)
    {
        ArgumentNullException.ThrowIfNull(setup);
        int index = First(MostParallel, i => Keeps(setup with { Pack = setup.Pack with { Parallel = i + 1 } }, yield, mostHours));
        return index < MostParallel ? index + 1 : null;
    }

    private static bool Keeps(SolarSetup setup, SolarYield yield, double mostHours) => SolarYear.Run(setup, yield).HoursWithout <= mostHours;

    /// <summary>The first index from 0 that holds; the count when none does.</summary>
    private static int First(int count, Func<int, bool> holds)
    {
        int low = 0;
        int high = count;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = holds(middle) ? (low, middle) : (middle + 1, high);
        }

        return low;
    }
}
