using Mastwright.Propagation;

namespace Mastwright.Tests.Propagation;

public sealed class TerminalClutterTests
{
    /// <summary>Test figures published with the height-gain terminal correction model of Rec. ITU-R P.2108-1 section 3.1, given to 0.1 dB.</summary>
    [Theory]
    [InlineData(1.5, 2, 27, 10, TerminalSurroundings.Open, 16.0)]
    [InlineData(0.9, 2.3, 30, 10, TerminalSurroundings.Open, 13.7)]
    [InlineData(1.5, 2, 27, 10, TerminalSurroundings.Suburban, 20.5)]
    [InlineData(1.5, 2.5, 25, 10, TerminalSurroundings.Suburban, 20.2)]
    [InlineData(0.03, 2.1, 24.5, 9.8, TerminalSurroundings.Suburban, 5.7)]
    [InlineData(1.5, 2, 27, 15, TerminalSurroundings.Urban, 24.5)]
    [InlineData(1.5, 2, 27, 20, TerminalSurroundings.DenseUrban, 27.1)]
    [InlineData(3, 3, 15, 15, TerminalSurroundings.DenseUrban, 29.0)]
    [InlineData(1.7, 30, 24.5, 9.8, TerminalSurroundings.Suburban, 0)]
    public void Loss_is_as_published(double gigahertz, double height, double street, double cover, TerminalSurroundings surroundings, double decibels) =>
        Assert.Equal(decibels, TerminalClutter.LossDb(gigahertz * 1e9, height, surroundings, cover, street), 0.051);

    /// <summary>Worked out from the printed equations, street 27 m.</summary>
    [Theory]
    [InlineData(TerminalSurroundings.Suburban, 1.5, 18.60)]
    [InlineData(TerminalSurroundings.Suburban, 8, 7.42)]
    [InlineData(TerminalSurroundings.Woodland, 3, 21.46)]
    [InlineData(TerminalSurroundings.DenseUrban, 5, 23.27)]
    [InlineData(TerminalSurroundings.Open, 3, 11.20)]
    public void Loss_at_868_MHz_with_default_heights(TerminalSurroundings surroundings, double height, double decibels) =>
        Assert.Equal(decibels, TerminalClutter.LossDb(868e6, height, surroundings), 0.0051);

    [Theory]
    [InlineData(0.02e9, 2, 10, 27)]
    [InlineData(4e9, 2, 10, 27)]
    [InlineData(1e9, 0, 10, 27)]
    [InlineData(1e9, 2, -1, 27)]
    [InlineData(1e9, 2, 10, 0)]
    public void What_the_model_does_not_take_is_refused(double hertz, double height, double cover, double street) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => TerminalClutter.LossDb(hertz, height, TerminalSurroundings.Urban, cover, street));

    [Fact]
    public void Loss_never_rises_with_the_antenna() =>
        Gen.Select(Gen.Int[0, 5], Gen.Double[0.5, 25], Gen.Double[0, 5]).Sample((kind, height, rise) =>
            TerminalClutter.LossDb(868e6, height + rise, (TerminalSurroundings)kind) <= TerminalClutter.LossDb(868e6, height, (TerminalSurroundings)kind) + 1e-12);

    [Fact]
    public void Cover_of_the_profile_and_terminal_clutter_are_refused_together()
    {
        PathProfile flat = TestProfiles.Flat(1000, 41);
        PathProfile covered = PathProfile.FromSamples(
            flat.DistancesMetres, flat.HeightsMetres, [.. Enumerable.Repeat(15.0, 41)], flat.Zones);
        Assert.Throws<ArgumentException>(() => TerminalClutter.LossDb(covered, PathEnd.Receiver, 868e6, 3, TerminalSurroundings.Urban));

        PathProfile stripped = TerminalClutter.WithoutCover(covered, PathEnd.Receiver);
        Assert.Equal(
            TerminalClutter.LossDb(868e6, 3, TerminalSurroundings.Urban),
            TerminalClutter.LossDb(stripped, PathEnd.Receiver, 868e6, 3, TerminalSurroundings.Urban));
        Assert.True(TerminalClutter.HasCover(stripped, PathEnd.Transmitter));
        Assert.False(TerminalClutter.HasCover(stripped, PathEnd.Receiver));
        Assert.Equal(5, stripped.CoverMetres.ToArray().Count(cover => cover == 0));
    }
}
