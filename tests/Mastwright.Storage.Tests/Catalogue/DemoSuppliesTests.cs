using Mastwright.Findings;
using Mastwright.Plans;
using Mastwright.Station.Supply;
using Mastwright.Storage.Catalogue;
using Mastwright.Storage.Plans;
using Mastwright.Storage.Tests.Plans;
using Mastwright.Tests;

namespace Mastwright.Storage.Tests.Catalogue;

/// <summary>The supplies of the demo's plan tell the story that its guide tells.</summary>
public sealed class DemoSuppliesTests
{
    private static readonly Plan Plan = PlanFileTests.Good(PlanFile.Read(Path.Combine(TestPlaces.Repository, "data", "demo", "skerrin", "plan.yaml"))).Plan;

    [Fact]
    public void The_net_loft_is_fed_over_one_cable_and_its_cell_holds_up_the_radio_alone()
    {
        SupplyResult result = Of("net-loft");

        Assert.DoesNotContain(result.Findings, finding => finding.Verdict is Verdict.Fails or Verdict.Unknown);
        Assert.Equal(Verdict.Tight, Judged("battery-charge-cold"));
        Assert.Equal(Verdict.Ok, Judged("hold-up"));
        Assert.Contains("Held up: radio; not small board.", FindingSentences.Text(Only("hold-up")), StringComparison.Ordinal);

        // The converter loses more than the 24 m of cable.
        Assert.True(result.Mean.Single(point => point.Label == "converter to 5 V").HeatWatts > 10 * result.Mean.Single(point => point.Label.Contains("category 5e", StringComparison.Ordinal)).HeatWatts);

        Finding Only(string code) => Assert.Single(result.Findings, finding => finding.Code == code);

        Verdict Judged(string code) => Only(code).Verdict;
    }

    [Fact]
    public void The_eaves_have_nothing_to_hold_them_up() => Assert.Empty(Of("eaves").Batteries);

    [Fact]
    public void The_hut_lives_on_its_cells_for_more_than_ten_days_and_is_told_that_nothing_charges_them()
    {
        SupplyResult result = Of("hill-hut");

        Assert.True(Assert.Single(result.Batteries).HoldUp.Hours.Low > 240);
        Assert.Contains(result.Findings, finding => finding.Code == "battery-unfed");
    }

    private static SupplyResult Of(string fitOut)
    {
        Site site = Plan.Sites.Single(site => site.Key == "ferry-house");
        return StationSupply.Of(LinkStation.Of(site, site.FitOuts.Single(one => one.Key == fitOut)), Plan, StationCatalogueFile.LoadBuiltIn());
    }
}
