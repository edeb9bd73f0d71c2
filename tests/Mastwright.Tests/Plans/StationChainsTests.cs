using Mastwright.Findings;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Station.Feed;
using Mastwright.Station.Radio;
using Mastwright.Tests.Station.Feed;
using Mastwright.Tests.Station.Radio;

namespace Mastwright.Tests.Plans;

public sealed class StationChainsTests
{
    /// <summary>Rec. ITU-R P.372, residential, constants from memory, by hand at 144 MHz: 72.5 − 27.7·log10 144 = 12.71 dB.</summary>
    [Fact]
    public void Inside_its_range_the_surroundings_give_the_noise_from_outside_at_both_ends()
    {
        LinkReport link = Link(new() { NoiseEnvironment = NoiseEnvironment.Residential }, 144e6, out PlanReport report);

        // 6 dB of receiver and 12.71 dB from outside, added in power: 10·log10(3.981 + 18.66 − 1) = 13.35 dB, 7.35 dB more than the receiver alone.
        double quiet = Link(new() { ExternalNoiseFigureDb = 0 }, 144e6, out _).Out.To.RequiredDbm!.Value.Median;
        Assert.Equal(7.35, link.Out.To.RequiredDbm!.Value.Median - quiet, 0.01);
        Assert.Equal(7.35, link.Back.To.RequiredDbm!.Value.Median - quiet, 0.01);
        Assert.Contains(link.Out.To.RequiredLedger!.Lines, line => line.Source.Contains("P.372, man-made noise, residential", StringComparison.Ordinal));
        Assert.DoesNotContain(report.AllFindings, finding => finding.Code == "external-noise-unknown");
        Assert.DoesNotContain(report.Assumptions, assumption => assumption.Code == "external-noise");
    }

    [Theory]
    [InlineData(868e6, "0.3 to 250 MHz only; at 868 MHz it has to be measured")]
    [InlineData(250.1e6, "at 250.1 MHz")]
    public void Outside_it_the_noise_stays_unknown_and_none_is_counted(double frequencyHz, string why)
    {
        Link(new() { NoiseEnvironment = NoiseEnvironment.City }, frequencyHz, out PlanReport report);

        Finding unknown = Assert.Single(report.AllFindings, finding => finding.Code == "external-noise-unknown");
        Assert.Equal(Verdict.Unknown, unknown.Verdict);
        Assert.Contains(why, FindingSentences.Text(unknown), StringComparison.Ordinal);
        Assert.Contains(report.Assumptions, assumption => assumption.Code == "external-noise");
    }

    [Fact]
    public void Inside_its_range_a_plan_without_surroundings_is_told_that_it_may_give_them()
    {
        Link(new(), 144e6, out PlanReport report);

        Finding unknown = Assert.Single(report.AllFindings, finding => finding.Code == "external-noise-unknown");
        Assert.Contains("air/noise-environment", FindingSentences.Text(unknown), StringComparison.Ordinal);
    }

    [Fact]
    public void A_figure_of_the_plan_wins_over_its_surroundings()
    {
        LinkReport one = Link(new() { NoiseEnvironment = NoiseEnvironment.City, ExternalNoiseFigureDb = 3 }, 144e6, out _);
        LinkReport other = Link(new() { ExternalNoiseFigureDb = 3 }, 144e6, out _);

        Assert.Equal(other.Out.To.RequiredDbm, one.Out.To.RequiredDbm);
    }

    [Fact]
    public void A_line_type_that_nobody_has_is_told_with_the_nearest_and_all_known_ones()
    {
        PlanReport report = FlatPlan.Check(
            FlatPlan.Of(new(), 868e6, new FeedLine("sites/west/fit-outs/pole/feed/1", "rg-231", Estimate.Exactly(10))), FeedChainTests.Catalogue.Overlay(SensitivityTests.Catalogue));

        Finding unknown = Assert.Single(report.AllFindings, finding => finding.Code == "line-type-unknown");
        Assert.Equal("The catalogue has no line type 'rg-231'. Did you mean 'rg-213'?", FindingSentences.Text(unknown));
        Assert.Contains("rg-213", FindingSentences.Advice(unknown), StringComparison.Ordinal);
        Assert.Equal(Verdict.Unknown, Assert.Single(report.Links).Finding.Verdict);
    }

    private static LinkReport Link(AirPlan air, double frequencyHz, out PlanReport report)
    {
        report = FlatPlan.Check(FlatPlan.Of(air, frequencyHz), SensitivityTests.Catalogue);
        return Assert.Single(report.Links);
    }
}
