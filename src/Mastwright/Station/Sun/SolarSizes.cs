using System.Collections.Immutable;

namespace Mastwright.Station.Sun;

/// <summary>The smallest panel, and the smallest battery, with which a year keeps its target.</summary>
public static class SolarSizes
{
    private const int MostParallel = 64;

    /// <summary>Numbers of cells side by side that are tried with each panel.</summary>
    private static readonly ImmutableArray<int> Parallels = [1, 2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 32, 48, MostParallel];

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

    /// <summary>Panels with the fewest cells that keep the target with them, from the smallest panel that any battery keeps it with: each larger panel of the list needs fewer cells.</summary>
    /// <param name="setup">Panel, battery and loads; the panel's watts and the cells side by side are varied.</param>
    /// <param name="yield">What the panel gives.</param>
    /// <param name="mostHours">Hours a year without service that are borne.</param>
    /// <returns>The pairs by rising panel, each of them run and found to keep the target; empty when none does.</returns>
    public static ImmutableArray<SolarPair> Pairs(SolarSetup setup, SolarYield yield, double mostHours)
    {
        ArgumentNullException.ThrowIfNull(setup);
        List<SolarPair> pairs = [];

        // Down the cells and up the panels, so that each step rules one of them out: some thirty years in all.
        int cells = Parallels.Length;
        foreach (double watts in PanelWatts)
        {
            bool Holds(int parallel) => Keeps(setup with { Panel = setup.Panel with { Watts = watts }, Pack = setup.Pack with { Parallel = parallel } }, yield, mostHours);
            int before = cells;
            while (cells > 0 && Holds(Parallels[cells - 1]))
            {
                cells--;
            }

            if (cells < before)
            {
                pairs.Add(new(watts, Parallels[cells]));
            }
        }

        return [.. pairs];
    }

    private static bool Keeps(SolarSetup setup, SolarYield yield, double mostHours) => SolarYear.HoursWithout(setup, yield, mostHours) <= mostHours;

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

/// <summary>A panel and a battery that keep a target together.</summary>
/// <param name="PanelWatts">Rated power of the panel in watts.</param>
/// <param name="Parallel">Cells side by side.</param>
public readonly record struct SolarPair(double PanelWatts, int Parallel)
{
    /// <summary>Both, in the invariant culture.</summary>
    public override string ToString() => FormattableString.Invariant($"{PanelWatts:0} W with {Parallel} {(Parallel == 1 ? "cell" : "cells")} side by side");
}
