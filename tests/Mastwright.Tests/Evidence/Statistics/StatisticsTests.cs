using Mastwright.Evidence.Statistics;

namespace Mastwright.Tests.Evidence.Statistics;

public sealed class StatisticsTests
{
    /// <summary>Flow of the Nile at Aswan, 1871 to 1970 (R datasets, "Nile").</summary>
    private static readonly double[] Nile =
    [
        1120, 1160, 963, 1210, 1160, 1160, 813, 1230, 1370, 1140, 995, 935, 1110, 994, 1020, 960, 1180, 799, 958, 1140, 1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774, 840,
        874, 694, 940, 833, 701, 916, 692, 1020, 1050, 969, 831, 726, 456, 824, 702, 1120, 1100, 832, 764, 821, 768, 845, 864, 862, 698, 845, 744, 796, 1040, 759,
        781, 865, 845, 944, 984, 897, 822, 1010, 771, 676, 649, 846, 812, 742, 801, 1040, 860, 874, 848, 890, 744, 749, 838, 1050, 918, 986, 797, 923, 975, 815,
        1020, 906, 901, 1170, 912, 746, 919, 718, 714, 740,
    ];

    /// <summary>Newcombe, Stat. Med. 17 (1998), 857, Table I, method 3.</summary>
    [Theory]
    [InlineData(81, 263, 0.2553, 0.3662)]
    [InlineData(15, 148, 0.0624, 0.1605)]
    [InlineData(0, 20, 0, 0.1611)]
    [InlineData(1, 29, 0.0061, 0.1718)]
    public void The_interval_of_a_share_is_the_published_one(int hits, int trials, double low, double high)
    {
        ConfidenceInterval interval = Wilson.Interval(hits, trials);
        Assert.Equal(low, interval.Low, 5e-5);
        Assert.Equal(high, interval.High, 5e-5);
    }

    /// <summary>NIST/SEMATECH e-Handbook of Statistical Methods 1.3.5.3 (AUTO83B): critical values at 326 and 136.875 degrees of freedom; 1.3.6.7.2, t table.</summary>
    [Theory]
    [InlineData(0.975, 326, 1.9673)]
    [InlineData(0.95, 326, 1.6495)]
    [InlineData(0.975, 136.875, 1.9774)]
    [InlineData(0.975, 1, 12.706)]
    [InlineData(0.975, 5, 2.571)]
    [InlineData(0.995, 10, 3.169)]
    public void Students_quantiles_are_the_published_ones(double p, double degrees, double expected) =>
        Assert.Equal(expected, Quantiles.Student(p, degrees), 5e-4);

    /// <summary>NIST/SEMATECH e-Handbook 1.3.6.7.1, normal table: 1.960 and 1.645; the sixth decimal from the definition of the reference interval.</summary>
    [Fact]
    public void Normal_quantiles_are_the_published_ones()
    {
        Assert.Equal(1.959964, Quantiles.Normal(0.975), 5e-7);
        Assert.Equal(-1.644854, Quantiles.Normal(0.05), 5e-7);
        Assert.Equal(0, Quantiles.Normal(0.5), 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => Quantiles.Normal(1));
    }

    /// <summary>Nile 1871–1970: computed from the published list; a shift between two halves looks like memory, so memory is looked for inside each.</summary>
    [Fact]
    public void A_step_looks_like_memory()
    {
        Assert.Equal(0.498408, Autocorrelation.AtOne(Nile), 5e-7);
        Assert.Equal(0.1198, Autocorrelation.AtOne(Nile.AsSpan(0, 28)), 5e-5);
        Assert.Equal(0.1778, Autocorrelation.AtOne(Nile.AsSpan(28)), 5e-5);
    }

    /// <summary>Nile: the step after 1898 (Cobb, Biometrika 65, 1978), means and F computed from the published list.</summary>
    [Fact]
    public void The_step_of_the_Nile_is_found()
    {
        ChangePoint step = ChangePoint.Find(Nile, 3)!;
        Assert.Equal(27, step.After);
        Assert.Equal(1097.75, step.MeanBefore, 1e-9);
        Assert.Equal(849.972, step.MeanAfter, 5e-4);
        Assert.Equal(75.93, step.F, 5e-3);
        Assert.Null(ChangePoint.Find([1, 2, 3], 2));
        Assert.Null(ChangePoint.Find([4, 4, 4, 4], 1));
    }

    /// <summary>Politis and White (2004) with Patton, Politis and White (2009): (1.5·(2r/(1−r²))²·n)^(1/3), worked by hand for r = 0.5, n = 30: 80^(1/3) = 4.31.</summary>
    [Fact]
    public void Blocks_grow_with_memory()
    {
        Assert.Equal(1, BlockLength.Of(30, 0));
        Assert.Equal(5, BlockLength.Of(30, 0.5));
        Assert.Equal(7, BlockLength.Of(30, 0.9));

        // One day of an autoregression of 0.5 shows a third of (1 + r)/(1 − r) = 3; two days show 1 + 2·½·0.5 = 1.5 of it.
        Assert.Equal(3, BlockLength.Unseen(1, 0.5), 1e-12);
        Assert.Equal(2, BlockLength.Unseen(2, 0.5), 1e-12);
        Assert.Equal(1, BlockLength.Unseen(4, 0), 1e-12);
    }

    /// <summary>Sums of a series drawn again spread as the series does: n·variance for blocks of one; none for a block as long as the series.</summary>
    [Fact]
    public void Drawn_sums_spread_as_the_series_does()
    {
        double[] scores = [1, -1, 2, -2, 3, -3, 0.5, -0.5];
        double[] sums = new double[20_000];
        BlockBootstrap.Sums(scores, 1, 5, sums);
        double square = scores.Sum(score => score * score);
        Assert.Equal(0, sums.Average(), 0.15);
        Assert.Equal(square, sums.Sum(sum => sum * sum) / sums.Length, square * 0.05);
        BlockBootstrap.Sums(scores, 8, 5, sums);
        Assert.All(sums, sum => Assert.Equal(0, sum, 1e-12));
        double[] again = new double[20_000];
        BlockBootstrap.Sums(scores, 3, 5, sums);
        BlockBootstrap.Sums(scores, 3, 5, again);
        Assert.Equal(sums, again);
    }
}
