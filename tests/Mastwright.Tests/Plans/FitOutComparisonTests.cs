using CsCheck;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;

namespace Mastwright.Tests.Plans;

/// <summary>Which of several fit-outs is ahead, and how that is said.</summary>
public sealed class FitOutComparisonTests
{
    private static readonly Site Site = new()
    {
        Key = "one",
        Name = "One",
        Position = new(new(46.4, -18.7), 0),
        FitOuts = [],
    };

    [Fact]
    public void The_one_whose_range_lies_beyond_the_others_is_better()
    {
        ComparedMeasure less = Measure(BetterWhen.Less, Estimate.Of(1, 2, 3), Estimate.Of(4, 5, 6), Estimate.Of(7, 8, 9));
        Assert.Equal([0], less.Ahead);
        Assert.Equal([2], (less with { Better = BetterWhen.More }).Ahead);
        Assert.Empty((less with { Better = BetterWhen.Neither }).Ahead);
        Assert.Equal([0, 1], Measure(BetterWhen.Less, Estimate.Of(1, 2, 4.5), Estimate.Of(4, 5, 6), Estimate.Of(7, 8, 9)).Ahead);
        Assert.Empty(Measure(BetterWhen.Less, Estimate.Of(1, 2, 5), Estimate.Of(4, 5, 6)).Ahead);
        Assert.Empty(Measure(BetterWhen.Less, Estimate.Exactly(1), null).Ahead);
    }

    [Fact]
    public void The_words_say_who_is_better_what_is_not_known_and_what_is_above_its_limit()
    {
        Assert.Equal("Lost in the feed: a is better: a 1.0…3.0 dB, b 4.0…6.0 dB; not known of c.", Sentence(Measure(BetterWhen.Less, Estimate.Of(1, 2, 3), Estimate.Of(4, 5, 6), null)));
        Assert.Equal("Lost in the feed: a and b are better: a 1.0 dB, b 1.0 dB, c 2.0 dB.", Sentence(Measure(BetterWhen.Less, Estimate.Exactly(1), Estimate.Exactly(1), Estimate.Exactly(2))));
        Assert.Equal("Lost in the feed: no clear difference: a 1.0 dB, b 1.0 dB.", Sentence(Measure(BetterWhen.Less, Estimate.Exactly(1), Estimate.Exactly(1))));
        Assert.Equal("Lost in the feed: not known of any.", Sentence(Measure(BetterWhen.Less, null, null)));
        ComparedMeasure dew = new("dew-hours", "dew in the box a year", "h", BetterWhen.Less, [new(Estimate.Exactly(10)), new(null, null, "no box described")]);
        Assert.Equal("Dew in the box a year: a 10 h; not known of b (no box described).", Sentence(dew));
        Assert.Equal("Dew in the box a year: not known of a (no box described).", Sentence(dew with { Values = [dew.Values[1]] }));
        ComparedMeasure power = new("radiated-power", "radiated power", "dBm", BetterWhen.Neither, [new(Estimate.Exactly(30), 27), new(Estimate.Exactly(20), 27)]);
        Assert.Equal("Radiated power: a 30.0 of 27 dBm, b 20.0 of 27 dBm; above the limit: a.", Sentence(power));
    }

    [Fact]
    public void Who_is_ahead_does_not_hang_on_the_order() =>
        Gen.Select(Gen.Double[0, 10], Gen.Double[0, 10], Gen.Double[0, 10], Gen.Double[0, 2]).Sample((one, two, three, range) =>
        {
            Estimate[] values = [Estimate.PlusMinus(one, range), Estimate.PlusMinus(two, range), Estimate.PlusMinus(three, range)];
            int[] ahead = [.. Measure(BetterWhen.More, values[0], values[1], values[2]).Ahead.Order()];
            int[] turned = [.. Measure(BetterWhen.More, values[2], values[1], values[0]).Ahead.Select(i => 2 - i).Order()];
            Assert.Equal(ahead, turned);
        });

    private static ComparedMeasure Measure(BetterWhen better, params Estimate?[] values) =>
        new("feed-loss", "lost in the feed", "dB", better, [.. values.Select(value => new ComparedValue(value))]);

    private static string Sentence(ComparedMeasure measure) => ComparisonSentences.Of(new(
        Site, [.. measure.Values.Select((_, i) => new ComparedFitOut(FitOut("abc"[i].ToString()), false, null!, []))], [measure])).Single();

    private static FitOut FitOut(string key) => new() { Key = key, Name = key, Antenna = new() { Height = new(Estimate.Exactly(5), HeightAbove.Ground) } };
}
