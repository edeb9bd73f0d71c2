using Mastwright.Agreement;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Tests.Evidence;

/// <summary>The fitted correction on links made up with known values.</summary>
public sealed class CorrectionFitTests
{
    private const double TrueOffsetDb = -4;
    private static readonly CorrectionCandidate[] Candidates = [.. from cover in new double[] { 0, 6, 12, 18 } from height in new double[] { 10, 30 } select new CorrectionCandidate(cover, height)];

    /// <summary>Balanced layout by hand: stations of 4 links with means 1 and 3, squares of 6 each: within 12/6 = 2; between (8·1/1 − 2)/4 = 1.5.</summary>
    [Fact]
    public void Differences_come_apart_as_by_hand()
    {
        StationOffsets found = StationOffsets.Of([new("a", 4, 1, 6), new("b", 4, 3, 6)]);
        Assert.Equal(2, found.OffsetDb, 1e-12);
        Assert.Equal(2, found.WithinDb2, 1e-12);
        Assert.Equal(1.5, found.BetweenDb2, 1e-12);
        Assert.Equal(Math.Sqrt((1.5 + 0.5) / 2), found.OffsetDeviationDb, 1e-12);
        Assert.Equal(-0.75, found.Own([new("a", 4, 1, 6), new("b", 4, 3, 6)])["a"].Db, 1e-12);
    }

    [Fact]
    public void What_was_put_in_is_found_again_and_beats_the_rivals()
    {
        CorrectionFit fit = CorrectionFit.Of([.. Candidates], Links(receivers: 6, candidate: 7, ownDb: 3))!;
        Assert.Equal(18, fit.CoverMetres.Median);
        Assert.Equal(30, fit.HeightMetres!.Value.Median);
        Assert.InRange(TrueOffsetDb, fit.OffsetDb.Low, fit.OffsetDb.High);
        Assert.True(fit.IsAdoptable);
        Assert.Empty(fit.AppliesTo);
        Assert.Equal(6, fit.Own.Count);
        Assert.True(fit.ByBlock.OwnOffDb < fit.ByBlock.OffDb);
        Assert.Contains(CorrectionFindings.Of(fit, "plan"), finding => finding.Code == "correction-better");
    }

    [Fact]
    public void Where_a_rival_is_nearer_nothing_is_to_be_adopted()
    {
        // Levels that follow distance alone: what the method says of the ground is noise.
        MeasuredLink[] links = [.. Links(6, 0, 0).Select(link => Like(link, link.AtNoLossDbm - 20 - (35 * Math.Log10(link.DistanceMetres))))];
        CorrectionFit fit = CorrectionFit.Of([.. Candidates], links)!;
        Assert.False(fit.IsAdoptable);
        Finding beaten = CorrectionFindings.Of(fit, "plan").First(finding => finding.Code == "correction-beaten");
        Assert.Equal(Verdict.Fails, beaten.Verdict);
        Assert.DoesNotContain("{", FindingSentences.Text(beaten), StringComparison.Ordinal);
    }

    [Fact]
    public void The_offset_of_one_receiver_is_for_that_station_alone()
    {
        CorrectionFit fit = CorrectionFit.Of([.. Candidates], Links(receivers: 1, candidate: 6, ownDb: 3))!;
        Assert.Equal(["r0"], fit.AppliesTo);
        Assert.Empty(fit.Own);
        Assert.Contains(CorrectionFindings.Of(fit, "plan"), finding => finding.Code == "correction-own");
    }

    [Fact]
    public void Too_few_links_or_stations_give_no_correction()
    {
        Assert.Null(CorrectionFit.Of([.. Candidates], Links(6, 1, 1).Take(CorrectionFit.LeastLinks - 1)));
        Assert.Null(CorrectionFit.Of([.. Candidates], Links(6, 1, 1).Where(link => link.Block is "b0" or "b1")));
        Assert.Equal("correction-unknown", CorrectionFindings.TooFew("plan", 3).Code);
        Assert.Throws<ArgumentException>(() => CorrectionFit.Of([], Links(6, 1, 1)));
    }

    /// <summary>A degree of latitude is 111.2 km, so that 0.018° are the side of a square.</summary>
    [Fact]
    public void Places_within_a_square_share_its_name()
    {
        Assert.Equal(PositionBlock.Of(46.4001, -18.7), PositionBlock.Of(46.4002, -18.7001));
        Assert.NotEqual(PositionBlock.Of(46.40, -18.7), PositionBlock.Of(46.42, -18.7));
    }

    /// <summary>Each receiver hears 30 senders in 6 blocks; each candidate predicts with draws of its own, one of them with those that the measurement has.</summary>
    private static IEnumerable<MeasuredLink> Links(int receivers, int candidate, double ownDb)
    {
        for (int receiver = 0; receiver < receivers; receiver++)
        {
            double own = ownDb * Normal(1, receiver);
            for (int sender = 0; sender < 30; sender++)
            {
                int at = (100 * receiver) + sender;
                double[] predicted = [.. Candidates.Select((_, place) => -60 - (20 * Math.Log10(1 + sender)) + (8 * Normal((ulong)(10 + place), at)))];
                yield return new()
                {
                    Receiver = FormattableString.Invariant($"r{receiver}"),
                    Sender = FormattableString.Invariant($"s{sender}"),
                    Block = FormattableString.Invariant($"b{sender % 6}"),
                    DistanceMetres = 500 * (1 + sender),
                    AtNoLossDbm = 16,
                    PredictedDbm = [.. predicted],
                    MeasuredDbm = predicted[candidate] + TrueOffsetDb + own + (2 * Normal(2, at)),
                };
            }
        }
    }

    private static double Normal(ulong seed, int at) => Mastwright.Evidence.Statistics.Quantiles.Normal(KeyedDraws.Uniform(seed, at));

    private static MeasuredLink Like(MeasuredLink link, double measuredDbm) => new()
    {
        Receiver = link.Receiver,
        Sender = link.Sender,
        Block = link.Block,
        DistanceMetres = link.DistanceMetres,
        AtNoLossDbm = link.AtNoLossDbm,
        PredictedDbm = link.PredictedDbm,
        MeasuredDbm = measuredDbm,
    };
}
