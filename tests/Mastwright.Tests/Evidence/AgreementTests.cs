using Mastwright.Agreement;
using Mastwright.Findings;

namespace Mastwright.Tests.Evidence;

public sealed class AgreementTests
{
    /// <summary>By hand: differences −2, 0, +5: mean 1, deviation √13; Student at two degrees 4.303 (NIST/SEMATECH e-Handbook 1.3.6.7.2).</summary>
    [Fact]
    public void Bias_and_spread_are_those_of_the_differences()
    {
        AgreementSummary summary = AgreementSummary.Of([Row("a", -100, 0.99, -102), Row("b", -90, 0.99, -90), Row("c", -110, 0.5, -105), Row("d", -80, 0.95, null), Row("e", -140, 0.05, -120)]);
        Assert.Equal(4, summary.Compared);
        AgreementSummary three = AgreementSummary.Of(summary.Rows.Take(3));
        Assert.Equal(1, three.BiasDb, 1e-12);
        Assert.Equal(Math.Sqrt(13), three.SpreadDb, 1e-12);
        Assert.Equal(1 + (4.303 * Math.Sqrt(13.0 / 3)), three.BiasInterval!.Value.High, 2e-3);
        Assert.Equal(["agreement-bias", "agreement-silent", "agreement-unexpected"], summary.Findings("x").Select(finding => finding.Code));
        Assert.Equal("agreement-unknown", AgreementSummary.Of(summary.Rows.Take(1)).Findings("x").Single().Code);
        Assert.All(summary.Findings("x"), finding => Assert.DoesNotContain("{", FindingSentences.Text(finding), StringComparison.Ordinal));
    }

    private static AgreementRow Row(string key, double predicted, double works, double? measured) => new(key, key, predicted, 8, works, measured, WeakOnesLost: false);
}
