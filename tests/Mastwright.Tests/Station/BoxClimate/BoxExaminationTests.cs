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
        Ledger ledger = result.Examination.Ledgers.Single(one => one.Title.Contains("hottest", StringComparison.Ordinal));
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
