using CsCheck;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.BoxClimate;
using Mastwright.Station.Supply;

namespace Mastwright.Tests.Station.BoxClimate;

public sealed class BoxExaminationTests
{
    internal static readonly BoxInput Input = new()
    {
        FitOutPath = "p",
        Box = new()
        {
            Surface = new(0.2, 0.3, 0.12),
            Material = "plastic",
            Colour = "black",
            Mounting = BoxMounting.Free,
            Shade = BoxShade.Open,
            Seal = "sealed",
            OutsideCelsius = Estimate.Of(-8, 12, 32),
            HeatWatts = Estimate.Exactly(2),
            Place = "rain",
            Code = BoxRowsForTests.Code("IP66"),
            Entries = BoxFacing.Down,
            Connectors = BoxFacing.Down,
            Parts = [new("p/box/parts/board", "board", Estimate.Between(-20, 60), 8, null)],
        },
        Catalogue = BoxRowsForTests.Catalogue,
    };

    [Fact]
    public void The_hottest_hour_comes_out_as_worked_by_hand()
    {
        BoxResult result = BoxExamination.Of(Input);

        // Area 1.8·0.3·0.32 + 1.4·0.2·0.12 = 0.2064 m². Films: outside at 32 °C 4 + 4·0.9·σ·305.15³ = 9.800, inside 1/(1/3.5 − 1/9.143) = 5.671.
        // Broadest side √(0.06² + 0.036² + 0.024²) = 0.07397 m²: 70.27 W of sun taken up, of which 5.671/(5.671 + 9.800) = 36.66 % act inside.
        // UA = 0.2064/(1/5.671 + 1/9.800) = 0.7414 W/K; leaks carry off 1206·0.0072·0.01/3600 W/K, next to nothing.
        double rise = (2 + (70.27 * 0.3666)) / 0.7414;
        Assert.Equal(32 + rise, result.InsideCelsius!.Value.High, 0.1);
        Ledger ledger = result.Examination.Ledgers.Single(one => one.Title == "air in the box in the hottest hour");
        Assert.Equal(2 / 0.7414, ledger.Lines.Single(line => line.Code == "heat").Value, 0.01);
        Assert.Equal(result.InsideCelsius.Value.High, ledger.Total, 1e-9);

        Finding hot = Single(result, "box-part-hot");
        Assert.Equal(Verdict.Fails, hot.Verdict);
        Assert.Equal(32 + rise + 8, hot.Value!.Value.Median, 0.1);
        Assert.Contains("in white", FindingSentences.Text(hot), StringComparison.Ordinal);
        Assert.Contains("in the shade", FindingSentences.Text(hot), StringComparison.Ordinal);
        Assert.Contains("catch fire", FindingSentences.Text(hot), StringComparison.Ordinal);
        Assert.Equal(Verdict.Ok, Single(result, "box-part-cold").Verdict);
    }

    [Fact]
    public void What_is_missing_is_named_and_nothing_is_worked_out()
    {
        BoxResult result = BoxExamination.Of(Input with { Box = Input.Box with { Colour = "", OutsideCelsius = null, HeatWatts = null } });
        Finding open = Single(result, "box-climate-unknown");
        Assert.Equal(Verdict.Unknown, open.Verdict);
        Assert.Equal("colour, outside, heat, or the supply with its loads", open.Details["missing"]);
        Assert.Null(result.InsideCelsius);

        Assert.Equal("box-not-described", BoxExamination.Of(Input with { Box = new() }).Examination.Findings.Single().Code);
        Assert.Empty(BoxExamination.Of(Input with { Box = new() { TemperatureCelsius = Estimate.Exactly(20) } }).Examination.Findings);
        Assert.Equal("white", Single(BoxExamination.Of(Input with { Box = Input.Box with { Colour = "wite" } }), "box-row-unknown").Details["near"].Split('\'')[1]);
    }

    [Fact]
    public void Water_is_held_against_the_place()
    {
        Assert.Equal(Verdict.Ok, Single(BoxExamination.Of(Input), "box-ingress").Verdict);
        Assert.Equal(Verdict.Fails, Single(Boxed(box => box with { Code = BoxRowsForTests.Code("IP67") }), "box-ingress").Verdict);
        Assert.Equal(Verdict.Tight, Single(Boxed(box => box with { Entries = BoxFacing.Side, DripLoops = false }), "box-entries").Verdict);
        Assert.Equal(Verdict.Ok, Single(Boxed(box => box with { Entries = BoxFacing.Side, DripLoops = true }), "box-entries").Verdict);
        Assert.Equal(Verdict.Fails, Single(Boxed(box => box with { Connectors = BoxFacing.Up }), "box-connectors").Verdict);
        Assert.Equal("where cables come in (entries), which way its connectors face (connectors)",
            Single(Boxed(box => box with { Entries = BoxFacing.NotSaid, Connectors = BoxFacing.NotSaid }), "box-water-unknown").Details["missing"]);
        BoxPart gland = new("p/box/parts/gland", "gland", null, null, BoxRowsForTests.Code("IP54"));
        Assert.Contains(Boxed(box => box with { Parts = [gland] }).Examination.Findings, finding => finding is { Code: "box-ingress", Subject: "p/box/parts/gland", Verdict: Verdict.Fails });
    }

    [Fact]
    public void A_box_that_cannot_breathe_is_held_against_the_tests_of_its_code()
    {
        Finding pressure = Single(BoxExamination.Of(Input), "box-pressure");
        Assert.Equal(Verdict.Tight, pressure.Verdict);
        Assert.Equal(-SealedAir.OverpressureKilopascals(20, BoxExamination.Of(Input).InsideCelsius!.Value.Low), pressure.Value!.Value.Median, 1e-9);
        Assert.DoesNotContain(Boxed(box => box with { Seal = "vented" }).Examination.Findings, finding => finding.Code == "box-pressure");
    }

    [Fact]
    public void A_temperature_that_is_given_and_cannot_be_is_told()
    {
        Assert.Equal(Verdict.Tight, Single(Boxed(box => box with { TemperatureCelsius = Estimate.Of(0, 12, 38) }), "box-temperature-differs").Verdict);
        Assert.DoesNotContain(Boxed(box => box with { TemperatureCelsius = Estimate.Of(-20, 12, 80) }).Examination.Findings, finding => finding.Code == "box-temperature-differs");
    }

    /// <summary>A day whose hottest hour has 45 °C and a strong sun and whose coldest has -20 °C; the plan's own air ends at -8 and 32 °C.</summary>
    private static readonly BoxInput Harsh = Input with
    {
        YearSource = "year.epw",
        Year = [new(45, 0.3, 900, 100, 900, 0, null), new(45, 0.3, 900, 100, 900, 0, null), .. Enumerable.Repeat(new BoxHour(10, 0.5, 0, 0, 0, 0, null), 20), new(-20, 0.9, 0, 0, 0, 0, null)],
    };

    [Fact]
    public void A_part_is_judged_by_the_year_where_the_year_is_harsher_than_the_plan()
    {
        // A board that bears what the hour that is designed for comes to, and less than the year's.
        double design = BoxExamination.Of(Input).InsideCelsius!.Value.High;
        double year = new[] { Harsh.Year[0] }.Max(hour => Harsher().Of(hour).Inside);
        Assert.True(year > design + 2);
        BoxPart board = new("p/box/parts/board", "board", Estimate.Between(-15, design + 1), 0, null);
        BoxResult result = BoxExamination.Of(Harsh with { Box = Harsh.Box with { Parts = [board] } });

        Finding hot = Single(result, "box-part-hot");
        Assert.Equal(Verdict.Fails, hot.Verdict);
        Assert.Equal(year, hot.Value!.Value.Median, 1e-9);
        Assert.Contains("is above that for 2 hours", FindingSentences.Text(hot), StringComparison.Ordinal);
        Assert.Contains("with 45 °C outside", FindingSentences.Text(hot), StringComparison.Ordinal);
        Assert.Equal(Verdict.Fails, Single(result, "box-part-cold").Verdict);
        Assert.Equal(year, result.InsideCelsius!.Value.High, 1e-9);

        Ledger ledger = result.Examination.Ledgers.Single(one => one.Title == "air in the box in the hottest hour");
        Assert.Equal(year - design, ledger.Lines.Single(line => line.Code == "year").Value, 1e-9);
        Assert.Equal(year, ledger.Total, 1e-9);
        Assert.Equal(result.InsideCelsius.Value.Low, result.Examination.Ledgers.Single(one => one.Title == "air in the box in the coldest night, with nothing on").Total, 1e-9);
        Assert.Equal(year, result.Examination.Ledgers.Single(one => one.Title == "board in the hottest hour").Total, 1e-9);

        static BoxModel Harsher() => BoxExamination.Of(Harsh).Model!;
    }

    [Fact]
    public void Hours_above_a_rating_are_never_ok() =>
        Gen.Double[20, 90].Sample(limit =>
        {
            BoxPart board = new("p/box/parts/board", "board", Estimate.Between(-40, limit), 3, null);
            Finding hot = Single(BoxExamination.Of(Harsh with { Box = Harsh.Box with { Parts = [board] } }), "box-part-hot");
            Assert.True(hot.Details["hours"].Contains(" 0 hours", StringComparison.Ordinal) || hot.Verdict == Verdict.Fails, $"{limit}: {hot.Details["hours"]}");
        });

    [Fact]
    public void Air_outside_that_is_narrower_than_the_year_is_told()
    {
        Finding narrow = Single(BoxExamination.Of(Harsh), "box-outside-narrow");
        Assert.Equal(13, narrow.Value!.Value.Median, 1e-12); // 45 against 32 °C.
        Assert.DoesNotContain(BoxExamination.Of(Harsh with { Box = Harsh.Box with { OutsideCelsius = Estimate.Of(-20, 12, 45) } }).Examination.Findings, finding => finding.Code == "box-outside-narrow");
        Assert.DoesNotContain(BoxExamination.Of(Harsh with { IsMadeYear = true }).Examination.Findings, finding => finding.Code == "box-outside-narrow");
    }

    [Fact]
    public void A_made_year_tells_dew_and_leaves_the_extremes_to_the_plan()
    {
        BoxResult made = BoxExamination.Of(Harsh with { IsMadeYear = true, YearSource = "a made year" });

        Assert.Equal(BoxExamination.Of(Input).InsideCelsius!.Value.High, made.InsideCelsius!.Value.High, 1e-12);
        Assert.NotNull(made.DewHours);
        Assert.Contains(made.Examination.Assumptions, assumption => assumption.Code == "box-made-year");
        BoxResult bare = BoxExamination.Of(Harsh with { IsMadeYear = true, Box = Harsh.Box with { OutsideCelsius = null } });
        Assert.Equal((-20.0, 45.0), (bare.OutsideCelsius!.Value.Low, bare.OutsideCelsius.Value.High));
        Assert.Contains(bare.Examination.Assumptions, assumption => assumption.Code == "box-made-outside");
    }

    [Fact]
    public void Dew_without_a_year_is_unknown_and_says_what_it_lacks()
    {
        BoxResult result = BoxExamination.Of(Input with { YearLacks = "weather or climate at the site" });
        Finding dew = Single(result, "box-dew-year-unknown");

        Assert.Equal(Verdict.Unknown, dew.Verdict);
        Assert.Contains("for want of weather", FindingSentences.Text(dew), StringComparison.Ordinal);
        Assert.Null(result.DewHours);
        Assert.Contains("weather", result.DewLacks, StringComparison.Ordinal);
    }

    [Fact]
    public void A_year_of_weather_gives_dew_hours_as_a_range_and_what_would_change_them()
    {
        BoxHour[] hours = [.. Enumerable.Range(0, 400).Select(i => new BoxHour(10 + (6 * Math.Sin(i * Math.PI / 12)), 0.9, 0, 0, 0, 0, null))];
        BoxResult result = BoxExamination.Of(Input with { Year = [.. hours], YearSource = "year.epw", Box = Input.Box with { HeatWatts = Estimate.Exactly(0.1), OutsideCelsius = null } });
        Finding dew = Single(result, "box-dew-year");
        Assert.Equal(result.DewHours, dew.Value);
        Assert.Equal(Verdict.Tight, dew.Verdict);
        Assert.Contains("vented", dew.Details["others"], StringComparison.Ordinal);
        Assert.Contains("under a hood", dew.Details["others"], StringComparison.Ordinal);
        Assert.Contains("with 2 W more heat", dew.Details["others"], StringComparison.Ordinal);
    }

    [Fact]
    public void Two_metals_far_apart_in_the_series_are_told_with_the_one_that_goes()
    {
        BoxCatalogue rows = BoxRowsForTests.Catalogue.Box;
        Finding pair = GalvanicPair.Judge("p/mast/clamp", "the clamp", "stainless-steel", "zinc", rows.Places.Find("rain"), rows)!;
        Assert.Equal(Verdict.Tight, pair.Verdict);
        Assert.Equal(0.7, pair.Value!.Value.Median, 1e-12);
        Assert.Contains("the zinc goes", FindingSentences.Text(pair), StringComparison.Ordinal);
        Assert.Equal(Verdict.Ok, GalvanicPair.Judge("p", "it", "zinc", "zinc", null, rows)!.Verdict);
        Assert.Equal("box-row-unknown", GalvanicPair.Judge("p", "it", "gold", "zinc", null, rows)!.Code);
    }

    [Fact]
    public void The_heat_in_the_box_is_that_of_all_behind_the_last_cable()
    {
        SupplyPart source = new SupplySource("s/1", SupplySourceKind.MainsAdapter);
        SupplyPart cable = new SupplyCable("s/2", true, "cat-5e", Estimate.Exactly(10));
        SupplyPart converter = new SupplyConverter("s/3", 5);
        SupplyPart board = new SupplyLoad("s/4/a/1", false, "");
        SupplyPart far = new SupplyLoad("s/4/b/2", false, "");
        SupplyPart fork = new SupplyBranches("s/4", [new("a", [board]), new("b", [new SupplyCable("s/4/b/1", false, "x", Estimate.Exactly(1)), far])]);
        SupplyResult result = new()
        {
            Mean = [Point("s/1", 1), Point("s/2", 2), Point("s/3", 0.5), Point("s/4/a/1", 3), Point("s/4/b/1", 0.1), Point("s/4/b/2", 0.7)],
        };
        Ledger heat = BoxHeat.Of([source, cable, converter, fork], result)!;
        Assert.Equal(["s/3", "s/4/a/1", "s/4/b/2"], heat.Lines.Select(line => line.Source));
        Assert.Equal(4.2, heat.Total, 1e-12);
        Assert.Null(BoxHeat.Of([source], SupplyResult.Nothing));

        static SupplyPoint Point(string path, double heatWatts) => new(path, path, 5, 1, 5, heatWatts);
    }

    internal static BoxResult Boxed(Func<BoxFit, BoxFit> change) => BoxExamination.Of(Input with { Box = change(Input.Box) });

    private static Finding Single(BoxResult result, string code) => Assert.Single(result.Examination.Findings, finding => finding.Code == code);
}
