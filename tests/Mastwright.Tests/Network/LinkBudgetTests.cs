using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Quantities;

namespace Mastwright.Tests.Network;

public sealed class LinkBudgetTests
{
    private static readonly LinkWanted Wanted = new()
    {
        MarginDb = 10,
        ModelErrorDb = 8,
        ModelErrorSource = "test",
        LocationDb = 6,
        LocationSource = "test",
        FadingDb = 3,
        FadingSource = "test",
    };

    private static LinkEnd End(string name, Estimate power, Estimate gain, Estimate required) => new()
    {
        Subject = name,
        Name = name,
        PowerIntoAntennaDbm = power,
        TransmitLines = [new("conducted", "Radio", power.Median + 2, "test"), new("feed", "Feed", -2, "test")],
        GainDbi = gain,
        RequiredDbm = required,
    };

    private static PathLossRange Path(Estimate loss) => new(loss, [new("free-space", "Free space", -loss.Median, "test")]);

    private static readonly LinkEnd Sender = End("a", Estimate.Exactly(12), Estimate.Exactly(8), Estimate.Exactly(-132));
    private static readonly LinkEnd Receiver = End("b", Estimate.Exactly(12), Estimate.Exactly(2), Estimate.Exactly(-132));

    [Fact]
    public void A_worked_example_in_free_space_comes_out()
    {
        // 10 km at 868 MHz: 32.4 + 20 log 868 + 20 log 10 = 111.17 dB (ITU-R P.525-4 eq. (4)); by hand 12 + 8 − 111.17 + 2 + 132 = 42.83 dB.
        double loss = 32.4 + (20 * Math.Log10(868)) + 20;
        LinkDirection direction = LinkBudget.Direction(Sender, Receiver, Path(Estimate.Exactly(loss)), Estimate.Exactly(0), [], Wanted);
        Assert.Equal(42.83, direction.MarginDb!.Value.Median, 0.005);
        Assert.Equal(-89.17, direction.LevelDbm!.Value.Median, 0.005);
        Assert.Equal(Verdict.Ok, direction.Verdict);
    }

    [Fact]
    public void Spreads_add_in_power_and_their_lines_sum_to_the_total()
    {
        LinkDirection direction = LinkBudget.Direction(Sender, Receiver, Path(Estimate.Exactly(120)), Estimate.Exactly(0), [], Wanted);
        Assert.Equal(10, direction.Spread!.Unknown.Total, 1e-12);
        Assert.Equal([8.0, 2.0], direction.Spread.Unknown.Lines.Select(line => line.Value));
        Assert.Equal(3, direction.Spread.Fading.Total, 1e-12);
    }

    [Theory]
    [InlineData(-0.1, Verdict.Fails)]
    [InlineData(0, Verdict.Tight)]
    [InlineData(9.9, Verdict.Tight)]
    [InlineData(10, Verdict.Ok)]
    public void The_verdict_follows_the_margin(double marginDb, Verdict verdict) => Assert.Equal(verdict, LinkBudget.Judge(marginDb, 10));

    [Fact]
    public void A_range_that_crosses_the_limit_makes_the_verdict_unknown()
    {
        LinkEnd vague = Receiver with { GainDbi = Estimate.Between(0, 6) };
        LinkDirection direction = LinkBudget.Direction(Sender, vague, Path(Estimate.Exactly(154)), Estimate.Exactly(0), [], Wanted);
        Assert.Equal((-2.0, 1.0, 4.0), (direction.MarginDb!.Value.Low, direction.MarginDb.Value.Median, direction.MarginDb.Value.High));
        Assert.Equal(Verdict.Unknown, direction.Verdict);
    }

    [Fact]
    public void A_missing_input_makes_the_verdict_unknown_and_is_named()
    {
        LinkEnd silent = Sender with { PowerIntoAntennaDbm = null, MissingToSend = ["neighbours/a/power"] };
        LinkDirection direction = LinkBudget.Direction(silent, Receiver, Path(Estimate.Exactly(120)), Estimate.Exactly(0), [], Wanted);
        Assert.Equal(Verdict.Unknown, direction.Verdict);
        Assert.Equal(["neighbours/a/power"], direction.Missing);
        Assert.Null(direction.MarginDb);
    }

    [Fact]
    public void Polarisation_costs_its_own_line()
    {
        LinkDirection direction = LinkBudget.Direction(Sender, Receiver, Path(Estimate.Exactly(120)), Estimate.Exactly(20), [], Wanted);
        Assert.Contains(direction.Budget!.Lines, line => line.Code == "polarisation" && line.Value == -20);
        Assert.Equal(14, direction.MarginDb!.Value.Median, 1e-12);
    }

    /// <summary>
    /// Margin 2 to 56 dB with a best guess of 6.3 dB, counted as uniform, and 8.1 dB that is not known besides: the normal approximation
    /// stands on the middle, 29 dB, with √(8.1² + 54²/12) = 17.6 dB: 95 %; averaging over the range gives 96 %.
    /// </summary>
    [Fact]
    public void The_odds_stand_on_the_middle_of_a_lopsided_range()
    {
        LinkWanted wanted = Wanted with { ModelErrorDb = 8.1, LocationDb = 0 };
        LinkDirection direction = LinkBudget.Direction(Sender, Receiver, Path(Estimate.Of(98, 147.7, 152)), Estimate.Exactly(0), [], wanted);
        Assert.Equal(6.3, direction.MarginDb!.Value.Median, 1e-9);
        double averaged = Enumerable.Range(0, 1001).Average(i => Mastwright.Quantities.NormalDistribution.Cumulative((2 + (0.054 * i)) / 8.1));
        Assert.Equal(averaged, direction.Odds!.Value.Works, 0.015);
        Assert.Contains("places and heights", direction.Vaguest, StringComparison.Ordinal);
    }
}
