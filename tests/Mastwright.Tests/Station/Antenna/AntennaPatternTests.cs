using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;

namespace Mastwright.Tests.Station.Antenna;

public sealed class AntennaPatternTests
{
    private const double FrequencyHz = 869.525e6;

    internal static AntennaFit Fit { get; } = new()
    {
        Height = new(Estimate.Exactly(5), HeightAbove.Ground),
        GainDbi = Estimate.Between(7, 9),
    };

    [Fact]
    public void Without_a_pattern_the_gain_holds_everywhere_and_is_listed_as_assumed()
    {
        AntennaPattern pattern = AntennaPattern.Of(Fit, FrequencyHz, "p");

        Assert.Equal(8, pattern.GainDbi(-40)!.Value.Median);
        Assert.Contains(pattern.Assumptions, assumption => assumption is { Code: "antenna-pattern", PlanPath: "p/pattern" });
        Assert.False(pattern.ClaimsNulls);
        Assert.Equal(Verdict.Ok, AntennaFindings.Direction(pattern, 2, double.NaN, "link").Verdict);
        Assert.Equal(Verdict.Unknown, AntennaFindings.Direction(pattern, -25, double.NaN, "link").Verdict);
    }

    [Fact]
    public void The_range_of_the_gain_is_carried_into_every_direction()
    {
        AntennaPattern pattern = AntennaPattern.Of(Fit with { Pattern = PatternKind.AverageSideLobes }, FrequencyHz, "p");

        Estimate gain = pattern.GainDbi(10)!.Value;

        Assert.Equal(2, gain.High - gain.Low, 1e-9);
        Assert.True(gain.Median < 8);
    }

    /// <summary>
    /// Rec. ITU-R F.1336 by hand at 8 dBi: θ3 = 107.6·10^-0.8 = 17.053°; at 10° −12·(10/17.053)² = −4.126 dB; at 60° with
    /// k = 0.7, −15 + 10·log10(3.5184^-1.5 + 0.7) = −15 + 10·log10(0.85153) = −15.698 dB.
    /// </summary>
    [Fact]
    public void The_envelope_follows_its_formula()
    {
        double width = AverageSideLobes.BeamwidthDegrees(8);

        Assert.Equal(17.053, width, 0.001);
        Assert.Equal(-4.126, AverageSideLobes.RelativeDb(10, width), 0.002);
        Assert.Equal(-15.698, AverageSideLobes.RelativeDb(60, width), 0.002);
        Assert.Equal(-3, AverageSideLobes.RelativeDb(width / 2, width), 1e-12);
    }

    [Fact]
    public void The_envelope_never_rises_away_from_the_main_beam() =>
        Gen.Select(Gen.Double[0, 14], Gen.Double[0, 90], Gen.Double[0, 20]).Sample((gain, angle, further) =>
        {
            double width = AverageSideLobes.BeamwidthDegrees(gain);
            return AverageSideLobes.RelativeDb(angle + further, width) <= AverageSideLobes.RelativeDb(angle, width) + 1e-12;
        });

    [Fact]
    public void A_null_is_claimed_only_from_a_table_or_an_array_formula_without_fill()
    {
        ImmutableArray<PatternPoint> table = [new(-90, -20), new(0, 0), new(90, -20)];

        Assert.True(Of(Fit with { Pattern = PatternKind.Table, ElevationTable = table }).ClaimsNulls);
        Assert.True(Of(Fit with { Pattern = PatternKind.CollinearArray, Elements = 4 }).ClaimsNulls);
        Assert.False(Of(Fit with { Pattern = PatternKind.CollinearArray, Elements = 4, NullFillDb = 20 }).ClaimsNulls);
        Assert.False(Of(Fit with { Pattern = PatternKind.AverageSideLobes }).ClaimsNulls);
        Assert.False(Of(Fit with { Pattern = PatternKind.Yagi }).ClaimsNulls);
    }

    [Fact]
    public void A_form_that_lacks_its_numbers_falls_back_and_says_what_is_missing()
    {
        AntennaPattern pattern = Of(Fit with { Pattern = PatternKind.CollinearArray });

        Assert.Equal(PatternKind.NotGiven, pattern.Kind);
        Finding finding = Assert.Single(pattern.Findings);
        Assert.Equal("antenna-pattern-incomplete", finding.Code);
        Assert.Equal("elements", finding.Details["missing"]);
    }

    /// <summary>2.15 dBi is the directivity of a half-wave dipole (any antenna textbook).</summary>
    [Fact]
    public void An_array_without_a_stated_gain_has_its_directivity()
    {
        AntennaPattern pattern = Of(Fit with { GainDbi = null, Pattern = PatternKind.CollinearArray, Elements = 1 });

        Assert.Equal(2.15, pattern.MainBeamDbi!.Value.Median, 0.01);
        Assert.Contains(pattern.Assumptions, assumption => assumption.Code == "antenna-gain-from-array");
    }

    /// <summary>Half-power points are 3 dB down by definition; the back is the stated floor of 15 dB.</summary>
    [Theory]
    [InlineData(0, 350, 11)]
    [InlineData(0, 15, 8)]
    [InlineData(0, 325, 8)]
    [InlineData(30, 350, 8)]
    [InlineData(0, 170, -4)]
    public void A_yagi_is_3_dB_down_at_half_its_beamwidth_from_its_bearing(double elevation, double bearing, double gainDbi)
    {
        AntennaPattern pattern = Of(Fit with
        {
            Pattern = PatternKind.Yagi,
            GainDbi = Estimate.Exactly(11),
            AzimuthBeamwidthDegrees = 50,
            ElevationBeamwidthDegrees = 60,
            BearingDegrees = 350,
        });

        Assert.Equal(gainDbi, pattern.GainDbi(elevation, bearing)!.Value.Median, 1e-9);
    }

    /// <summary>31000·10^(−0.1·G0) by hand: 13 dBi and 40° the one way leave 38.84° the other; a round beam is 39.42° both ways.</summary>
    [Fact]
    public void A_missing_beamwidth_follows_from_the_gain()
    {
        Assert.Equal(38.84, DirectionalBeam.BeamwidthDegrees(13, 40), 0.01);
        Assert.Equal(39.42, DirectionalBeam.BeamwidthDegrees(13, null), 0.01);
    }

    [Fact]
    public void A_directional_antenna_without_a_bearing_is_a_finding()
    {
        AntennaPattern pattern = Of(Fit with { Pattern = PatternKind.Yagi, AzimuthBeamwidthDegrees = 50 });

        Assert.Contains(pattern.Findings, finding => finding.Code == "antenna-bearing-unknown");
        Assert.Equal(8, pattern.GainDbi(0, 123)!.Value.Median, 1e-9);
    }

    [Fact]
    public void A_tilted_beam_looks_down_in_front_and_up_behind()
    {
        AntennaPattern pattern = Of(Fit with
        {
            Pattern = PatternKind.Yagi,
            AzimuthBeamwidthDegrees = 300,
            ElevationBeamwidthDegrees = 30,
            BearingDegrees = 0,
            TiltDegrees = -10,
        });

        Assert.Equal(0, pattern.RelativeDb(-10, 0), 1e-9);
        Assert.True(pattern.RelativeDb(10, 180) > pattern.RelativeDb(-10, 180));
    }

    [Fact]
    public void The_table_for_the_sweep_equals_the_gain_angle_by_angle()
    {
        AntennaPattern pattern = Of(Fit with { Pattern = PatternKind.CollinearArray, Elements = 6, SpacingWavelengths = 0.8, NullFillDb = 20 });
        double[] table = new double[181];

        pattern.FillTable(table, -90, 1);

        for (int i = 0; i < table.Length; i++)
        {
            Assert.Equal(pattern.GainDbi(i - 90)!.Value.Median, table[i]);
        }
    }

    [Fact]
    public void No_form_exceeds_its_main_beam() =>
        Gen.Select(Gen.Int[0, 4], Gen.Double[-90, 90], Gen.Double[0, 360], Gen.Double[-20, 20]).Sample((kind, elevation, bearing, tilt) =>
        {
            AntennaFit fit = Fit with
            {
                Pattern = (PatternKind)kind,
                Elements = 5,
                BearingDegrees = 40,
                TiltDegrees = tilt,
                ElevationTable = [new(-30, -25), new(0, 0), new(30, -12)],
            };
            return Of(fit).RelativeDb(elevation, bearing) <= 1e-9;
        });

    private static AntennaPattern Of(AntennaFit fit) => AntennaPattern.Of(fit, FrequencyHz, "p");
}
