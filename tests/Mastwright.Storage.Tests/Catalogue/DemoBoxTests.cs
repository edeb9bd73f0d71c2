using Mastwright.Findings;
using Mastwright.Plans;
using Mastwright.Station.BoxClimate;
using Mastwright.Station.Supply;
using Mastwright.Storage.Catalogue;
using Mastwright.Storage.Plans;
using Mastwright.Storage.Tests.Plans;
using Mastwright.Tests;

namespace Mastwright.Storage.Tests.Catalogue;

/// <summary>The box of the demo's net loft: worked out of its plan, its supply's heat and the rows that ship.</summary>
public sealed class DemoBoxTests
{
    private static readonly Plan Plan = PlanFileTests.Good(PlanFile.Read(Path.Combine(TestPlaces.Repository, "data", "demo", "skerrin", "plan.yaml"))).Plan;

    [Fact]
    public void The_box_gets_as_warm_as_the_guide_says_and_its_battery_lives_at_those_temperatures()
    {
        (SupplyResult supply, BoxResult box) = Of("net-loft");

        Assert.Equal(49, box.InsideCelsius!.Value.High, 0.6);
        Assert.Equal(-10, box.InsideCelsius.Value.Low, 0.6);
        Assert.Equal(box.HeatWatts!.Value.Median, box.Examination.Ledgers.Single(ledger => ledger.Unit == "W").Total, 1e-9);
        Assert.True(box.HeatWatts.Value.Median < supply.MeanWatts);
        Assert.Equal(box.InsideCelsius, supply.Batteries.Single().Battery.Celsius);
        Assert.DoesNotContain(supply.Assumptions, assumption => assumption.Code == "box-temperature");
        Assert.Equal(Verdict.Ok, box.Examination.Findings.First(finding => finding.Code == "box-ingress").Verdict);
        Assert.Equal(Verdict.Tight, box.Examination.Findings.Single(finding => finding.Code == "box-dew-night").Verdict);
        Assert.Contains("It would be 45 °C in the shade", FindingSentences.Text(box.Examination.Findings.First(finding => finding.Code == "box-part-hot")), StringComparison.Ordinal);
    }

    [Fact]
    public void The_months_means_tell_the_hours_with_dew_and_say_so()
    {
        (SupplyResult _, BoxResult box) = Of("net-loft");
        Assert.InRange(box.DewHours!.Value.Median, 1, 8759);
        Assert.Equal(Verdict.Tight, box.Examination.Findings.Single(finding => finding.Code == "box-dew-year").Verdict);
        Assert.Contains("a made year with the months' means", FindingSentences.Text(box.Examination.Findings.Single(finding => finding.Code == "box-dew-year")), StringComparison.Ordinal);
        Assert.Contains(box.Examination.Assumptions, assumption => assumption.Code == "box-made-year");

        // Without the months there is nothing to tell them from, and nothing is made up.
        Site site = Plan.Sites.Single(site => site.Key == "ferry-house") with { Climate = null };
        (SupplyResult _, BoxResult bare) = StationBox.Of(LinkStation.Of(site, site.FitOuts.Single(one => one.Key == "net-loft")), Plan, StationCatalogueFile.LoadBuiltIn());
        Assert.Null(bare.DewHours);
        Assert.Contains("weather or climate", FindingSentences.Text(bare.Examination.Findings.Single(finding => finding.Code == "box-dew-year-unknown")), StringComparison.Ordinal);
    }

    [Fact]
    public void The_months_alone_give_the_air_outside()
    {
        Site site = Plan.Sites.Single(site => site.Key == "ferry-house");
        FitOut fitOut = site.FitOuts.Single(one => one.Key == "net-loft");
        fitOut = fitOut with { Box = fitOut.Box with { OutsideCelsius = null } };
        (SupplyResult _, BoxResult box) = StationBox.Of(LinkStation.Of(site, fitOut), Plan, StationCatalogueFile.LoadBuiltIn());

        // Means of 8 to 17 °C by month, a daily swing of up to 5 K and some kelvins of weather about them.
        Assert.InRange(box.OutsideCelsius!.Value.Low, -3, 7);
        Assert.InRange(box.OutsideCelsius.Value.High, 18, 30);
        Assert.Contains(box.Examination.Assumptions, assumption => assumption.Code == "box-made-outside");
    }

    [Fact]
    public void A_room_that_is_given_stays_as_it_is_given()
    {
        (SupplyResult _, BoxResult box) = Of("eaves");
        Assert.Equal(BoxResult.Nothing, box);
    }

    private static (SupplyResult Supply, BoxResult Box) Of(string fitOut)
    {
        Site site = Plan.Sites.Single(site => site.Key == "ferry-house");
        return StationBox.Of(LinkStation.Of(site, site.FitOuts.Single(one => one.Key == fitOut)), Plan, StationCatalogueFile.LoadBuiltIn());
    }
}
