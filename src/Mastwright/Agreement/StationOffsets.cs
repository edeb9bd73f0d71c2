using System.Collections.Immutable;

namespace Mastwright.Agreement;

/// <summary>How many differences a station has, their mean and their squares about it.</summary>
/// <param name="Station">The station.</param>
/// <param name="Count">How many, one or more.</param>
/// <param name="MeanDb">Their mean in dB.</param>
/// <param name="SquaresDb">Sum of the squares about the mean, in dB².</param>
internal readonly record struct StationSums(string Station, int Count, double MeanDb, double SquaresDb);

/// <summary>What one station is off by, beyond what all are.</summary>
/// <param name="Db">In dB, drawn towards zero by how little it was measured.</param>
/// <param name="DeviationDb">Standard deviation of what is not known of it, in dB.</param>
public readonly record struct StationOffset(double Db, double DeviationDb);

/// <summary>Differences between measured and predicted, taken apart: what all links share, what a station is off by, and the rest.</summary>
/// <remarks>
/// One-way layout with random effects (Searle, Casella, McCulloch, Variance Components, 1992, chapter 3: the analysis-of-variance estimator for
/// unbalanced data, from memory), its mean weighted by what each station tells. With one group there is no variance between stations to tell.
/// </remarks>
internal sealed record StationOffsets
{
    /// <summary>A variance that no measurement is below: that of a tenth of a decibel, the finest step in which levels are reported.</summary>
    private const double LeastDb2 = 0.01;

    /// <summary>What all links are off by, in dB.</summary>
    internal required double OffsetDb { get; init; }

    /// <summary>Standard deviation of what is not known of the offset, in dB.</summary>
    internal required double OffsetDeviationDb { get; init; }

    /// <summary>Variance of a link within its station, in dB².</summary>
    internal required double WithinDb2 { get; init; }

    /// <summary>Variance from station to station, in dB².</summary>
    internal required double BetweenDb2 { get; init; }

    /// <summary>Minus twice the logarithm of the likelihood, less what is the same for every candidate.</summary>
    internal required double Deviance { get; init; }

    /// <summary>Degrees of freedom of the variance within stations.</summary>
    internal required int Degrees { get; init; }

    /// <summary>Takes differences apart.</summary>
    /// <param name="stations">Sums of each station; more links in all than stations.</param>
    internal static StationOffsets Of(ReadOnlySpan<StationSums> stations)
    {
        double links = 0;
        double squaresOfCounts = 0;
        double grand = 0;
        double within = 0;
        foreach (StationSums one in stations)
        {
            links += one.Count;
            squaresOfCounts += (double)one.Count * one.Count;
            grand += one.Count * one.MeanDb;
            within += one.SquaresDb;
        }

        grand /= links;
        int degrees = (int)links - stations.Length;
        double withinDb2 = Math.Max(within / Math.Max(1, degrees), LeastDb2);
        double betweenDb2 = stations.Length == 1 ? 0 : Between(stations, links, squaresOfCounts, grand, withinDb2);
        double weights = 0;
        double offset = 0;
        foreach (StationSums one in stations)
        {
            double weight = 1 / (betweenDb2 + (withinDb2 / one.Count));
            weights += weight;
            offset += weight * one.MeanDb;
        }

        offset /= weights;
        return new()
        {
            OffsetDb = offset,
            OffsetDeviationDb = 1 / Math.Sqrt(weights),
            WithinDb2 = withinDb2,
            BetweenDb2 = betweenDb2,
            Deviance = DevianceOf(stations, offset, withinDb2, betweenDb2),
            Degrees = Math.Max(1, degrees),
        };
    }

    private static double Between(ReadOnlySpan<StationSums> stations, double links, double squaresOfCounts, double grand, double withinDb2)
    {
        double between = 0;
        foreach (StationSums one in stations)
        {
            between += one.Count * (one.MeanDb - grand) * (one.MeanDb - grand);
        }

        double usual = (links - (squaresOfCounts / links)) / (stations.Length - 1);
        return Math.Max(0, ((between / (stations.Length - 1)) - withinDb2) / usual);
    }

    private static double DevianceOf(ReadOnlySpan<StationSums> stations, double offset, double withinDb2, double betweenDb2)
    {
        double deviance = 0;
        foreach (StationSums one in stations)
        {
            double mean = withinDb2 + (one.Count * betweenDb2);
            double off = one.MeanDb - offset;
            deviance += ((one.Count - 1) * Math.Log(withinDb2)) + Math.Log(mean) + (one.SquaresDb / withinDb2) + (one.Count * off * off / mean);
        }

        return deviance;
    }

    /// <summary>The stations' own offsets; empty where they cannot be told from what all share.</summary>
    /// <param name="stations">The sums that this was found from.</param>
    internal ImmutableSortedDictionary<string, StationOffset> Own(ReadOnlySpan<StationSums> stations)
    {
        ImmutableSortedDictionary<string, StationOffset>.Builder own = ImmutableSortedDictionary.CreateBuilder<string, StationOffset>(StringComparer.Ordinal);
        foreach (StationSums one in stations)
        {
            if (BetweenDb2 > 0)
            {
                double told = BetweenDb2 / (BetweenDb2 + (WithinDb2 / one.Count));
                own[one.Station] = new(told * (one.MeanDb - OffsetDb), Math.Sqrt(1 / ((1 / BetweenDb2) + (one.Count / WithinDb2))));
            }
        }

        return own.ToImmutable();
    }
}
