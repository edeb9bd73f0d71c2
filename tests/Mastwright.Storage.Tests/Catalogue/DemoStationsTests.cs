using Mastwright.Findings;
using Mastwright.Plans;
using Mastwright.Station;
using Mastwright.Station.Radio;
using Mastwright.Storage.Catalogue;
using Mastwright.Storage.Plans;
using Mastwright.Storage.Tests.Plans;
using Mastwright.Tests;

namespace Mastwright.Storage.Tests.Catalogue;

/// <summary>The demo's plan against the shipped catalogue: every fit-out's radio chain comes out whole.</summary>
public sealed class DemoStationsTests
{
    [Fact]
    public void Every_fit_out_of_the_demo_has_a_power_and_a_wanted_level()
    {
        Plan plan = PlanFileTests.Good(PlanFile.Read(Path.Combine(TestPlaces.Repository, "data", "demo", "skerrin", "plan.yaml"))).Plan;
        (string Key, StationChainResult Result)[] chains =
        [
            .. plan.Sites.SelectMany(site => site.FitOuts.Select(fitOut => ($"{site.Key}/{fitOut.Key}", Chain(plan, site, fitOut)))),
        ];

        Assert.NotEmpty(chains);
        Assert.All(chains, chain => Assert.Empty(chain.Result.MissingToSend));
        Assert.All(chains, chain => Assert.Empty(chain.Result.MissingToReceive));
        Assert.All(chains, chain => Assert.DoesNotContain(chain.Result.Findings, finding => finding.Verdict == Verdict.Fails));

        // The story of the demo: thin coax under the eaves eats most of the power, the box under the antenna keeps it.
        Assert.Equal(Verdict.Tight, FeedLoss("ferry-house/eaves").Verdict);
        Assert.Equal(Verdict.Ok, FeedLoss("ferry-house/net-loft").Verdict);

        Finding FeedLoss(string key) =>
            Assert.Single(chains.Single(chain => chain.Key == key).Result.Findings, finding => finding.Code == "feed-loss");
    }

    private static StationChainResult Chain(Plan plan, Site site, FitOut fitOut) => StationChain.Compute(new()
    {
        PlanPath = $"sites/{site.Key}/fit-outs/{fitOut.Key}",
        Antenna = fitOut.Antenna,
        Feed = fitOut.Feed,
        Mismatch = fitOut.Mismatch,
        Radio = fitOut.Radio,
        Modem = plan.Modem,
        Catalogue = StationCatalogueFile.LoadBuiltIn(),
        ExternalNoiseFigureDb = plan.Air.ExternalNoiseFigureDb,
        NearbyTransmitters = [.. fitOut.NearbyTransmitters.Select(near =>
            new NearbyEmitter($"sites/{site.Key}/fit-outs/{fitOut.Key}/nearby-transmitters/{near.Key}", near.FrequencyHz, near.EirpDbm, near.DistanceMetres))],
    });
}
