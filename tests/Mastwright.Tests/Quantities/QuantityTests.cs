using System.Globalization;
using Mastwright.Quantities;
using Mastwright.Tests.Geodesy;

namespace Mastwright.Tests.Quantities;

/// <summary>From a person's text to numbers and back.</summary>
public sealed class QuantityTests
{
    [Theory]
    [InlineData("15 m", Dimension.Length, 15)]
    [InlineData("15m", Dimension.Length, 15)]
    [InlineData("  15  m ", Dimension.Length, 15)]
    [InlineData("1.2 km", Dimension.Length, 1200)]
    [InlineData("35 cm", Dimension.Length, 0.35)]
    [InlineData("7 mm", Dimension.Length, 0.007)]
    [InlineData("-3 m", Dimension.Length, -3)]
    [InlineData("−3 m", Dimension.Length, -3)]
    [InlineData("+3 m", Dimension.Length, 3)]
    [InlineData("1e3 m", Dimension.Length, 1000)]
    [InlineData("1.5E-1 m", Dimension.Length, 0.15)]
    [InlineData("868.1 MHz", Dimension.Frequency, 868_100_000)]
    [InlineData("125kHz", Dimension.Frequency, 125_000)]
    [InlineData("2.4 GHz", Dimension.Frequency, 2.4e9)]
    [InlineData("50 Hz", Dimension.Frequency, 50)]
    [InlineData("8 dBi", Dimension.Gain, 8)]
    [InlineData("-1.5 dB", Dimension.Ratio, -1.5)]
    [InlineData("14 dBm", Dimension.Power, 14)]
    [InlineData("0 dBW", Dimension.Power, 30)]
    [InlineData("30°", Dimension.Angle, 30)]
    [InlineData("30 deg", Dimension.Angle, 30)]
    [InlineData("25 °C", Dimension.Temperature, 25)]
    [InlineData("-20 C", Dimension.Temperature, -20)]
    [InlineData("400 ms", Dimension.Time, 0.4)]
    [InlineData("5 µs", Dimension.Time, 5e-6)]
    [InlineData("5 μs", Dimension.Time, 5e-6)]
    [InlineData("5 us", Dimension.Time, 5e-6)]
    [InlineData("90 min", Dimension.Time, 5400)]
    [InlineData("72 h", Dimension.Time, 259_200)]
    [InlineData("2 d", Dimension.Time, 172_800)]
    [InlineData("32 bytes", Dimension.Data, 32)]
    [InlineData("1 byte", Dimension.Data, 1)]
    [InlineData("2 kB", Dimension.Data, 2000)]
    [InlineData("1 %", Dimension.Percent, 1)]
    [InlineData("1%", Dimension.Percent, 1)]
    [InlineData("-2.5 ppm", Dimension.PartsPerMillion, -2.5)]
    [InlineData("5.47 kbit/s", Dimension.BitRate, 5470)]
    [InlineData("300 bit/s", Dimension.BitRate, 300)]
    [InlineData("26 m/s", Dimension.Speed, 26)]
    [InlineData("1.2 kg", Dimension.Mass, 1.2)]
    [InlineData("900 g", Dimension.Mass, 0.9)]
    [InlineData("60 g/m", Dimension.MassPerLength, 0.06)]
    [InlineData("0.05 m²", Dimension.Area, 0.05)]
    [InlineData("500 cm2", Dimension.Area, 0.05)]
    [InlineData("2.5 kN", Dimension.Force, 2500)]
    [InlineData("400 N", Dimension.Force, 400)]
    [InlineData("100 Ω·m", Dimension.Resistivity, 100)]
    [InlineData("100 ohm·m", Dimension.Resistivity, 100)]
    [InlineData("8 K", Dimension.TemperatureDifference, 8)]
    [InlineData("2 years", Dimension.Time, 63_115_200)]
    [InlineData("57 V", Dimension.Voltage, 57)]
    [InlineData("350 mA", Dimension.Current, 0.35)]
    [InlineData("0 W", Dimension.Wattage, 0)]
    [InlineData("2.5 W", Dimension.Wattage, 2.5)]
    [InlineData("3350 mAh", Dimension.Charge, 3.35)]
    [InlineData("0.5 ohm", Dimension.Resistance, 0.5)]
    [InlineData("25 mΩ", Dimension.Resistance, 0.025)]
    [InlineData("2.5 Ω", Dimension.Resistance, 2.5)]
    public void A_number_with_its_unit_is_that_many_canonical_units(string text, Dimension dimension, double canonical)
    {
        Assert.True(Quantity.TryParse(text, dimension, out Estimate value, out string problem), problem);
        Assert.Equal(Estimate.Exactly(canonical), value);
    }

    [Theory]
    [InlineData("90 km/h", Dimension.Speed, 25)] // 3.6 km/h are 1 m/s.
    [InlineData("100 mph", Dimension.Speed, 44.704)] // The mile is 1609.344 m: NIST SP 811, appendix B.8.
    [InlineData("50 kn", Dimension.Speed, 25.722222222222222)] // The nautical mile is 1852 m: NIST SP 811, appendix B.8.
    [InlineData("10 ft", Dimension.Length, 3.048)] // The foot is 0.3048 m: NIST SP 811, appendix B.8.
    [InlineData("6 dBd", Dimension.Gain, 8.15)] // A half-wave dipole has 2.15 dBi.
    [InlineData("25 mW", Dimension.Power, 13.979400086720376)] // 10 lg 25.
    [InlineData("0.5 W", Dimension.Power, 26.989700043360187)] // 10 lg 500.
    [InlineData("1 kW", Dimension.Power, 60)]
    [InlineData("10 µW", Dimension.Power, -20)]
    [InlineData("300 K", Dimension.Temperature, 26.85)]
    [InlineData("17.453292519943295 mrad", Dimension.Angle, 1)] // π/180 rad.
    public void Other_units_are_converted(string text, Dimension dimension, double canonical)
    {
        Assert.True(Quantity.TryParse(text, dimension, out Estimate value, out string problem), problem);
        Assert.True(value.IsExact);
        Assert.Equal(canonical, value.Median, 1e-12);
    }

    [Theory]
    [InlineData("5 ± 1 m", Dimension.Length, 4, 5, 6)]
    [InlineData("5±1m", Dimension.Length, 4, 5, 6)]
    [InlineData("5 m ± 20 cm", Dimension.Length, 4.8, 5, 5.2)]
    [InlineData("5 +/- 1 m", Dimension.Length, 4, 5, 6)]
    [InlineData("-5 ± 1 m", Dimension.Length, -6, -5, -4)]
    [InlineData("0…6 dBi", Dimension.Gain, 0, 3, 6)]
    [InlineData("0...6 dBi", Dimension.Gain, 0, 3, 6)]
    [InlineData("0 to 6 dBi", Dimension.Gain, 0, 3, 6)]
    [InlineData("0.5...6.5dBi", Dimension.Gain, 0.5, 3.5, 6.5)]
    [InlineData("-2…-1 dBi", Dimension.Gain, -2, -1.5, -1)]
    [InlineData("2 (0…6) dBi", Dimension.Gain, 0, 2, 6)]
    [InlineData("900 m to 1.1 km", Dimension.Length, 900, 1000, 1100)]
    [InlineData("8 dBi ± 1 dB", Dimension.Gain, 7, 8, 9)]
    [InlineData("8 ± 1 dBi", Dimension.Gain, 7, 8, 9)]
    [InlineData("14 dBm ± 1 dB", Dimension.Power, 13, 14, 15)]
    [InlineData("14 ± 1 dBm", Dimension.Power, 13, 14, 15)]
    [InlineData("100 mW ± 1 dB", Dimension.Power, 19, 20, 21)]
    [InlineData("20 °C ± 5 K", Dimension.Temperature, 15, 20, 25)]
    [InlineData("10…1000 mW", Dimension.Power, 10, 27.032914, 30)] // The middle is 505 mW, 10 lg 505.
    [InlineData("50 ± 40 mW", Dimension.Power, 10, 16.9897, 19.542425)] // 10, 50 and 90 mW.
    [InlineData("0.05 W ± 40 mW", Dimension.Power, 10, 16.9897, 19.542425)]
    public void A_range_has_a_low_a_middle_and_a_high(string text, Dimension dimension, double low, double median, double high)
    {
        Assert.True(Quantity.TryParse(text, dimension, out Estimate value, out string problem), problem);
        Assert.Equal(low, value.Low, 1e-6);
        Assert.Equal(median, value.Median, 1e-6);
        Assert.Equal(high, value.High, 1e-6);
    }

    [Theory]
    [InlineData("15", Dimension.Length, "'15' has no unit; write a length in m, km, cm, mm or ft, such as '15 m'")]
    [InlineData("5 ± 1", Dimension.Length, "'5 ± 1' has no unit")]
    [InlineData("5 m ± 1", Dimension.Length, "no unit after '±'")]
    [InlineData("0 dBi…6", Dimension.Gain, "has no unit")]
    [InlineData("15 dB", Dimension.Length, "'15 dB' is a ratio; a length is wanted, such as '15 m'")]
    [InlineData("15 m ± 1 dB", Dimension.Length, "is a ratio; a length is wanted")]
    [InlineData("8 dB", Dimension.Gain, "does not say what the gain is over; write dBi (over an isotropic antenna) or dBd")]
    [InlineData("14 dBm ERP", Dimension.Power, "is a radiated power")]
    [InlineData("14 dBm e.i.r.p.", Dimension.Power, "the power at the radio's own connector")]
    [InlineData("ERP 25 mW", Dimension.Power, "is a radiated power")]
    [InlineData("1,5 m", Dimension.Length, "'1,5 m' has a comma; write a decimal point")]
    [InlineData("868 mhz", Dimension.Frequency, "did you mean 'MHz'?")]
    [InlineData("15 furlong", Dimension.Length, "has the unit 'furlong', which is not known; write a length in m, km")]
    [InlineData("", Dimension.Length, "there is no value; write a length such as '15 m'")]
    [InlineData("   ", Dimension.Length, "there is no value")]
    [InlineData("high", Dimension.Length, "'high' is not understood")]
    [InlineData("15 m high", Dimension.Length, "is not understood")]
    [InlineData("0x10 m", Dimension.Length, "has the unit 'x'|is not understood")]
    [InlineData("1_000 m", Dimension.Length, "is not understood")]
    [InlineData("0..6 dBi", Dimension.Gain, "is not understood")]
    [InlineData("5 ± -1 m", Dimension.Length, "negative number after '±'")]
    [InlineData("6…0 dBi", Dimension.Gain, "does not rise")]
    [InlineData("7 (0…6) dBi", Dimension.Gain, "does not rise")]
    [InlineData("14 dBm ± 5 mW", Dimension.Power, "mixes watts with decibels")]
    [InlineData("NaN m", Dimension.Length, "is not understood")]
    [InlineData("Infinity m", Dimension.Length, "is not understood")]
    [InlineData("1e999 m", Dimension.Length, "is out of range")]
    [InlineData("50001 km", Dimension.Length, "a length is between -50000 km and 50000 km")]
    [InlineData("0 MHz", Dimension.Frequency, "is out of range")]
    [InlineData("-5 MHz", Dimension.Frequency, "is out of range")]
    [InlineData("1001 GHz", Dimension.Frequency, "is out of range")]
    [InlineData("121 dBm", Dimension.Power, "is out of range")]
    [InlineData("-251 dBm", Dimension.Power, "is out of range")]
    [InlineData("0 W", Dimension.Power, "is out of range")]
    [InlineData("-1 W", Dimension.Power, "is out of range")]
    [InlineData("5 ± 5 mW", Dimension.Power, "is out of range")]
    [InlineData("-300 °C", Dimension.Temperature, "is out of range")]
    [InlineData("-1 s", Dimension.Time, "is out of range")]
    public void What_is_wrong_says_what_would_be_right(string text, Dimension dimension, string part)
    {
        Assert.False(Quantity.TryParse(text, dimension, out Estimate value, out string problem));
        Assert.Equal(default, value);
        Assert.Contains(part.Split('|'), wanted => problem.Contains(wanted, StringComparison.Ordinal));
    }

    [Fact]
    public void Text_over_a_hundred_characters_is_refused_unread()
    {
        Assert.False(Quantity.TryParse("15 m" + new string(' ', 97), Dimension.Length, out _, out string problem));
        Assert.Contains("101 characters", problem, StringComparison.Ordinal);
    }

    [Fact]
    public void A_message_holds_no_control_characters()
    {
        Assert.False(Quantity.TryParse("15 m\u001b[31m", Dimension.Length, out _, out string problem));
        Assert.DoesNotContain('\u001b', problem);
    }

    [Fact]
    public void A_comma_culture_changes_nothing()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CommaCulture.Create();
            Assert.True(Quantity.TryParse("-1.5 ± 0.25 km", Dimension.Length, out Estimate value, out string problem), problem);
            Assert.Equal(Estimate.PlusMinus(-1500, 250), value);
            Assert.Equal("-1500 ± 250 m", Quantity.Format(value, Dimension.Length));
            Assert.False(Quantity.TryParse("1,5 m", Dimension.Length, out _, out problem));
            Assert.Contains("has a comma", problem, StringComparison.Ordinal);
            Assert.False(Quantity.TryParse("60000.5 km", Dimension.Length, out _, out problem));
            Assert.Contains("-50000 km", problem, StringComparison.Ordinal);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [InlineData(15, Dimension.Length, "15 m")]
    [InlineData(34_500, Dimension.Length, "34.5 km")]
    [InlineData(0.005, Dimension.Length, "5 mm")]
    [InlineData(868_100_000, Dimension.Frequency, "868.1 MHz")]
    [InlineData(125_000, Dimension.Frequency, "125 kHz")]
    [InlineData(30, Dimension.Angle, "30°")]
    [InlineData(259_200, Dimension.Time, "3 d")]
    [InlineData(3600, Dimension.Time, "1 h")]
    [InlineData(0.4, Dimension.Time, "400 ms")]
    [InlineData(10, Dimension.Percent, "10 %")]
    [InlineData(0, Dimension.Length, "0 m")]
    public void A_number_is_written_with_a_unit_of_its_size(double value, Dimension dimension, string text) =>
        Assert.Equal(text, Quantity.Format(value, dimension));

    [Theory]
    [InlineData("5 ± 1 m", Dimension.Length, "5 ± 1 m")]
    [InlineData("5 ± 0.3 m", Dimension.Length, "5 ± 0.3 m")]
    [InlineData("0…6 dBi", Dimension.Gain, "3 ± 3 dBi")]
    [InlineData("2 (0…6) dBi", Dimension.Gain, "2 (0…6) dBi")]
    [InlineData("868.1 MHz ± 5 kHz", Dimension.Frequency, "868.1 ± 0.005 MHz")]
    public void A_range_is_written_as_a_person_would(string text, Dimension dimension, string written)
    {
        Assert.True(Quantity.TryParse(text, dimension, out Estimate value, out string problem), problem);
        Assert.Equal(written, Quantity.Format(value, dimension));
    }

    [Fact]
    public void What_is_written_reads_back_as_the_same_value() =>
        Gen.Select(Gen.Enum<Dimension>(), Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Bool).Sample((dimension, a, b, c, isExact) =>
        {
            (double least, double most) = Span(dimension);
            double[] rising = [.. new[] { a, b, c }.Select(share => least + (share * (most - least))).Order()];
            Estimate value = isExact ? Estimate.Exactly(rising[1]) : Estimate.Of(rising[0], rising[1], rising[2]);
            string text = Quantity.Format(value, dimension);
            return text.Length <= Quantity.LongestText && Quantity.TryParse(text, dimension, out Estimate back, out _) && back == value;
        });

    [Fact]
    public void A_short_decimal_is_written_short() =>
        Gen.Int[-99_999, 99_999].Sample(thousandths =>
        {
            double metres = thousandths / 1000.0;
            return Quantity.Format(metres, Dimension.Length).Length <= 10;
        });

    [Fact]
    public void Any_text_is_an_answer() =>
        Gen.Select(Gen.OneOf(Gen.String, Gen.String[Gen.Char["0123456789.eE+-−±…/,()% toMmkHzdBiWs°CKµ\u0000é"], 0, 30]), Gen.Enum<Dimension>())
            .Sample((text, dimension) =>
            {
                bool isRead = Quantity.TryParse(text, dimension, out Estimate value, out string problem);
                return isRead == (problem.Length == 0) && double.IsFinite(value.Low) && double.IsFinite(value.High);
            });

    private static (double Least, double Most) Span(Dimension dimension) => dimension switch
    {
        Dimension.Length => (-5e7, 5e7),
        Dimension.Frequency => (1e-3, 1e12),
        Dimension.Gain => (-100, 100),
        Dimension.Ratio => (-500, 500),
        Dimension.Power => (-250, 120),
        Dimension.Angle => (-360, 360),
        Dimension.Temperature => (-273.15, 2000),
        Dimension.Time => (0, 1e6),
        Dimension.Data => (0, 1e9),
        Dimension.Percent => (0, 100),
        Dimension.PartsPerMillion => (-1e6, 1e6),
        Dimension.Voltage or Dimension.Current => (-1e6, 1e6),
        Dimension.Charge => (0, 1e6),
        Dimension.Speed => (0, 1000),
        Dimension.Mass or Dimension.Area => (0, 1e6),
        Dimension.MassPerLength => (0, 1e4),
        Dimension.Force => (0, 1e9),
        Dimension.Resistivity => (0, 1e8),
        Dimension.TemperatureDifference => (-2000, 2000),
        _ => (1e-3, 1e9),
    };
}
