using Mastwright.Findings;
using Mastwright.Network.Hops;
using Mastwright.Network.Links;
using Mastwright.Plans;
using Mastwright.Station.Radio;
using Mastwright.Tests.Network.Hops;

namespace Mastwright.Tests.Plans;

public sealed class HopExaminationTests
{
    private static readonly HopSettings Few = new() { Worlds = 200, Packets = 5 };

    [Fact]
    public void What_hangs_on_one_relay_and_what_no_world_reaches_is_told()
    {
        // a ~ b ~ c ~ d in a row; e hears nobody, f is unknown.
        LinkMatrix matrix = FloodTrialTests.Matrix(6, new Dictionary<(int, int), double>
        {
            [(0, 1)] = 40, [(1, 2)] = 40, [(2, 3)] = 5, [(0, 4)] = -60, [(1, 4)] = -60, [(2, 4)] = -60, [(3, 4)] = -60,
        });
        HopReport report = HopExamination.Of(Report(matrix, 50), [], 0, Few);
        Assert.Equal([1, 2, 3, -1, -1], report.Stations.Select(station => station.FewestHops));
        Assert.Equal([0, 1, 2, 3], report.Stations[2].Route!.Stations);
        Assert.Equal(matrix.Way(2, 3).Odds!.Value.Works, report.Stations[2].RouteWorks, 1e-6);
        Assert.Equal([Verdict.Ok, Verdict.Ok, Verdict.Tight, Verdict.Fails, Verdict.Unknown], report.Findings.Where(one => one.Code == "hops-reach").Select(one => one.Verdict));
        Finding[] relays = [.. report.Findings.Where(one => one.Code == "relay-alone")];
        Assert.Equal(["b", "c"], relays.Select(one => one.Subject));
        Assert.Equal("Without b as a relay, a no longer reaches 2 stations: c, d.", FindingSentences.Text(relays[0]));
        Assert.Equal(["a ~ b", "b ~ c"], report.Findings.Where(one => one.Code == "relay-link-alone").Select(one => one.Subject));
        Assert.Contains(report.Findings, one => FindingSentences.Text(one) == "From a within 3 hops to e: not in any of the worlds that were tried; at the best guess no chain of links leads there.");
        Assert.All(report.Findings, one => Assert.DoesNotContain("{", FindingSentences.Text(one) + FindingSentences.Advice(one), StringComparison.Ordinal));
    }

    [Fact]
    public void Other_air_opens_far_links_for_everybody()
    {
        LinkMatrix usual = FloodTrialTests.Matrix(3, new Dictionary<(int, int), double> { [(0, 1)] = 40, [(1, 2)] = -9, [(0, 2)] = -30 });
        LinkMatrix rare = FloodTrialTests.Matrix(3, new Dictionary<(int, int), double> { [(0, 1)] = 45, [(1, 2)] = 6, [(0, 2)] = 1 });
        HopReport report = HopExamination.Of(Report(usual, 50), [Report(rare, 1)], 0, Few);
        HopCondition condition = Assert.Single(report.Conditions);
        Assert.Equal([2], condition.Heard);
        Assert.Equal([2], condition.Reached);
        Assert.Equal((3, 1, 1.0), (condition.Links, condition.UsualLinks, condition.TimePercent));
        Assert.Contains("In the air of 1 % of the time a is also in a link with c", FindingSentences.Text(report.Findings.Single(one => one.Code == "hops-enhanced")), StringComparison.Ordinal);
    }

    internal static MatrixReport Report(LinkMatrix matrix, double timePercent)
    {
        PathSettings settings = new()
        {
            FrequencyHz = 868e6, TimePercent = timePercent, LocationPercent = 50, LowKFactor = 2.0 / 3,
            Wanted = new() { MarginDb = 10, ModelErrorDb = 8, ModelErrorSource = "", LocationDb = 0, LocationSource = "", FadingDb = 3, FadingSource = "" },
        };
        return new() { Plan = new() { Name = "test", Modem = new() { FrequencyHz = 868e6, BandwidthHz = 125e3, SpreadingFactor = 9, PayloadBytes = 20 } }, Settings = settings, Matrix = matrix };
    }
}
