using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Supply;
using static Mastwright.Tests.Station.Supply.SupplySamples;

namespace Mastwright.Tests.Station.Supply;

public sealed class SupplySentencesTests
{
    [Fact]
    public void Every_finding_of_supply_and_hold_up_has_its_sentences_filled()
    {
        ImmutableArray<Finding> findings =
        [
            .. Compute(OfClass("class-2"), Data("awg-24", 30), new SupplyConverter("p/supply/3", 5) { RatedWatts = 3 }, Battery, new SupplyFuse("p/supply/5", 1), Node).Findings,
            .. Compute(Injector(24, 30), Data("clad", 30), Steady(5, Estimate.Between(23.9, 24))).Findings,
            .. Compute(Injector(24, 30), Data("awg-24", 100), Steady(30)).Findings,
            .. Compute(Adapter(24, 1000), Cores("thread", 10), Steady(5)).Findings,
            .. Compute(Battery, new SupplyLoad("p/supply/5", true, "node")).Findings,
            .. Compute(Adapter(24, 10), Cores("none", 10), Steady(5)).Findings,
            .. Compute(Adapter(24, 10), new SupplyLoad("p/supply/2", false, "")).Findings,
        ];

        Assert.Equal(
            [
                "battery-charge-cold", "battery-rate", "battery-recharge", "battery-temperature", "battery-unfed", "converter-headroom", "converter-step", "hold-up", "hold-up-cut-off",
                "supply-cable-clad", "supply-cable-current", "supply-cable-heat", "supply-class", "supply-fuse", "supply-fuse-missing", "supply-headroom", "supply-input-unknown", "supply-load-unknown",
                "supply-overvoltage", "supply-passive", "supply-row-unknown", "supply-voltage", "supply-will-not-start",
            ],
            findings.Select(finding => finding.Code).Distinct().Order(StringComparer.Ordinal));
        Assert.All(findings, finding =>
        {
            Assert.DoesNotContain('{', FindingSentences.Text(finding));
            Assert.DoesNotContain('{', FindingSentences.Advice(finding));
            Assert.True(finding.Verdict is Verdict.Unknown || finding.Source.Length > 0, finding.Code);
        });
    }
}
