using CsCheck;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Exposure;
using Mastwright.Station.Rules;

namespace Mastwright.Storage.Tests.Law;

public sealed class ExposureLawTests
{
    /// <summary>
    /// Limits in W/m² from the check values: 1999/519/EC f/200 (868 MHz 4.34, 869.525 MHz 4.3476), 47 CFR 1.1310 (868 MHz 5.7867, 915 MHz 6.1 and
    /// 30.5), ICNIRP 2020 (915 MHz 4.575 and 22.875). The field limit of 2013/35/EU is 3·√f V/m: 88.39 V/m at 868 MHz, 20.7363 W/m² by E²/Z0.
    /// </summary>
    [Theory]
    [InlineData("eu-public", 868, 4.34)]
    [InlineData("eu-public", 869.525, 4.3476)]
    [InlineData("eu-workers", 868, 20.7363)]
    [InlineData("us-public", 868, 5.7867)]
    [InlineData("us-public", 915, 6.1)]
    [InlineData("us-workers", 915, 30.5)]
    [InlineData("icnirp-public-body", 915, 4.575)]
    [InlineData("icnirp-workers-body", 915, 22.875)]
    public void Limits_agree_with_the_check_values(string key, double megahertz, double density)
    {
        ExposureLimit limit = Stations.Catalogue.Law.ExposureLimits.Single(row => row.Key == key);

        Assert.True(limit.Holds(megahertz * 1e6));
        Assert.Equal(density, limit.DensityAt(megahertz * 1e6), 0.0005);
    }

    [Theory]
    [InlineData("eu-public", 6)]
    [InlineData("us-public", 30)]
    [InlineData("us-workers", 6)]
    [InlineData("icnirp-public-body", 30)]
    [InlineData("icnirp-public-part", 6)]
    public void Averaging_is_as_the_documents_print_it(string key, double minutes) =>
        Assert.Equal(minutes * 60, Stations.Catalogue.Law.ExposureLimits.Single(row => row.Key == key).AveragingSeconds);

    /// <summary>Check values, trap: the distances come out far below 0.2 m, and 0.2 m is what is given.</summary>
    [Fact]
    public void The_distance_to_keep_is_never_under_0_2_m() =>
        Gen.Select(Gen.Double[-30, 50], Gen.Bool).Sample((eirp, workers) =>
        {
            (ExposureResult? law, _) = RfExposure.Distances(Input(eirp), workers ? Exposed.Workers : Exposed.Public, eirp);
            return law!.KeepMetres >= 0.2 && law.KeepMetres >= law.ReflectedMetres && law.ReflectedMetres >= law.FreeMetres;
        });

    [Fact]
    public void More_power_never_lets_people_nearer() =>
        Gen.Select(Gen.Double[-30, 50], Gen.Double[0, 20]).Sample((eirp, more) => Keep(eirp + more) >= Keep(eirp));

    [Theory]
    [InlineData(5.0, Verdict.Ok)]
    [InlineData(0.3, Verdict.Tight)]
    [InlineData(0.1, Verdict.Fails)]
    [InlineData(null, Verdict.Unknown)]
    public void The_verdict_holds_people_against_the_distance(double? metres, Verdict verdict)
    {
        Finding finding = Find(Input(21) with { Place = "FR", People = new(metres) }, "exposure-public");

        Assert.Equal(verdict, finding.Verdict);
        Assert.Equal(0.2, finding.Limit);
        Assert.Equal("Décret 2002-775", finding.Details["document"]);
        Assert.Empty(finding.Details["standing"]);
    }

    /// <summary>1999/519/EC binds nobody, 2013/35/EU is the least that a member state asks for: what keeps them may still break the law of the place.</summary>
    [Theory]
    [InlineData("EU", "exposure-public", 5.0, Verdict.Unknown, "binds nobody")]
    [InlineData("DE", "exposure-public", 0.3, Verdict.Unknown, "binds nobody")]
    [InlineData("DE", "exposure-public", 0.1, Verdict.Fails, "binds nobody")]
    [InlineData("NO", "exposure-public", 5.0, Verdict.Unknown, "binds nobody")]
    [InlineData("FR", "exposure-workers", 5.0, Verdict.Unknown, "the least that the law of each member state")]
    [InlineData("FR", "exposure-workers", 0.1, Verdict.Fails, "the least that the law of each member state")]
    [InlineData("US", "exposure-workers", 5.0, Verdict.Ok, "47 CFR 1.1310")]
    public void A_text_that_is_not_the_law_of_the_place_never_yields_ok(string place, string code, double metres, Verdict verdict, string words)
    {
        Finding finding = Find(Input(21) with { Place = place, Region = Stations.Catalogue.Law.Region(place), People = new(metres, metres) }, code);

        Assert.Equal(verdict, finding.Verdict);
        Assert.Contains(words, FindingSentences.Text(finding), StringComparison.Ordinal);
        Assert.Equal(place != "US", FindingSentences.Text(finding).Contains("may be stricter, and was not read", StringComparison.Ordinal));
    }

    /// <summary>Check values for 25 mW ERP (16.13 dBm EIRP): 0.0274 m, 0.0438 m with reflection (1.6 times); told although 0.2 m is kept.</summary>
    [Fact]
    public void Distances_nearer_than_0_2_m_are_told_all_the_same()
    {
        string text = FindingSentences.Text(Find(Input(16.13) with { Place = "FR", AntennaLengthMetres = 0.6 }, "exposure-public"));

        Assert.Contains("at 0.027 m, over a ground that reflects at 0.044 m", text, StringComparison.Ordinal);
        Assert.Contains("keep 0.20 m", text, StringComparison.Ordinal);
    }

    /// <summary>2·D²/λ at 869.525 MHz: 2·0.6²·2.9004/m = 2.09 m; λ/(2π) = 0.0549 m.</summary>
    [Fact]
    public void Where_the_formula_begins_to_hold_is_told()
    {
        string text = Note(Input(21) with { AntennaLengthMetres = 0.6 }, "near-field");

        Assert.Contains("2.09 m on (2·D²/λ)", text, StringComparison.Ordinal);
        Assert.Contains("0.055 m (λ/2π)", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Near_the_antenna_the_formula_is_called_a_guide()
    {
        Assert.Contains("nearer to the antenna than it holds", FindingSentences.Text(Find(Input(21) with { AntennaLengthMetres = 1.5 }, "exposure-public")), StringComparison.Ordinal);
        Assert.Contains("not known without the antenna's length", FindingSentences.Text(Find(Input(21), "exposure-workers")), StringComparison.Ordinal);
    }

    /// <summary>By hand: 36 dBm (3.98 W) at 915 MHz by the law of the United States: 0.365 m with reflection; a quarter of the time on the air halves it.</summary>
    [Fact]
    public void Pauses_are_shown_where_the_rule_and_the_plan_let_them_count_and_never_relied_on()
    {
        TrafficEstimate quarter = TrafficEstimate.Of(new() { OwnMean = 0, OwnWorst = 0, RelayedMean = 450, RelayedWorst = 450 }, 1, "");
        ExposureInput input = Input(36) with { Region = Stations.Catalogue.Law.Region("US"), FrequencyHz = 915e6, Traffic = quarter };
        ExposureResult law = RfExposure.Distances(input, Exposed.Public, 36).Law!;

        Assert.Equal(0.3647, law.KeepMetres, 1e-4);
        Assert.Equal(0.25, law.AirShare!.Value, 1e-12);
        Assert.Equal(law.ReflectedMetres / 2, law.AveragedMetres!.Value, 1e-9);
        Assert.Null(RfExposure.Distances(input with { Traffic = TrafficEstimate.Of(new(), 1, "") }, Exposed.Public, 36).Law!.AveragedMetres);
    }

    [Fact]
    public void The_guidelines_stand_beside_the_law_and_alone_they_decide_nothing()
    {
        Assert.Contains("ICNIRP 2020", Note(Input(21), "guidelines"), StringComparison.Ordinal);

        Finding alone = Find(Input(21) with { Region = null, People = new(5) }, "exposure-public");
        Assert.Equal(Verdict.Unknown, alone.Verdict);
        Assert.Equal("ICNIRP 2020", alone.Details["document"]);
        Assert.Equal(Verdict.Unknown, Find(Input(21) with { Region = Stations.Catalogue.Law.Region("UK"), People = new(5) }, "exposure-public").Verdict);
    }

    [Theory]
    [InlineData(null, Verdict.Unknown)]
    [InlineData(5.0, Verdict.Unknown)]
    [InlineData(0.1, Verdict.Fails)]
    public void Without_a_power_0_2_m_are_kept_and_what_is_missing_is_told(double? metres, Verdict verdict)
    {
        ExposureInput input = Input(21) with { EirpDbm = null, MissingToSend = ["sites/west/fit-outs/roof/antenna/gain"], People = new(metres, metres) };

        foreach (string code in (string[])["exposure-public-unknown", "exposure-workers-unknown"])
        {
            Finding finding = Find(input, code);
            Assert.Equal(verdict, finding.Verdict);
            Assert.Equal(0.2, finding.Limit);
            Assert.Contains("for want of sites/west/fit-outs/roof/antenna/gain: keep 0.20 m", FindingSentences.Text(finding), StringComparison.Ordinal);
        }
    }

    /// <summary>The rows end at 2 GHz: beyond, nothing is worked out, and that is said.</summary>
    [Fact]
    public void A_frequency_without_limits_is_unknown_by_name()
    {
        Finding finding = Find(Input(21) with { FrequencyHz = 2.45e9, People = new(5) }, "exposure-public-unknown");

        Assert.Equal(Verdict.Unknown, finding.Verdict);
        Assert.Contains("a limit of exposure at 2450.0 MHz", FindingSentences.Text(finding), StringComparison.Ordinal);
    }

    private static ExposureInput Input(double eirpDbm) => new()
    {
        PlanPath = "sites/west/fit-outs/roof",
        Region = Stations.Catalogue.Law.Region("EU"),
        Book = Stations.Catalogue.Law,
        FrequencyHz = 869.525e6,
        EirpDbm = Estimate.Exactly(eirpDbm),
    };

    private static string Note(ExposureInput input, string line) => Assert.Single(RfExposure.Examine(input).Ledgers[0].Lines, one => one.Code == line).Note;

    private static double Keep(double eirpDbm) => RfExposure.Distances(Input(eirpDbm), Exposed.Public, eirpDbm).Law!.KeepMetres;

    private static Finding Find(ExposureInput input, string code) => Assert.Single(RfExposure.Examine(input).Findings, finding => finding.Code == code);
}
