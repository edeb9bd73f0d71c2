using Mastwright.Network;

namespace Mastwright.Tests.Network;

public sealed class LinkOddsTests
{
    /// <summary>
    /// At zero margin the answer is closed: P(U + F ≥ 0 | U ≥ 0) = 1/2 + asin(ρ)/π with ρ = σU / √(σU² + σF²)
    /// (orthant probability of two normal variables, W. F. Sheppard, 1899; Abramowitz and Stegun 26.3.19).
    /// </summary>
    [Theory]
    [InlineData(8, 3)]
    [InlineData(8, 8)]
    [InlineData(2, 6)]
    public void At_zero_margin_the_closed_form_holds(double unknownDb, double fadingDb)
    {
        LinkOdds odds = LinkOdds.From(0, unknownDb, fadingDb);
        double correlation = unknownDb / Math.Sqrt((unknownDb * unknownDb) + (fadingDb * fadingDb));
        Assert.Equal(0.5, odds.Works, 1e-14);
        Assert.Equal(0.5 + (Math.Asin(correlation) / Math.PI), odds.DeliversIfItWorks, 1e-9);
    }

    [Fact]
    public void A_margin_of_one_standard_deviation_works_five_times_in_six() =>
        Assert.Equal(0.841344746068543, LinkOdds.From(8, 8, 3).Works, 1e-14);

    [Fact]
    public void Without_anything_unknown_delivery_is_the_fading_alone()
    {
        Assert.Equal(new LinkOdds(1, 0.977249868051821), LinkOdds.From(6, 0, 3) with { DeliversIfItWorks = 0.977249868051821 });
        Assert.Equal(0.977249868051821, LinkOdds.From(6, 0, 3).DeliversIfItWorks, 1e-14);
        Assert.Equal(0, LinkOdds.From(-1, 0, 3).Works);
    }

    /// <summary>A margin that grows by its last bits may lose the last bits of a probability.</summary>
    [Fact]
    public void More_margin_never_makes_a_link_less_likely_to_work_or_to_deliver() =>
        Gen.Select(Gen.Double[-40, 40], Gen.Double[0, 10], Gen.Double[0.5, 12], Gen.Double[0, 10]).Sample((margin, more, unknown, fading) =>
        {
            LinkOdds poor = LinkOdds.From(margin, unknown, fading);
            LinkOdds rich = LinkOdds.From(margin + more, unknown, fading);
            return rich.Works >= poor.Works - 1e-15 && rich.DeliversIfItWorks >= poor.DeliversIfItWorks - 1e-7;
        });

    [Theory]
    [InlineData(1, "over 99 %")]
    [InlineData(0.9951, "over 99 %")]
    [InlineData(0.8413, "84 %")]
    [InlineData(0, "under 1 %")]
    public void Words_never_claim_certainty(double probability, string words) => Assert.Equal(words, LinkOdds.Percent(probability));
}
