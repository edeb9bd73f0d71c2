using System.Globalization;
using Mastwright.Evidence;

namespace Mastwright.Tests.Evidence;

public sealed class SignalPowerTests
{
    [Theory]
    [InlineData(-120, 0, -123.0102999566398)] // signal and noise alike: half of the level's power, 10 log10 2 below it
    [InlineData(-120, 10, -120.41392685158225)] // 10 of 11 parts
    [InlineData(-120, -10, -130.41392685158225)] // 1 of 11 parts
    public void Parts_of_a_sum_of_two_powers_come_out(double levelDbm, double snrDb, double signalDbm) =>
        Assert.Equal(signalDbm, SignalPower.Dbm(levelDbm, snrDb), 1e-9);

    [Fact]
    public void Signal_and_noise_together_are_the_level_again() =>
        Gen.Select(Gen.Double[-150, 10], Gen.Double[-30, 30]).Sample((level, snr) =>
        {
            double signal = SignalPower.Dbm(level, snr);
            double sum = 10 * Math.Log10(Math.Pow(10, signal / 10) + Math.Pow(10, (signal - snr) / 10));
            return Math.Abs(sum - level) < 1e-9;
        });

    [Fact]
    public void A_ratio_at_saturation_tells_nothing_of_the_noise()
    {
        Assert.Null(SignalPower.NoiseFloorDbm(-90, 5));
        Assert.Equal(-124, SignalPower.NoiseFloorDbm(-120, 4)!.Value, 1e-12);
        Assert.Equal(-97, SignalPower.NoiseFloorDbm(-90, 7, 8)!.Value, 1e-12);
    }

    [Fact]
    public void A_level_of_an_unknown_sender_is_never_used()
    {
        ReceptionRecord record = new() { TimeMicroseconds = 0, TimeResolutionMicroseconds = 1, Receiver = "a", LastSender = "b", LevelDbm = -120, SnrDb = 0 };
        Assert.Equal(-123.0102999566398, record.SignalPowerDbm!.Value, 1e-9);
        Assert.Equal(-123.0102999566398, record.NoiseFloorDbm()!.Value, 1e-9);
        Assert.Null((record with { LastSender = null }).SignalPowerDbm);
        Assert.Null((record with { SnrDb = null }).SignalPowerDbm);
        Assert.Equal(-120, (record with { SnrDb = null, LevelIsSignalPower = true }).SignalPowerDbm);
        Assert.Throws<ArgumentOutOfRangeException>(() => record with { LevelDbm = double.NaN });
    }

    /// <summary>
    /// 600 frames through a step attenuator: mclab-hbrs/lora-bonn (Hochschule Bonn-Rhein-Sieg, dl-de/by-2-0), rssi_vs_attenuation.csv.
    /// The expected powers are ten decibels apart; the receiver's own constant offset is part of the data.
    /// </summary>
    [Fact]
    public void The_measured_signal_power_follows_the_attenuator_where_the_level_no_longer_does()
    {
        ILookup<double, (double Level, double Snr)> frames = File.ReadLines(TestPlaces.Reference("measured", "conducted-level", "rssi_vs_attenuation.csv"))
            .Skip(1)
            .Select(line => line.Split(','))
            .ToLookup(cells => Number(cells[1]), cells => (Number(cells[2]), Number(cells[3])));
        Assert.Equal(600, frames.Sum(step => step.Count()));

        double[] offsetsDb = [.. frames.Select(step => step.Average(frame => SignalPower.Dbm(frame.Level, frame.Snr)) - step.Key)];
        // The README beside the data: constant offset of −8 to −10 dB over fifty decibels.
        Assert.All(offsetsDb, offset => Assert.InRange(offset, -10, -8));
        // The level alone falls by 4.1 dB where the attenuator takes the last 10; the signal power by 9.7.
        Assert.InRange(frames[-111].Average(frame => frame.Level) - frames[-121].Average(frame => frame.Level), 3, 5);
        Assert.InRange(Mean(frames[-111]) - Mean(frames[-121]), 9, 11);

        // One receiver, one noise: the floors told by frames 10 dB apart agree.
        double[] floors = [.. new[] { -111.0, -121 }.Select(step => frames[step].Select(frame =>
            SignalPower.NoiseFloorDbm(SignalPower.Dbm(frame.Level, frame.Snr), frame.Snr)).OfType<double>().Average())];
        Assert.Equal(floors[0], floors[1], 1.0);

        // Above saturation the same formula would have the noise rise with the signal: 20 dB at the second step.
        Assert.All(frames[-91], frame => Assert.Null(SignalPower.NoiseFloorDbm(SignalPower.Dbm(frame.Level, frame.Snr), frame.Snr)));
    }

    private static double Mean(IEnumerable<(double Level, double Snr)> frames) => frames.Average(frame => SignalPower.Dbm(frame.Level, frame.Snr));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
