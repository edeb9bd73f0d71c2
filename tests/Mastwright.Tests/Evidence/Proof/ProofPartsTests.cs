using Mastwright.Evidence.Proof;
using Mastwright.Quantities;

namespace Mastwright.Tests.Evidence.Proof;

public sealed class ProofPartsTests
{
    private const long Minute = 60_000_000;

    /// <summary>Heard on 3 of 10 days and on none of 10 others: C(10,3)/C(20,3) = 120/1140.</summary>
    [Fact]
    public void Chance_is_that_of_the_exact_test()
    {
        Assert.Equal(120.0 / 1140, Chance.OneSided(3, 10, 10), 1e-12);
        Assert.Equal(1, Chance.OneSided(0, 10, 10), 1e-12);
        Assert.Equal(1.0 / 184_756, Chance.OneSided(10, 10, 10), 1e-16);
    }

    /// <summary>Half of the day heard before and the other half after, with a swing over the day: by hand only the hours in both count.</summary>
    [Fact]
    public void Only_the_same_hours_are_compared()
    {
        double[] swing = [.. Enumerable.Range(0, 24).Select(hour => (double)hour)];
        double[] sumsBefore = new double[48];
        double[] sumsAfter = new double[48];
        int[] countsBefore = new int[48];
        int[] countsAfter = new int[48];
        for (int hour = 0; hour < 48; hour++)
        {
            (sumsBefore[hour], countsBefore[hour]) = hour % 24 < 13 ? (2 * swing[hour % 24], 2) : (0, 0);
            (sumsAfter[hour], countsAfter[hour]) = hour % 24 > 11 ? (swing[hour % 24] + 5, 1) : (0, 0);
        }

        DayScores scores = SameHours.Compare(new(sumsBefore, countsBefore, 0), new(sumsAfter, countsAfter, 0))!;
        Assert.Equal(5, scores.Shift, 1e-12);
        Assert.Equal((2, 2), (scores.BeforeDays, scores.AfterDays));
        Assert.Equal(0, scores.BeforeScores.Sum(), 1e-12);
        Assert.Null(SameHours.Compare(new(new double[24], new int[24], 0), new(sumsAfter, countsAfter, 0)));
    }

    /// <summary>10,000 normal levels of mean −120 dBm and spread 4 dB, those below −118 lost: seen they average −115.5, the likelihood finds −120 again.</summary>
    [Fact]
    public void Levels_below_the_limit_are_counted_in()
    {
        CensoredDay[] days = new CensoredDay[10];
        for (int i = 0; i < 10_000; i++)
        {
            double level = -120 + (4 * KeyedDraws.Normal(42, i));
            CensoredDay day = days[i / 1000];
            days[i / 1000] = level < -118
                ? day with { Lost = day.Lost + 1 }
                : new(day.Count + 1, day.Sum + level, day.Squares + (level * level), day.Lost);
        }

        CensoredMean fit = CensoredMean.Fit(days, -118, 0)!;
        double seen = days.Sum(day => day.Sum) / days.Sum(day => day.Count);

        // The mean above a cut: μ + σ·φ(z)/(1 − Φ(z)), z = (cut − μ)/σ = 0.5: 4·1.1411 (from the normal table).
        Assert.Equal(-120 + (4 * 1.1411), seen, 0.15);
        Assert.Equal(-120, fit.MeanDbm, 0.2);
        Assert.Equal(4, fit.SpreadDb, 0.15);
        Assert.Equal(0, fit.Scores.Sum(), 1e-6);
        Assert.Null(CensoredMean.Fit([new(9, -900, 90_000, 3)], -118, 0));
    }

    /// <summary>Numbers 1, 2, 5, 6 tell two losses between 2 and 5, in the hours between the two that were heard.</summary>
    [Fact]
    public void Numbers_that_count_up_tell_what_was_lost()
    {
        ProofFold fold = new(new(0, 48 * ProofPeriod.Hour));
        long counter = 0;
        for (int i = 0; i < 40; i++)
        {
            counter += i == 20 ? 3 : 1;
            fold.Add(new(i * 30 * Minute, 0, 0, -100, 8, 0, counter, 9));
        }

        SenderPeriod sender = fold.Direct(0)!;
        Assert.True(sender.CountsUp);
        Assert.Equal(2, sender.Lost.Sum());
        Assert.Equal(2, sender.Lost[9]);
        Assert.Equal(40, sender.Counted);
        Assert.Equal(8, sender.SnrQuantileDb(0.1));
        Assert.Equal(1, sender.DaysHeard);
    }

    /// <summary>
    /// A station sends every quarter of an hour, with levels of −116 dBm before and −114 dBm after, both ± 4 dB; what lies below −116.5 dBm is lost. Heard
    /// is a share of Φ(0.125) = 0.5497 and of Φ(0.625) = 0.7340 (normal table), and the shift is 2 dB, although those that are heard differ by less.
    /// </summary>
    [Fact]
    public void A_known_interval_tells_what_was_lost()
    {
        ProofResult told = Weak(900);
        StationProof station = Assert.Single(told.Stations);
        Assert.Equal(ShiftKnowledge.LossesCounted, station.Knowledge);
        Assert.Equal(2, station.SignalPower!.Shift, 0.6);
        Assert.Equal(0.5497, station.Before.DeliveredShare!.Value, 0.03);
        Assert.Equal(0.7340, station.After.DeliveredShare!.Value, 0.03);

        StationProof plain = Assert.Single(Weak(null).Stations);
        Assert.Equal(ShiftKnowledge.Open, plain.Knowledge);
        Assert.True(plain.SignalPower!.Shift < 1.3, $"seen alone it is {plain.SignalPower.Shift} dB");
        Assert.Null(plain.Before.DeliveredShare);
    }

    /// <summary>Heard twice an hour and more, it does not send every hour.</summary>
    [Fact]
    public void An_interval_that_does_not_hold_is_not_used()
    {
        StationProof station = Assert.Single(Weak(3600).Stations);
        Assert.True(station.SendsMoreOften);
        Assert.Equal(ShiftKnowledge.Open, station.Knowledge);
        Assert.Null(station.After.DeliveredShare);
    }

    private static ProofResult Weak(double? everySeconds)
    {
        const int days = 40;
        const double noise = -104;
        ProofFold before = new(new(0, days * 24 * ProofPeriod.Hour));
        ProofFold after = new(new(days * 24 * ProofPeriod.Hour, 2 * days * 24 * ProofPeriod.Hour));
        for (int i = 0; i < 2 * days * 96; i++)
        {
            bool isAfter = i >= days * 96;
            double power = (isAfter ? -114 : -116) + (4 * KeyedDraws.Normal(7, i));
            if (power - noise >= -12.5)
            {
                (isAfter ? after : before).Add(new(i * 15 * Minute, 0, 0, power, power - noise, 0, -1, 9));
            }
        }

        return ProofExamination.Run(before, after, new() { LimitSnrDb = _ => -12.5, SendsEverySeconds = _ => everySeconds });
    }

    /// <summary>Numbers drawn at random are no counter; a level of an unknown sender is counted and not used.</summary>
    [Fact]
    public void What_is_not_told_is_not_used()
    {
        ProofFold fold = new(new(0, 24 * ProofPeriod.Hour));
        for (int i = 0; i < 40; i++)
        {
            fold.Add(new(i * 30 * Minute, 0, 0, -100, 8, 0, (long)(1e9 * KeyedDraws.Uniform(3, i)), 9));
        }

        fold.Add(new(5 * Minute, -1, 2, double.NaN, double.NaN, 2, -1, 9));
        Assert.False(fold.Direct(0)!.CountsUp);
        Assert.Equal(1, fold.WithoutSender);
        Assert.Null(fold.Direct(2));
        Assert.Equal(1, fold.Hops(2)[2]);
        fold.Add(new(25 * ProofPeriod.Hour, 0, 0, -100, 8, 0, 1, 9));
        Assert.Equal(41, fold.Packets);
    }

    /// <summary>Too few days give a shift and no interval; the same records the same answer.</summary>
    [Fact]
    public void Few_days_give_no_interval()
    {
        DayScores few = new(3, [0.1, -0.1, 0], [0.2, -0.1, -0.1], 3, 3);
        Assert.Null(ShiftEstimate.Of(few, double.NaN, 0.95, 1).Interval);
        double[] scores = [.. Enumerable.Range(0, 20).Select(day => KeyedDraws.Normal(1, day) / 20)];
        DayScores many = new(3, scores, scores, 20, 20);
        Assert.Equal(ShiftEstimate.Of(many, 0.2, 0.95, 1), ShiftEstimate.Of(many, 0.2, 0.95, 1));
    }
}
