using System.Collections.Immutable;
using Mastwright.Network.Reach;

namespace Mastwright.Reports.Reach;

/// <summary>The numbers that a raster of a reach map may hold.</summary>
internal static class ReachLayers
{
    internal const string Margin = "margin";

    internal const string Difference = "difference";

    internal static ImmutableArray<string> Names => [Margin, "level", "loss", "confidence", "delivery", Difference];

    /// <summary>The values of a layer, row by row; NaN where there is none.</summary>
    internal static ReadOnlyMemory<float> Of(string layer, ReachMap map, ReachMap? compared, ReachDirection direction) => layer switch
    {
        Difference when compared is not null => ReachComparison.DifferencesDb(map, compared, direction),
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
