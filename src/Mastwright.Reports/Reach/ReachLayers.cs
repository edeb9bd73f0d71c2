using System.Collections.Immutable;
using Mastwright.Network.Reach;

namespace Mastwright.Reports.Reach;

/// <summary>The numbers that a raster of a reach map may hold.</summary>
internal static class ReachLayers
{
    internal const string Margin = "margin";

    internal const string Difference = "difference";

    internal const string MarginLow = "margin-low";

    internal const string MarginHigh = "margin-high";

    internal const string BestServer = "best-server";

    internal const string StationCount = "station-count";

    /// <summary>What a map of one station can show.</summary>
    internal static ImmutableArray<string> OfOne => [Margin, "level", "loss", "confidence", "delivery", Difference, MarginLow, MarginHigh];

    /// <summary>What a map of several stations can show.</summary>
    internal static ImmutableArray<string> OfSeveral => [BestServer, StationCount, Margin];

    /// <summary>What is wrong with the stations and the layer asked for; null when nothing is.</summary>
    internal static string? Problem(ReachOptions options)
    {
        if (options.Stations.Length == 0 && !options.AllSites)
        {
            return "reach: no station is named; name one or several after the plan, or give --all-sites";
        }

        if (options.Layer == Difference && options.CompareFitOut is null && !options.IsOfSeveral)
        {
            return "--layer difference needs --compare-fit-out KEY: the fit-out that this one is compared with";
        }

        if (options.Layer is MarginLow or MarginHigh && !options.WithRanges)
        {
            return $"--layer {options.Layer} needs --ranges: the map over the range of the station's place and height";
        }

        if (options.WithRanges && options.IsOfSeveral)
        {
            return "--ranges is about one station";
        }

        ImmutableArray<string> layers = options.IsOfSeveral ? OfSeveral : OfOne;
        return layers.Contains(options.Layer) ? null
            : $"--layer: {(options.IsOfSeveral ? "several stations have" : "one station has")} no '{options.Layer}', but {string.Join(", ", layers)}";
    }

    /// <summary>The values of a layer, row by row; NaN where there is none.</summary>
    internal static ReadOnlyMemory<float> Of(string layer, ReachMap map, ReachMap? compared, ReachRange? range, ReachDirection direction) => layer switch
    {
        Difference when compared is not null => ReachComparison.DifferencesDb(map, compared, direction),
        MarginLow when range is not null => range.LowDb(direction),
        MarginHigh when range is not null => range.HighDb(direction),
        "loss" => map.Field.Losses,
        "level" => Levels(map, direction),
        "confidence" => Odds(map, direction, works: true),
        "delivery" => Odds(map, direction, works: false),
        _ => map.MarginsDb(direction),
    };

    /// <summary>Level at whoever receives, in dBm: with "both", where the weaker way ends.</summary>
    private static float[] Levels(ReachMap map, ReachDirection direction)
    {
        bool heard = direction == ReachDirection.Heard || (direction == ReachDirection.Both && map.Budget.HeardOverHearsDb <= 0);
        double shift = heard ? 0 : map.Budget.HearsAtNoLossDbm - map.Budget.HeardAtNoLossDbm;
        float[] levels = map.LevelDbm.ToArray();
        for (int i = 0; i < levels.Length; i++)
        {
            levels[i] = (float)(levels[i] + shift);
        }

        return levels;
    }

    private static float[] Odds(ReachMap map, ReachDirection direction, bool works)
    {
        float[] values = new float[map.LevelDbm.Length];
        for (int i = 0; i < values.Length; i++)
        {
            values[i] = map.Odds(i, direction) is { } odds ? (float)(works ? odds.Works : odds.DeliversIfItWorks) : float.NaN;
        }

        return values;
    }
}
