using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Tests.Drawings;

public sealed class TicksTests
{
    [Theory]
    [InlineData(0, 21.3, 12, "0 2 4 6 8 10 12 14 16 18 20")]
    [InlineData(-7, 31, 5, "0 10 20 30")]
    [InlineData(0, 0.9, 5, "0.0 0.2 0.4 0.6 0.8")]
    [InlineData(-30, 25, 4, "−20 0 20")]
    public void They_are_round_numbers_inside_the_range(double low, double high, int most, string expected)
    {
        Ticks ticks = Ticks.Between(low, high, most);
        Assert.Equal(expected.Replace("0.0", "0", StringComparison.Ordinal), string.Join(' ', ticks.Values.Select(ticks.Text)));
    }

    [Fact]
    public void There_are_never_many_more_than_wanted() =>
        Gen.Select(Gen.Double[-5_000, 5_000], Gen.Double[0.01, 200_000], Gen.Int[2, 15]).Sample((low, span, most) =>
        {
            Ticks ticks = Ticks.Between(low, low + span, most);
            // A tick on the very edge counts as inside, to a millionth of a step.
            double edge = ticks.Step * 1e-6;
            return ticks.Values.Count <= most + 1 && ticks.Values.All(value => value >= low - edge && value <= low + span + edge);
        });
}
