using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Agreement;
using Mastwright.Evidence.Proof;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Plans;
using Mastwright.Propagation;
using Mastwright.Quantities;
using Mastwright.Records;
using Mastwright.Records.Proof;
using Mastwright.Records.Store;
using Mastwright.Reports.Sessions;

namespace Mastwright.Reports.Evidence;

/// <summary>A correction fitted to the records of a plan's stations, and what is to be said of it.</summary>
/// <param name="Fit">The correction; null where there were too few links.</param>
/// <param name="Links">How many links were measured and predicted.</param>
/// <param name="Packets">How many receptions they have.</param>
/// <param name="Period">The time that the records are of.</param>
/// <param name="Findings">What is to be said.</param>
internal sealed record CorrectionAnswer(CorrectionFit? Fit, int Links, long Packets, ProofPeriod Period, ImmutableArray<Finding> Findings)
{
    /// <summary>The correction under a name, as a plan takes it.</summary>
    /// <exception cref="InvalidOperationException">Nothing was fitted.</exception>
    internal AdoptedCorrection Adopted(string name)
    {
        CorrectionFit fit = Fit ?? throw new InvalidOperationException("Nothing was fitted.");
        int stations = fit.Receivers.Length;
        return new()
        {
            Key = name,
            Source = string.Create(
                CultureInfo.InvariantCulture,
                $"{fit.Links} links heard by {stations} {(stations == 1 ? "station" : "stations")}, records of {UtcTime.Text(Period.FromMicroseconds)[..10]}..{UtcTime.Text(Period.ToMicroseconds)[..10]}"),
            OffsetDb = fit.OffsetDb,
            CoverMetres = fit.CoverMetres.Median > 0 ? fit.CoverMetres : null,
            StationHeightMetres = fit.HeightMetres,
            SpreadDb = fit.SpreadDb,
            AppliesTo = fit.AppliesTo,
            Stations = fit.Own.ToImmutableSortedDictionary(
                one => one.Key,
                one => new OwnCorrection(
                    Estimate.PlusMinus(one.Value.Db, 1.96 * one.Value.DeviationDb),
                    Math.Sqrt((fit.WithinDb * fit.WithinDb) + (one.Value.DeviationDb * one.Value.DeviationDb))),
                StringComparer.Ordinal),
        };
    }
}

/// <summary>Fits a correction to what the stations of a plan heard of one another.</summary>
internal static class CorrectionRun
{
    /// <summary>Receptions below which a link is not used where nobody says otherwise: their median says little (common practice).</summary>
    internal const int UsualPackets = 5;

    /// <summary>Heights of cover that are tried, in metres.</summary>
    private static readonly ImmutableArray<double> Covers = [.. Enumerable.Range(0, 11).Select(step => 3.0 * step)];

    /// <summary>Heights that are tried for stations of unknown height, in metres.</summary>
    private static readonly ImmutableArray<double> Heights = [3, 6, 10, 15, 20, 30, 45, 60];

    /// <summary>The correction; null, with what is wrong told, when records or ground cannot be used.</summary>
    /// <param name="session">The plan with its ground.</param>
    /// <param name="store">The records.</param>
    /// <param name="network">The network; null for the only one.</param>
    /// <param name="period">Text of the period; null for all records.</param>
    /// <param name="leastPackets">Receptions with a level below which a link is not used.</param>
    /// <param name="tell">Told each line of what is wrong.</param>
    internal static CorrectionAnswer? Make(PlanSession session, RecordStore store, string? network, string? period, int leastPackets, Action<string> tell)
    {
        if (StoreDoor.NetworkOf(store, network, tell) is not { } name || PeriodOf(store, name, period, tell) is not { } time)
        {
            return null;
        }

        Plan plan = session.Plan with { Corrections = [], CorrectionInUse = "" };
        Dictionary<string, LinkStation> stations = LinkSelection.Stations(plan, ImmutableDictionary<string, string>.Empty).ToDictionary(one => one.Key, StringComparer.Ordinal);
        LinkLevel[] levels =
        [
            .. LinkLevel.Read(store, name, plan, time.FromMicroseconds, time.ToMicroseconds)
                .Where(level => level.Packets >= leastPackets && stations.ContainsKey(level.Receiver) && stations.ContainsKey(level.Sender)),
        ];
        MeasuredLink?[] links = new MeasuredLink?[levels.Length];
        ImmutableArray<CorrectionCandidate> candidates = Candidates(plan, levels.SelectMany(level => new[] { stations[level.Receiver], stations[level.Sender] }));
        ImmutableArray<Assessment> trials = [.. candidates.Select(candidate => session.Trial(Under(plan, candidate)))];
        ImmutableArray<Plan> plans = [.. candidates.Select(candidate => Under(plan, candidate))];
        Parallel.For(0, levels.Length, place => links[place] = Predicted(levels[place], stations[levels[place].Sender], stations[levels[place].Receiver], trials, plans));
        if (session.TellDamage(tell))
        {
            return null;
        }

        MeasuredLink[] usable = [.. links.OfType<MeasuredLink>()];
        CorrectionFit? fit = CorrectionFit.Of(candidates, usable);
        ImmutableArray<Finding> findings = fit is null ? [CorrectionFindings.TooFew("corrections", usable.Length)] : [.. CorrectionFindings.Of(fit, "corrections")];
        return new(fit, usable.Length, levels.Sum(level => (long)level.Packets), time, findings);
    }

    /// <summary>The plan text with the correction adopted; told, with null, where it may not be or cannot be written.</summary>
    /// <param name="answer">The fit.</param>
    /// <param name="text">The plan.</param>
    /// <param name="name">Name of the correction.</param>
    /// <param name="tell">Told what is wrong.</param>
    internal static Storage.Plans.PlanText? Adopt(CorrectionAnswer answer, Storage.Plans.PlanText text, string name, Action<string> tell)
    {
        if (answer.Fit is not { IsAdoptable: true })
        {
            tell(answer.Fit is null ? "Nothing was fitted, so nothing is adopted" : "The correction does not beat its rivals on links left out, so it is not adopted");
            return null;
        }

        Storage.Plans.PlanTextResult result = Storage.Plans.CorrectionText.Adopt(text, answer.Adopted(name));
        if (result.Problem is { } problem)
        {
            tell(problem.ToString());
        }

        return result.Text;
    }

    private static ProofPeriod? PeriodOf(RecordStore store, string network, string? text, Action<string> tell)
    {
        if (text is not null)
        {
            return ProofPeriods.Period("--period", text, tell);
        }

        if (store.Span(network, long.MinValue, long.MaxValue) is { } all)
        {
            return new(all.First, all.Last + 1);
        }

        tell($"network '{network}' holds no records");
        return null;
    }

    /// <summary>The grid: cover only where the plan has no cover file, heights only where a station's is not known.</summary>
    private static ImmutableArray<CorrectionCandidate> Candidates(Plan plan, IEnumerable<LinkStation> stations)
    {
        double?[] heights = stations.Any(station => station.Height is null) ? [.. Heights.Select(height => (double?)height)] : [null];
        return [.. from cover in plan.Covers.IsEmpty ? Covers : [0] from height in heights select new CorrectionCandidate(cover, height)];
    }

    private static Plan Under(Plan plan, CorrectionCandidate candidate) => plan with
    {
        Corrections =
        [
            new()
            {
                Key = "fit",
                OffsetDb = Estimate.Exactly(0),
                SpreadDb = 0,
                CoverMetres = plan.Covers.IsEmpty ? Estimate.Exactly(candidate.CoverMetres) : null,
                StationHeightMetres = candidate.HeightMetres is { } height ? Estimate.Exactly(height) : null,
            },
        ],
        CorrectionInUse = "fit",
    };

    private static MeasuredLink? Predicted(LinkLevel level, LinkStation sender, LinkStation receiver, ImmutableArray<Assessment> trials, ImmutableArray<Plan> plans)
    {
        double distance = Geodesic.Inverse(sender.Position.Point, receiver.Position.Point).DistanceMetres;
        if (distance is < ModelRange.ShortestPathMetres or > ModelRange.LongestPathMetres)
        {
            return null;
        }

        double[] predicted = new double[trials.Length];
        double atNoLoss = double.NaN;
        for (int place = 0; place < trials.Length; place++)
        {
            LinkReport link = trials[place].Link(AtBestGuess(LinkSelection.Filled(plans[place], sender)), AtBestGuess(LinkSelection.Filled(plans[place], receiver)));
            if (link.Out.LevelDbm is not { } at || link.ToChain.Feed.PassiveLossDb is not { } feed || link.Path.OutLoss is not { } loss)
            {
                return null;
            }

            predicted[place] = at.Median - feed.Median;
            atNoLoss = predicted[place] + loss.LossDb.Median;
        }

        return new()
        {
            Receiver = receiver.Key,
            Sender = sender.Key,
            Block = PositionBlock.Of(sender.Position.Point.LatitudeDegrees, sender.Position.Point.LongitudeDegrees),
            DistanceMetres = distance,
            MeasuredDbm = level.MedianDbm,
            AtNoLossDbm = atNoLoss,
            PredictedDbm = [.. predicted],
        };
    }

    /// <summary>A station without the ranges of its place and height: a fit needs one prediction of each candidate.</summary>
    private static LinkStation AtBestGuess(LinkStation station) => station with
    {
        Position = station.Position with { RadiusMetres = 0 },
        GroundHeightMetres = station.GroundHeightMetres is { } ground ? Estimate.Exactly(ground.Median) : null,
        Height = station.Height is { } height ? height with { Metres = Estimate.Exactly(height.Metres.Median), RoofMetres = height.RoofMetres is { } roof ? Estimate.Exactly(roof.Median) : null } : null,
    };
}
