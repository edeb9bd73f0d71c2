using Mastwright.Station.Antenna;

namespace Mastwright.Tests.Station.Antenna;

public sealed class CollinearArrayTests
{
    /// <summary>Directivity of a half-wave dipole, 1.64 or 2.15 dBi, and its half-power beamwidth, 78° (any antenna textbook).</summary>
    [Fact]
    public void One_element_is_a_half_wave_dipole()
    {
        CollinearArray dipole = new(1, 0.5);

        Assert.Equal(2.15, dipole.DirectivityDbi, 0.005);
        Assert.Equal(-3.01, dipole.RelativeDb(39), 0.02);
        Assert.Equal(double.NegativeInfinity, dipole.RelativeDb(90));
    }

    /// <summary>Collinear half-wave elements end to end gain 1.9, 3.2 and 4.3 dB over one for 2, 3 and 4 of them (antenna handbooks, from memory; for end gaps, hence 0.3 dB).</summary>
    [Theory]
    [InlineData(2, 1.9)]
    [InlineData(3, 3.2)]
    [InlineData(4, 4.3)]
    public void End_to_end_elements_gain_what_the_handbooks_say(int elements, double overDipoleDb) =>
        Assert.Equal(overDipoleDb, new CollinearArray(elements, 0.5).DirectivityDbi - 2.15, 0.3);

    /// <summary>Nulls of a uniform array: sin ε = m·λ/(N·d) (array theory).</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Nulls_stand_where_array_theory_puts_them(int order)
    {
        CollinearArray array = new(8, 0.8);
        double angle = double.RadiansToDegrees(Math.Asin(order / (8 * 0.8)));

        Assert.True(array.RelativeDb(angle) < -100);
        Assert.True(array.RelativeDb(-angle) < -100);
    }

    /// <summary>First side lobe of a long uniform array: 13.3 dB down (array theory); the dipole takes a few tenths more, hence 0.5 dB.</summary>
    [Fact]
    public void The_first_side_lobe_of_a_long_array_is_13_dB_down()
    {
        CollinearArray array = new(16, 0.5);
        double highest = Enumerable.Range(0, 200).Max(i => array.RelativeDb(7.3 + (i * 0.03)));

        Assert.Equal(-13.3, highest, 0.5);
    }

    /// <summary>A long uniform line has a directivity of 2·L/λ (antenna textbooks): 32 half-waves are 16 λ long, 32 or 15.05 dBi; ends add a little, hence 0.2 dB.</summary>
    [Fact]
    public void A_long_array_has_the_directivity_of_a_line_source() =>
        Assert.Equal(15.05, new CollinearArray(32, 0.5).DirectivityDbi, 0.2);

    [Fact]
    public void A_null_fill_is_a_floor_under_the_array_factor()
    {
        CollinearArray filled = new(8, 0.8, nullFillDb: 20);
        double angle = double.RadiansToDegrees(Math.Asin(1 / (8 * 0.8)));

        Assert.Equal(-20, filled.RelativeDb(angle), 0.3);
        Assert.Equal(0, filled.RelativeDb(0), 1e-9);
        Assert.True(filled.DirectivityDbi < new CollinearArray(8, 0.8).DirectivityDbi);
    }

    [Fact]
    public void Tilt_moves_the_main_beam()
    {
        CollinearArray tilted = new(8, 0.8, tiltDegrees: -6);
        double peak = Enumerable.Range(-200, 400).Select(i => i / 10.0).MaxBy(tilted.RelativeDb);

        Assert.Equal(-6, peak, 0.3);
    }

    [Fact]
    public void An_untilted_array_is_alike_above_and_below() =>
        Gen.Select(Gen.Int[1, 16], Gen.Double[0.3, 1], Gen.Double[0, 89]).Sample((elements, spacing, angle) =>
        {
            CollinearArray array = new(elements, spacing);
            double above = Math.Pow(10, array.RelativeDb(angle) / 10);
            double below = Math.Pow(10, array.RelativeDb(-angle) / 10);
            return Math.Abs(above - below) < 1e-9;
        }, iter: 50);
}
