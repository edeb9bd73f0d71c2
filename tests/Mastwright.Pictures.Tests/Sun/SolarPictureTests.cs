using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Sun;
using Mastwright.Pictures.Writers;
using Mastwright.Quantities;
using Mastwright.Station.HoldUp;
using Mastwright.Station.Sun;

namespace Mastwright.Pictures.Tests.Sun;

public sealed class SolarPictureTests
{
    // Invented: a cell that is alike at every temperature.
    private static readonly CellRow Cell = new()
    {
        Key = "made", Name = "made cell", AmpereHours = 3, NominalVolts = 3.6, FullVolts = 4.2, CutOffVolts = 3, RestVolts = LinearCurve.Level(3.7),
        CapacityByCelsius = new(LinearCurve.Level(1), LinearCurve.Level(1), LinearCurve.Level(1)), OhmAmpereHours = 0.1, ResistanceByCelsius = LinearCurve.Level(1), AgedResistanceFactor = 1, RatedHours = 5, PeukertExponent = 1,
        ChargeRateByCelsius = LinearCurve.Level(0.5), ChargeLeastCelsius = 0, DischargeLeastCelsius = -20, MostCelsius = 60, MostDischargeRate = 1, LifeYears = Estimate.Exactly(10),
        ChargeEfficiency = 0.99, ChargeTaper = Estimate.Exactly(1.2), Source = "made up",
    };

    private static readonly SolarSetup Setup = new()
    {
        Panel = new() { Watts = 2, TiltDegrees = 60, AzimuthDegrees = 180 },
        Pack = new() { Cell = Cell, Series = 1, Parallel = 3, CellAmpereHours = 3 },
        AgeFactor = 0.9,
        LoadWatts = 0.3,
        PeakWatts = 0.3,
        CutOffVolts = 3,
        Weather = new MonthlyClimate { LightKilowattHours = [1, 2, 3, 4, 5, 6, 6, 5, 4, 3, 2, 1], Celsius = [5, 5, 7, 9, 12, 15, 17, 17, 15, 11, 8, 6] }.Year(new(46, -18), "picture"),
        Place = new(46, -18),
    };

    private static readonly SolarYearResult Year = SolarYear.Run(Setup, SolarYear.YieldOf(Setup));

    [Theory]
    [InlineData(Theme.Light)]
    [InlineData(Theme.Dark)]
    public void Every_day_has_its_bar_and_every_hour_its_place_on_the_line(Theme theme)
    {
        Drawing drawing = SolarPicture.Draw("Hut", Setup, Year, 1, theme);
        Assert.Equal(28, drawing.Group("offered")!.Members.OfType<AreaShape>().Count());
        Assert.Equal(28 * 24, Assert.Single(drawing.Group("charge")!.Members.OfType<LineShape>(), line => line.Points.Length > 2).Points.Length);
        Assert.Empty(drawing.MissingGlyphs());
        Assert.All(drawing.Texts(), text => Assert.InRange(text.At.X, 0, drawing.WidthPixels));
    }

    [Fact]
    public void What_cannot_be_seen_is_told_in_words()
    {
        Drawing drawing = SolarPicture.Draw("Hut", Setup, Year, Year.WorstMonth, Theme.Light);
        double without = Year.WithoutByHour.AsSpan(WeatherYear.FirstHourOf(Year.WorstMonth), 24 * WeatherYear.DaysOf(Year.WorstMonth)).ToArray().Sum();
        Assert.True(without > 1);
        Assert.Contains(FormattableString.Invariant($"{without:0} h of the month without service"), drawing.Description, StringComparison.Ordinal);
        Assert.Contains(drawing.Group("charge")!.Members.OfType<AreaShape>(), area => area.Fill.Hatch is not null);
        Assert.Contains("<svg", SvgWriter.Write(drawing), StringComparison.Ordinal);
    }

    [Fact]
    public void There_is_no_thirteenth_month() => Assert.Throws<ArgumentOutOfRangeException>(() => SolarPicture.Draw("Hut", Setup, Year, 12, Theme.Light));
}
