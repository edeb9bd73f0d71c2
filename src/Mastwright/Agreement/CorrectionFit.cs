using System.Collections.Immutable;
using Mastwright.Evidence.Statistics;
using Mastwright.Quantities;

namespace Mastwright.Agreement;

/// <summary>A correction of the prediction, fitted to measured links, and what it is worth on links that it had not seen.</summary>
/// <remarks>
/// Of each candidate (cover, height of unknown stations) the differences measured less predicted are taken apart into what all links share, what a
/// receiving station is off by, and the rest; the candidate that makes them most likely is taken. The ranges come from drawing whole stations anew.
/// </remarks>
public sealed record CorrectionFit
{
    /// <summary>Links below which nothing is fitted (common practice).</summary>
    public const int LeastLinks = 8;

    /// <summary>Stations, and blocks of positions, below which nothing is fitted: fewer cannot be left out in turn.</summary>
    public const int LeastGroups = 4;

    private const int Draws = 400;
    private const ulong Seed = 0x6d617374;

    /// <summary>How many links it was fitted to.</summary>
    public required int Links { get; init; }

    /// <summary>The stations that heard them.</summary>
    public required ImmutableArray<string> Receivers { get; init; }

    /// <summary>Offset on the level of every link, in dB, with its 95 % range.</summary>
    public required Estimate OffsetDb { get; init; }

    /// <summary>Uniform height of cover in metres, with its range.</summary>
    public required Estimate CoverMetres { get; init; }

    /// <summary>Height above ground of stations of unknown height, in metres, with its range; null where every height is known.</summary>
    public Estimate? HeightMetres { get; init; }

    /// <summary>Standard deviation in dB of what remains at a station that was not measured: the rest, the stations' own offsets, and what is not known of the offset.</summary>
    public required double SpreadDb { get; init; }

    /// <summary>Standard deviation in dB of what remains of one link at a station whose own offset is known.</summary>
    public required double WithinDb { get; init; }

    /// <summary>The receiving stations' own offsets, each for that station alone; empty where they cannot be told.</summary>
    public ImmutableSortedDictionary<string, StationOffset> Own { get; init; } = ImmutableSortedDictionary<string, StationOffset>.Empty;

    /// <summary>Left out by whole stations.</summary>
    public required CorrectionScore ByStation { get; init; }

    /// <summary>Left out by blocks of positions.</summary>
    public required CorrectionScore ByBlock { get; init; }

    /// <summary>Whether receivers were enough to tell what all share from what each is off by itself.</summary>
    public required bool HasReceivers { get; init; }

    /// <summary>Whether it beats every rival in both, so that a plan may adopt it.</summary>
    public bool IsAdoptable => ByStation.BeatsRivals && ByBlock.BeatsRivals;

    /// <summary>The stations that it applies to; empty for all. With too few receivers the offset may be their own, and is not carried to others.</summary>
    public ImmutableArray<string> AppliesTo => HasReceivers ? [] : Receivers;

    /// <summary>Fits a correction.</summary>
    /// <param name="candidates">The ways to predict, one or more.</param>
    /// <param name="links">The links, each with a prediction by each candidate.</param>
    /// <returns>The correction; null with too few links, stations or blocks (<see cref="LeastLinks"/>, <see cref="LeastGroups"/>).</returns>
    /// <exception cref="ArgumentException">A link has more or fewer predictions than there are candidates.</exception>
    public static CorrectionFit? Of(ImmutableArray<CorrectionCandidate> candidates, IEnumerable<MeasuredLink> links)
    {
        ArgumentNullException.ThrowIfNull(links);
        ImmutableArray<MeasuredLink> all = [.. links];
        if (candidates.IsDefaultOrEmpty || all.Any(link => link.PredictedDbm.Length != candidates.Length))
        {
            throw new ArgumentException("Each link needs one prediction by each candidate.", nameof(links));
        }

        CorrectionTable table = new(candidates, all);
        if (all.Length < LeastLinks || Distinct(all, table.UnitOf).Length < LeastGroups || Distinct(all, link => link.Block).Length < LeastGroups)
        {
            return null;
        }

        int[] every = [.. Enumerable.Range(0, all.Length)];
        (int best, StationOffsets offsets) = table.Best(candidate => table.Sums(every, candidate));
        CorrectionDraws draws = CorrectionDraws.Of(table, Draws, Seed);
        double reach = Quantiles.Normal(0.975) * offsets.OffsetDeviationDb;
        return new()
        {
            Links = all.Length,
            Receivers = Distinct(all, link => link.Receiver),
            OffsetDb = Range(Math.Min(draws.Offset.Low, offsets.OffsetDb - reach), offsets.OffsetDb, Math.Max(draws.Offset.High, offsets.OffsetDb + reach)),
            CoverMetres = Range(draws.Cover.Low, candidates[best].CoverMetres, draws.Cover.High),
            HeightMetres = candidates[best].HeightMetres is { } height ? Range(draws.Height.Low, height, draws.Height.High) : null,
            SpreadDb = Math.Sqrt(offsets.WithinDb2 + offsets.BetweenDb2 + (offsets.OffsetDeviationDb * offsets.OffsetDeviationDb)),
            WithinDb = Math.Sqrt(offsets.WithinDb2),
            Own = table.HasReceivers ? offsets.Own(table.Sums(every, best)) : ImmutableSortedDictionary<string, StationOffset>.Empty,
            HasReceivers = table.HasReceivers,
            ByStation = CorrectionFolds.ByStation(table),
            ByBlock = CorrectionFolds.ByBlock(table),
        };
    }

    private static Estimate Range(double low, double best, double high) => Estimate.Of(Math.Min(low, best), best, Math.Max(high, best));

    private static ImmutableArray<string> Distinct(ImmutableArray<MeasuredLink> links, Func<MeasuredLink, string> key) =>
        [.. links.Select(key).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
}
