using Mastwright.Findings;
using Mastwright.Station.Wind;

namespace Mastwright.Tests.Station.Wind;

public sealed class WindReadingTests
{
    private static readonly BasicWind Gust = new()
    {
        SpeedMetresPerSecond = 50,
        Averaging = WindAveraging.ThreeSecondGust,
        ReturnPeriodYears = 700,
        Level = WindLevel.Ultimate,
        Form = WindForm.Asce,
        Exposure = "C",
    };

    [Fact]
    public void The_model_gives_the_pressure_of_the_formula_and_a_ledger_that_sums_to_it()
    {
        WindModel wind = Model(WindRowsForTests.Plain);
        Ledger ledger = wind.Ledger(10, "here");

        Assert.Equal(993.84, wind.PressurePa(10), 0.01); // Worked out by an independent script.
        Assert.Equal(wind.PressurePa(10), ledger.Total, 1e-9);
        Assert.Equal(422.5, ledger.Lines[0].Value, 1e-9); // ½·1.25·26².
        Assert.Contains(wind.Assumptions, assumption => assumption.Code == "wind-orography");
    }

    [Fact]
    public void The_american_form_gives_its_own_pressure()
    {
        WindModel wind = Model(Gust);

        Assert.Equal(0.613 * 0.8488 * 0.95 * 2500, wind.PressurePa(4.57), 0.2);
        Assert.Equal(0.85, wind.StructuralFactor);
        Assert.Equal(1, wind.LoadFactor);
    }

    public static TheoryData<BasicWind, string> Refused => new()
    {
        { WindRowsForTests.Plain with { Averaging = WindAveraging.ThreeSecondGust }, "gust-factor" },
        { WindRowsForTests.Plain with { Level = WindLevel.Ultimate }, "ultimate-factor" },
        { WindRowsForTests.Plain with { ReturnPeriodYears = 10 }, "design-return-period" },
        { Gust with { Averaging = WindAveraging.TenMinuteMean }, "gust-factor" },
        { Gust with { Level = WindLevel.Characteristic, ReturnPeriodYears = 50 }, "ultimate-factor" },
        { Gust with { ReturnPeriodYears = 50 }, "of that kind" },
    };

    [Theory, MemberData(nameof(Refused))]
    public void A_form_refuses_a_wind_of_another_kind_and_names_the_conversion(BasicWind wind, string conversion)
    {
        Assert.Null(WindReading.Of(wind, WindRowsForTests.Catalogue, "wind", out Finding? problem));
        Assert.Equal("wind-kind-refused", problem!.Code);
        Assert.Equal(Verdict.Unknown, problem.Verdict);
        Assert.Contains(conversion, FindingSentences.Advice(problem), StringComparison.Ordinal);
    }

    [Fact]
    public void A_conversion_that_was_asked_for_is_a_line_of_the_ledger()
    {
        WindModel plain = Model(WindRowsForTests.Plain);
        WindModel gust = Model(WindRowsForTests.Plain with { SpeedMetresPerSecond = 39, Averaging = WindAveraging.ThreeSecondGust, GustFactor = 1.5 });
        WindModel ten = Model(WindRowsForTests.Plain with { ReturnPeriodYears = 10, DesignReturnPeriodYears = 50 });

        Assert.Equal(plain.PressurePa(10), gust.PressurePa(10), 1e-6);
        Assert.Contains(gust.Ledger(10, "").Lines, line => line.Code == "gust-to-mean");
        Assert.Equal(plain.PressurePa(10) / Math.Pow(EurocodeWind.ProbabilityFactor(10), 2), ten.PressurePa(10), 1e-6);
        Assert.Contains(ten.Ledger(10, "").Lines, line => line.Code == "return-period");
    }

    [Fact]
    public void What_is_missing_is_named()
    {
        Assert.Null(WindReading.Of(new() { SpeedMetresPerSecond = 26 }, WindRowsForTests.Catalogue, "wind", out Finding? problem));
        Assert.Equal("wind-unknown", problem!.Code);
        Assert.Equal("averaging, return-period, level, form", problem.Details["missing"]);

        Assert.Null(WindReading.Of(WindRowsForTests.Plain with { Terrain = "V" }, WindRowsForTests.Catalogue, "wind", out problem));
        Assert.Equal("wind-category-unknown", problem!.Code);
    }

    private static WindModel Model(BasicWind wind)
    {
        WindModel? model = WindReading.Of(wind, WindRowsForTests.Catalogue, "wind", out Finding? problem);
        Assert.Null(problem);
        return model!;
    }
}
