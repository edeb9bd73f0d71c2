using Mastwright.Findings;
using Mastwright.Ground;
using Mastwright.Plans;
using Mastwright.Station.BoxClimate;
using Mastwright.Storage.Catalogue;
using Mastwright.Storage.Plans;
using Mastwright.Storage.Tests.Plans;
using Mastwright.Tests;

namespace Mastwright.Storage.Tests.Catalogue;

/// <summary>The demo's fit-outs as elements: what a diagram and a page make of a plan.</summary>
public sealed class DemoElementsTests
{
    private static readonly Plan Demo = PlanFileTests.Good(PlanFile.Read(Path.Combine(TestPlaces.Repository, "data", "demo", "skerrin", "plan.yaml"))).Plan;

    [Fact]
    public void The_box_at_the_net_loft_is_drawn_from_the_antenna_down_to_the_office()
    {
        StationElement[] drawn = [.. Elements("net-loft").Where(element => element.Place != ElementPlace.Beside)];
        Assert.Equal(
            [
                "antenna", "feed/3", "feed/2", "feed/1", "radio", "supply/6/branches/radio/2", "supply/6/branches/radio/1", "supply/6/branches/board/1", "supply/6",
                "supply/5", "supply/4", "supply/3", "supply/2", "supply/1",
            ],
            drawn.Select(element => element.Key));
        Assert.Equal(ElementPlace.Radio, Of("net-loft", "supply/4").Place);
        Assert.Equal(ElementPlace.Run, Of("net-loft", "supply/3").Place);
        Assert.Equal(ElementPlace.Source, Of("net-loft", "supply/2").Place);
        Assert.Equal(1, Of("net-loft", "supply/6/branches/board/1").Lane);
        Assert.Equal("24 m, cat-5e", Of("net-loft", "supply/3").Note);
    }

    [Theory, InlineData("net-loft"), InlineData("eaves"), InlineData("hill-hut")]
    public void Every_finding_of_a_fit_out_belongs_to_one_element(string fitOut)
    {
        (PlanReport report, FitOutReport one) = Report(fitOut);
        Finding[] own =
        [
            .. report.AllFindings.Distinct().Where(finding => finding.Subject.StartsWith(one.Station.FitOutPath, StringComparison.Ordinal)
                || finding.Subject.Split(' ').Contains(one.Station.Subject, StringComparer.Ordinal)
                || finding.Subject.StartsWith("sites/ferry-house/hazards", StringComparison.Ordinal)),
        ];
        Finding[] placed = [.. StationElements.Of(report, one).SelectMany(element => element.Findings)];
        Assert.Equal(placed.Length, placed.Distinct().Count());
        Assert.Empty(own.Except(placed));
        Assert.DoesNotContain(placed, finding => finding.Subject.StartsWith("sites/creamery", StringComparison.Ordinal));
    }

    [Fact]
    public void A_judgement_stands_at_the_part_that_it_is_about()
    {
        Assert.Contains(Of("net-loft", "supply/3").Findings, finding => finding.Code == "supply-cable-heat");
        Assert.Contains(Of("net-loft", "supply/6/branches/radio/1").Findings, finding => finding.Code == "hold-up");
        Assert.Contains(Of("net-loft", "radio").Findings, finding => finding.Code == "radiated-power");
        Assert.Contains(Of("net-loft", "antenna").Findings, finding => finding.Code == "feed-loss");
        Assert.Contains(Of("net-loft", "people").Findings, finding => finding.Code == "exposure-public");
        Assert.Contains(Of("net-loft", StationElements.Whole).Findings, finding => finding.Code == "link-unknown");
        Assert.Contains(Of("net-loft", "box").Findings, finding => finding.Code == "box-part-hot");
        Assert.Contains(Of("hill-hut", "solar").Findings, finding => finding.Code.StartsWith("solar", StringComparison.Ordinal));
    }

    [Fact]
    public void Ledgers_come_with_the_element()
    {
        Assert.Contains(Of("net-loft", "supply/6/branches/radio/1").Ledgers, ledger => ledger.Title.StartsWith("hold-up", StringComparison.Ordinal));
        Assert.Contains(Of("net-loft", "feed/3").Ledgers, ledger => ledger.Title == "power into the antenna");
        Assert.Contains(Of("net-loft", "supply/6/branches/board/1").Ledgers, ledger => ledger.Title.StartsWith("voltage at small board", StringComparison.Ordinal));
        Assert.Contains(Of("net-loft", "earthing").Ledgers, ledger => ledger.Unit == "Ω");
        Assert.DoesNotContain(Elements("net-loft").Where(element => element.Place == ElementPlace.Beside && element.Kind is ElementKind.Box or ElementKind.Mast), element => element.Ledgers.IsEmpty);
    }

    [Fact]
    public void A_made_hottest_day_comes_up_to_the_plan_s_hottest_air_and_no_further_than_the_hottest_hour()
    {
        BoxCourse course = StationBoxCourse.Of(Report("net-loft").FitOut)!;
        Assert.Equal(27, course.Hot.Points.Max(point => point.OutsideCelsius), 0.1);
        Assert.Equal(-4, course.Cold.Points.Min(point => point.OutsideCelsius), 0.1);
        BoxResult box = Report("net-loft").FitOut.Box;

        // Full sun on the broadest side is more than the sun of any hour of the day: the finding is on the warm side of the picture, by a few kelvins at most.
        Assert.InRange(course.Hot.Points.Max(point => point.InsideCelsius), box.InsideCelsius!.Value.High - 5, box.InsideCelsius.Value.High + 1);
        Assert.Equal(12, course.Months.Length);
        Assert.Null(StationBoxCourse.Of(Report("eaves").FitOut));
    }

    private static StationElement[] Elements(string fitOut)
    {
        (PlanReport report, FitOutReport one) = Report(fitOut);
        return [.. StationElements.Of(report, one)];
    }

    private static StationElement Of(string fitOut, string key) => Elements(fitOut).Single(element => element.Key == key);

    private static (PlanReport Plan, FitOutReport FitOut) Report(string fitOut)
    {
        // The links are of no matter here: over ground that nobody knows each is unknown at once.
        Assessment assessment = new(Demo, StationCatalogueFile.LoadBuiltIn(), (_, _) => GroundMosaic.Empty);
        PlanReport report = assessment.Run(new Dictionary<string, string>(StringComparer.Ordinal) { ["ferry-house"] = fitOut }, "ferry-house");
        return (report, report.FitOuts.Single(one => one.Station.Key == "ferry-house"));
    }
}
