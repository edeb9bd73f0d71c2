using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Paths;

/// <summary>Areas between two curves.</summary>
internal static class Bands
{
    /// <summary>The areas where one curve runs over another, each closed exactly where they cross.</summary>
    public static IEnumerable<ImmutableArray<Spot>> Over(PathFrame frame, ImmutableArray<double> distances, ImmutableArray<double> upper, ImmutableArray<double> lower)
    {
        List<Spot> top = [];
        List<Spot> bottom = [];
        for (int i = 0; i < distances.Length; i++)
        {
            double gap = upper[i] - lower[i];
            double before = i == 0 ? gap : upper[i - 1] - lower[i - 1];
            if (i > 0 && gap > 0 != before > 0 && gap != before)
            {
                double share = before / (before - gap);
                double distance = distances[i - 1] + (share * (distances[i] - distances[i - 1]));
                double height = upper[i - 1] + (share * (upper[i] - upper[i - 1]));
                top.Add(frame.At(distance, height));
                if (gap <= 0)
                {
                    yield return Closed(top, bottom);
                }
            }

            if (gap > 0)
            {
                top.Add(frame.At(distances[i], upper[i]));
                bottom.Add(frame.At(distances[i], lower[i]));
            }
        }

        if (bottom.Count > 1)
        {
            yield return Closed(top, bottom);
        }
    }

    /// <summary>The stretches of places that share a value: from the first index to the last, both inside.</summary>
    public static IEnumerable<(T Value, int First, int Last)> Stretches<T>(IReadOnlyList<T> values)
    {
        int first = 0;
        for (int i = 1; i <= values.Count; i++)
        {
            if (i == values.Count || !EqualityComparer<T>.Default.Equals(values[i], values[first]))
            {
                yield return (values[first], first, i - 1);
                first = i;
            }
        }
    }

    private static ImmutableArray<Spot> Closed(List<Spot> top, List<Spot> bottom)
    {
        bottom.Reverse();
        ImmutableArray<Spot> outline = [.. PlainCurve.Of(top), .. PlainCurve.Of(bottom)];
        top.Clear();
        bottom.Clear();
        return outline;
    }
}
