using Mastwright.Findings;

namespace Mastwright.Tests.Findings;

public sealed class LedgerTests
{
    [Fact]
    public void The_total_is_the_sum_of_the_lines() =>
        Gen.Double[-1000, 1000].Array[0, 40].Sample(values =>
        {
            Ledger ledger = new("test", "dB", [.. values.Select(value => new LedgerLine("line", "Line", value, "test"))]);
            return Math.Abs(ledger.Total - values.Sum()) <= 1e-9;
        });

    [Fact]
    public void A_total_that_the_lines_do_not_make_is_refused() =>
        Assert.Throws<InvalidOperationException>(() => Ledger.SummingTo(1 + 2e-9, "test", "dB", [new("line", "Line", 1, "test")]));
}
