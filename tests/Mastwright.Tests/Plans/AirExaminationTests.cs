using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Network.Air;
using Mastwright.Network.Links;
using Mastwright.Plans;
using Mastwright.Tests.Network.Hops;

namespace Mastwright.Tests.Plans;

public sealed class AirExaminationTests
{
    private static readonly AirSettings Settings = new() { AirtimeSeconds = 0.5, PreambleSeconds = 0.05, HopLimit = 2, FadingDb = 0, DurationSeconds = 6 * 3600 };

    [Fact]
    public void A_quiet_channel_does_and_a_crowded_one_collapses()
    {
        // A row of five with 20 dB from each to the next, as loud as from the next but one.
        LinkMatrix row = FloodTrialTests.Matrix(5, new Dictionary<(int, int), double> { [(0, 1)] = 20, [(1, 2)] = 20, [(2, 3)] = 20, [(3, 4)] = 20 });
        AirReport quiet = AirExamination.Of(HopExaminationTests.Report(row, 50), [.. Enumerable.Repeat(new AirTraffic(2, 0), 5)], Settings, []);
        Assert.Equal(Verdict.Ok, quiet.Findings.Single(one => one.Code == "air-delivery").Verdict);
        Assert.Equal(Verdict.Ok, quiet.Findings.Single(one => one.Code == "air-busy").Verdict);
        Assert.True(quiet.Growth[^1].DeliveredShare < AirExamination.CollapseShare);
        Assert.True(quiet.Growth.Length > 3);
        Assert.Equal(6, quiet.Remedies.Length);
        Assert.All(quiet.Ledgers, ledger => Assert.Equal(ledger.Total, ledger.Lines.Sum(line => line.Value), 1e-9));

        // Pairs at hand: each of 12 packets in 6 h at each of two hops' reach: 2, 3, 4, 3, 2 stations.
        Assert.Equal(12 * 14, quiet.Result.Wanted);

        AirReport crowded = AirExamination.Of(HopExaminationTests.Report(row, 50), [.. Enumerable.Repeat(new AirTraffic(1800, 0), 5)], Settings, []);
        Assert.Equal(Verdict.Fails, crowded.Findings.Single(one => one.Code == "air-delivery").Verdict);
        Assert.Equal(Verdict.Fails, crowded.Findings.Single(one => one.Code == "air-busy").Verdict);
        Assert.Equal(Verdict.Fails, crowded.Findings.Single(one => one.Code == "air-growth").Verdict);
        Assert.All(crowded.Findings.Concat(quiet.Findings), one => Assert.DoesNotContain("{", FindingSentences.Text(one) + FindingSentences.Advice(one), StringComparison.Ordinal));
    }

    [Fact]
    public void Who_waits_for_the_law_is_told_and_where_nobody_hears_nothing_is_simulated()
    {
        LinkMatrix two = FloodTrialTests.Matrix(2, new Dictionary<(int, int), double> { [(0, 1)] = 20 });
        AirReport stalled = AirExamination.Of(HopExaminationTests.Report(two, 50), [new(100, 0), default], Settings with { DutyShare = 0.01, HopLimit = 1 }, []);
        Finding limit = Assert.Single(stalled.Findings, one => one.Code == "air-limit");
        Assert.Equal(Verdict.Fails, limit.Verdict);
        Assert.Contains("to keep within 1 % of any hour", FindingSentences.Text(limit), StringComparison.Ordinal);

        LinkMatrix apart = FloodTrialTests.Matrix(2, new Dictionary<(int, int), double> { [(0, 1)] = -40 });
        AirReport nothing = AirExamination.Of(HopExaminationTests.Report(apart, 50), [new(1, 0), new(1, 0)], Settings, []);
        Assert.Equal("air-nothing", Assert.Single(nothing.Findings).Code);
        Assert.Empty(nothing.Growth);
    }
}
