using Mastwright.Evidence.Statistics;
using Mastwright.Quantities;

namespace Mastwright.Agreement;

/// <summary>The ranges of what was fitted, from fitting again to stations drawn with replacement.</summary>
/// <remarks>
/// Links of one station are not independent, so that whole stations are drawn (Davison and Hinkley, Bootstrap Methods and their Application, 1997,
/// clause 3.8, from memory). A value from a grid is no better known than to half a step of the grid.
/// </remarks>
internal sealed record CorrectionDraws(ConfidenceInterval Offset, ConfidenceInterval Cover, ConfidenceInterval Height)
{
    private const double Tail = 0.025;

    internal static CorrectionDraws Of(CorrectionTable table, int draws, ulong seed)
    {
        StationSums[][] units = UnitSums(table);
        int count = units[0].Length;
        double[] offsets = new double[draws];
        double[] covers = new double[draws];
        double[] heights = new double[draws];
        int[] drawn = new int[count];
        int at = 0;
        for (int draw = 0; draw < draws; draw++)
        {
            for (int i = 0; i < count; i++)
            {
                drawn[i] = (int)(KeyedDraws.Uniform(seed, at++) * count);
            }

            (int best, StationOffsets fitted) = table.Best(candidate => Drawn(table, units[candidate], drawn));
            offsets[draw] = fitted.OffsetDb;
            covers[draw] = table.Candidates[best].CoverMetres;
            heights[draw] = table.Candidates[best].HeightMetres ?? 0;
        }

        return new(
            Middle(offsets),
            ByStep(covers, [.. table.Candidates.Select(one => one.CoverMetres)]),
            ByStep(heights, [.. table.Candidates.Select(one => one.HeightMetres ?? 0)]));
    }

    /// <summary>Sums of each unit, by candidate.</summary>
    private static StationSums[][] UnitSums(CorrectionTable table)
    {
        int[][] units =
        [
            .. Enumerable.Range(0, table.Links.Length).GroupBy(place => table.UnitOf(table.Links[place]), StringComparer.Ordinal)
                .OrderBy(one => one.Key, StringComparer.Ordinal).Select(one => one.ToArray()),
        ];
        return [.. Enumerable.Range(0, table.Candidates.Length).Select(candidate => units.Select(places => table.Sums(places, candidate)[0]).ToArray())];
    }

    private static StationSums[] Drawn(CorrectionTable table, StationSums[] units, int[] drawn)
    {
        StationSums[] sums = [.. drawn.Select(unit => units[unit])];
        if (table.HasReceivers)
        {
            return sums;
        }

        int count = sums.Sum(one => one.Count);
        double mean = sums.Sum(one => one.Count * one.MeanDb) / count;
        return [new("", count, mean, sums.Sum(one => one.SquaresDb + (one.Count * (one.MeanDb - mean) * (one.MeanDb - mean))))];
    }

    private static ConfidenceInterval Middle(double[] values)
    {
        double[] sorted = [.. values.Order()];
        int cut = (int)(Tail * sorted.Length);
        return new(sorted[cut], sorted[^(cut + 1)]);
    }

    private static ConfidenceInterval ByStep(double[] values, double[] grid)
    {
        double[] steps = [.. grid.Distinct().Order()];
        ConfidenceInterval middle = Middle(values);
        int low = Array.IndexOf(steps, middle.Low);
        int high = Array.IndexOf(steps, middle.High);
        return new(
            low == 0 ? middle.Low : (steps[low - 1] + steps[low]) / 2,
            high == steps.Length - 1 ? middle.High : (steps[high] + steps[high + 1]) / 2);
    }
}
