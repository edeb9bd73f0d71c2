using Mastwright.Station.Feed;

namespace Mastwright.Tests.Station.Feed;

public sealed class MismatchTests
{
    /// <summary>VSWR, |Γ|, return loss in dB, mismatch loss in dB: the exact relations, worked to the digits shown (as in any VSWR table).</summary>
    public static TheoryData<double, double, double, double> Table => new()
    {
        { 1.1, 0.04762, 26.444, 0.0099 },
        { 1.2, 0.09091, 20.828, 0.0360 },
        { 1.5, 0.20000, 13.979, 0.1773 },
        { 2.0, 0.33333, 9.542, 0.5115 },
        { 2.5, 0.42857, 7.360, 0.8814 },
        { 3.0, 0.50000, 6.021, 1.2494 },
        { 5.0, 0.66667, 3.522, 2.5527 },
    };

    [Theory, MemberData(nameof(Table))]
    public void Forms_of_a_reflection_agree_with_the_table(double vswr, double reflection, double returnLossDb, double lossDb)
    {
        double size = Mismatch.ReflectionFromVswr(vswr);

        Assert.Equal(reflection, size, 5e-6);
        Assert.Equal(returnLossDb, Mismatch.ReturnLossDbFromVswr(vswr), 5e-4);
        Assert.Equal(lossDb, Mismatch.LossDb(size), 5e-5);
        Assert.Equal(vswr, Mismatch.VswrFromReturnLossDb(Mismatch.ReturnLossDbFromReflection(size)), 1e-9);
    }

    /// <summary>Matched loss, VSWR of the load, total loss, VSWR at the radio: the antenna handbooks' formula worked to four digits.</summary>
    public static TheoryData<double, double, double, double> Handbook => new()
    {
        { 1, 2, 1.1959, 1.720 },
        { 3, 2, 3.3886, 1.401 },
        { 3, 3, 3.9677, 1.669 },
        { 6, 5, 8.4292, 1.402 },
        { 2, 1.5, 2.1076, 1.289 },
        { 0.5, 3, 0.7880, 2.608 },
        { 3, 5, 5.0386, 2.004 },
    };

    [Theory, MemberData(nameof(Handbook))]
    public void A_mismatched_load_makes_a_line_lose_more(double matchedDb, double vswr, double totalDb, double vswrAtRadio)
    {
        double reflection = Mismatch.ReflectionFromVswr(vswr);
        Assert.Equal(totalDb, Mismatch.TotalLineLossDb(matchedDb, reflection), 5e-5);

        double returnLossAtRadio = Mismatch.ReturnLossDbFromReflection(reflection) + (2 * matchedDb);
        Assert.Equal(vswrAtRadio, Mismatch.VswrFromReturnLossDb(returnLossAtRadio), 5e-4);
        Assert.Equal(vswr, Mismatch.VswrFromReturnLossDb(Mismatch.ReturnLossDbAtFarEnd(returnLossAtRadio, matchedDb)), 1e-9);
    }

    /// <summary>What a matched radio sees: total line loss and the reflection left at the radio make matched loss and the load's mismatch loss.</summary>
    [Fact]
    public void Both_ways_of_counting_a_mismatch_come_to_the_same() =>
        Gen.Select(Gen.Double[0, 12], Gen.Double[0, 0.95]).Sample((matchedDb, reflection) =>
        {
            double atRadio = reflection * Math.Pow(10, -matchedDb / 10);
            double total = Mismatch.TotalLineLossDb(matchedDb, reflection) + Mismatch.LossDb(atRadio);
            return Math.Abs(total - matchedDb - Mismatch.LossDb(reflection)) < 1e-9;
        });

    [Fact]
    public void A_reflection_above_one_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Mismatch.LossDb(1.01));
}
