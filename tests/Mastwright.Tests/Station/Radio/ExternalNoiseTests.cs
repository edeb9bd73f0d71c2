using Mastwright.Station.Radio;

namespace Mastwright.Tests.Station.Radio;

public sealed class ExternalNoiseTests
{
    /// <summary>Rec. ITU-R P.372, constants of man-made noise (city 76.8/27.7, residential 72.5/27.7, rural 67.2/27.7, quiet rural 53.6/28.6, from memory), by hand at 100 MHz: c − 2·d, and at 10 MHz: c − d.</summary>
    [Theory]
    [InlineData(NoiseEnvironment.City, 100e6, 21.4)]
    [InlineData(NoiseEnvironment.Residential, 100e6, 17.1)]
    [InlineData(NoiseEnvironment.Rural, 100e6, 11.8)]
    [InlineData(NoiseEnvironment.QuietRural, 10e6, 25.0)]
    public void Man_made_noise_follows_the_recommendation_inside_its_range(NoiseEnvironment surroundings, double frequencyHz, double db) =>
        Assert.Equal(db, ExternalNoise.ManMadeFigureDb(surroundings, frequencyHz)!.Value, 1e-9);

    [Fact]
    public void The_quiet_rural_curve_ends_at_30_MHz() => Assert.Null(ExternalNoise.ManMadeFigureDb(NoiseEnvironment.QuietRural, 31e6));

    [Theory]
    [InlineData(0.2e6)]
    [InlineData(433e6)]
    [InlineData(868e6)]
    public void Outside_its_range_it_gives_nothing(double frequencyHz) =>
        Assert.Null(ExternalNoise.ManMadeFigureDb(NoiseEnvironment.Residential, frequencyHz));

    /// <summary>By hand: 6 dB of receiver and 6 dB above kT0B: 3.981 + 3.981 − 1 = 6.962, 8.427 dB; an antenna at 290 K (0 dB) changes nothing.</summary>
    [Fact]
    public void Noise_from_outside_adds_in_power()
    {
        Assert.Equal(8.427, ExternalNoise.CombinedFigureDb(6, 6), 0.001);
        Assert.Equal(6, ExternalNoise.CombinedFigureDb(6, 0), 1e-12);
    }
}
