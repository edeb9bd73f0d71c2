using Mastwright.Station.Feed;

namespace Mastwright.Tests.Station.Feed;

public sealed class NoiseCascadeTests
{
    /// <summary>
    /// By hand: amplifier of 20 dB and 1 dB, line of 3 dB, receiver of 6 dB:
    /// F = 1.258925 + (1.995262−1)/100 + (3.981072−1)/(100·0.501187) = 1.328359 → 1.2332 dB.
    /// </summary>
    [Fact]
    public void A_masthead_amplifier_sets_the_noise_of_the_chain() =>
        Assert.Equal(1.2332, NoiseCascade.NoiseFigureDb([new(20, 1), new(-3, 3), new(0, 6)]), 1e-4);

    /// <summary>By hand, the same amplifier at the radio's end: F = 1.995262 + 0.258925/0.501187 + 2.981072/(0.501187·100) = 2.571366 → 4.1016 dB.</summary>
    [Fact]
    public void The_same_amplifier_behind_the_line_helps_less() =>
        Assert.Equal(4.1016, NoiseCascade.NoiseFigureDb([new(-3, 3), new(20, 1), new(0, 6)]), 1e-4);

    [Fact]
    public void A_passive_loss_adds_its_decibels_to_what_follows() =>
        Gen.Select(Gen.Double[0, 20], Gen.Double[0, 15]).Sample((lossDb, figureDb) =>
            Math.Abs(NoiseCascade.NoiseFigureDb([new(-lossDb, lossDb), new(0, figureDb)]) - lossDb - figureDb) < 1e-9);

    [Fact]
    public void More_loss_before_a_receiver_never_lowers_the_figure() =>
        Gen.Select(Gen.Double[0, 10], Gen.Double[0, 5], Gen.Double[0, 30], Gen.Double[0, 10]).Sample((lossDb, moreDb, gainDb, figureDb) =>
            NoiseCascade.NoiseFigureDb([new(-lossDb - moreDb, lossDb + moreDb), new(gainDb, 1), new(0, figureDb)])
                >= NoiseCascade.NoiseFigureDb([new(-lossDb, lossDb), new(gainDb, 1), new(0, figureDb)]) - 1e-12);
}
