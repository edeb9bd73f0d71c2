using Mastwright.Plans;
using Mastwright.Station.BoxClimate;
using Mastwright.Station.Earthing;
using Mastwright.Station.Hazards;
using Mastwright.Station.Mast;
using Mastwright.Station.Wind;
using Mastwright.Storage.Plans;

namespace Mastwright.Storage.Tests.Plans;

/// <summary>Wind, mast, hazards and earth as a plan gives them.</summary>
public sealed class StandingPlanTests
{
    private const string Mast =
        "mastwright: 1\nname: One\n" + SamplePlans.Modem
        + "sites:\n  one:\n    position: \"46.4, -18.7\"\n    fit-outs:\n      a:\n        antenna: {height: 10 m}\n        mast:\n          tubes: [{outer-diameter: 48.3 mm, wall: 3.2 mm, grade: s235, length: 3 m}]\n          guys: {height: 2 m, angle: 45°, diameter: 4 mm, length: 4 m}\n          box: {width: 20 cm, height: 30 cm, above-bracket: 2.5 m}\n          cable: {diameter: 7 mm, length: 2.9 m}\n        earthing: {class: III, rods: {length: 1.5 m, diameter: 16 mm}}\n        box: {width: 200 mm, height: 300 mm, depth: 120 mm, ip: IP66, heat: 2 W, parts: {board: {rise: 8 K, temperature: -20…60 °C}}}\n    wind: {speed: 26 m/s, return-period: 50 years}\n";

    [Fact]
    public void Every_value_arrives_in_its_unit()
    {
        using PlanFolderFixture folder = new();
        Site site = PlanFileTests.Good(folder.Read(SamplePlans.Whole)).Plan.Sites[0];
        FitOut fitOut = site.FitOuts[0];

        Assert.Equal(1.8, fitOut.Mast!.Tubes[1].LengthMetres, 1e-12);
        Assert.Equal(0.0483, fitOut.Mast.Tubes[1].OuterDiameterMetres!.Value, 1e-12);
        Assert.False(fitOut.Mast.Tubes[0].WeldedAtFoot);
        Assert.Null(fitOut.Mast.Tubes[1].WeldedAtFoot);
        Assert.Equal(2500, fitOut.Mast.BracketCapacityNewtons);
        Assert.Equal(0.06, fitOut.Mast.Cable!.KilogramsPerMetre);
        Assert.Equal(9000, fitOut.Mast.Guys!.BreakingNewtons);
        Assert.Equal(4, fitOut.Mast.Guys.Count);
        Assert.Equal(0.9, fitOut.Antenna.MassKilograms);
        Assert.Equal(0.05, fitOut.Antenna.WindAreaSquareMetres);
        Assert.Equal(16, fitOut.Earthing!.ConductorSquareMillimetres!.Value, 1e-9);
        Assert.Equal(AirTermination.Rod, fitOut.Earthing.AirTermination);
        Assert.Equal(100, fitOut.Earthing.SoilOhmMetres!.Value.Low);
        Assert.True(fitOut.Earthing.HasLightningProtection);
        Assert.Equal("stainless-steel", fitOut.Mast.Clamp);
        Assert.Equal(new BoxSurface(0.2, 0.3, 0.12), fitOut.Box.Surface);
        Assert.Equal(BoxMounting.Free, fitOut.Box.Mounting);
        Assert.Equal(BoxShade.Open, fitOut.Box.Shade);
        Assert.Equal(0.98, fitOut.Box.NightHumidity!.Value, 1e-12);
        Assert.Equal(1.5, fitOut.Box.HeatWatts!.Value.Low);
        Assert.Equal(BoxFacing.Side, fitOut.Box.Entries);
        Assert.Equal(BoxFacing.Down, fitOut.Box.Connectors);
        Assert.Equal("IP66/IP67", fitOut.Box.Code!.Text);
        Assert.Equal(8, fitOut.Box.Parts[0].RiseKelvin);
        Assert.Equal(-20, fitOut.Box.Parts[0].RatedCelsius!.Value.Low);
        Assert.Equal(("gland", "IP66"), (fitOut.Box.Parts[1].Name, fitOut.Box.Parts[1].Code!.Text));
    }

    [Fact]
    public void A_site_s_wind_stands_over_the_plan_s_and_a_fit_out_s_hazards_over_the_site_s()
    {
        using PlanFolderFixture folder = new();
        Plan plan = PlanFileTests.Good(folder.Read(SamplePlans.Whole)).Plan;
        Site site = plan.Sites[0];

        Assert.Equal("II", plan.Wind!.Terrain);
        Assert.Equal("III", site.Wind!.Terrain);
        Assert.Equal(26, site.Wind.SpeedMetresPerSecond);
        Assert.Equal(100, site.Wind.DesignReturnPeriodYears);
        Assert.Equal(0.6, site.Wind.IceWindShare!.Value, 1e-12);
        Assert.Equal(WindAveraging.TenMinuteMean, site.Wind.Averaging);
        Assert.Equal(FallZone.PublicWay, site.Hazards!.FallZone);
        Assert.Equal(FallZone.OwnGround, site.FitOuts[0].Hazards!.FallZone);
        Assert.Equal(6, site.FitOuts[0].Hazards!.LocalClearanceMetres);
        Assert.Equal(Consent.Asked, site.FitOuts[0].Hazards!.Planning);
        Assert.Null(site.FitOuts[1].Hazards);
    }

    [Fact]
    public void A_class_of_lightning_protection_that_is_none_is_answered_with_those_that_are()
    {
        using PlanFolderFixture folder = new();
        PlanProblem problem = Assert.Single(folder.Read(Mast.Replace("class: III", "class: V", StringComparison.Ordinal)).Problems);

        Assert.Contains("I, II, III, IV", problem.Wanted, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("gable")]
    [InlineData("anchor")]
    [InlineData("chimney")]
    [InlineData("masonry")]
    public void What_brackets_are_fixed_to_is_a_word(string word)
    {
        using PlanFolderFixture folder = new();
        Plan plan = PlanFileTests.Good(folder.Read(Mast.Replace("          guys:", $"          bracket: {{fixed-to: {word}}}\n          guys:", StringComparison.Ordinal))).Plan;

        Assert.Equal(word, plan.Sites[0].FitOuts[0].Mast!.FixedTo);
    }

    [Theory]
    [InlineData("wall: 3.2 mm", "wall: 25 mm", "sites/one/fit-outs/a/mast/tubes/1/wall", "radius")]
    [InlineData("wall: 3.2 mm", "wall: -3.2 mm", "sites/one/fit-outs/a/mast/tubes/1/wall", "")]
    [InlineData("wall: 3.2 mm, ", "", "sites/one/fit-outs/a/mast/tubes/1", "no size")]
    [InlineData("outer-diameter: 48.3 mm", "size: steel-48.3x3.2, outer-diameter: 48.3 mm", "sites/one/fit-outs/a/mast/tubes/1", "keep one")]
    [InlineData("width: 200 mm", "width: -200 mm", "sites/one/fit-outs/a/box/width", "")]
    [InlineData("depth: 120 mm", "depth: 120 m", "sites/one/fit-outs/a/box/depth", "")]
    [InlineData("ip: IP66", "ip: IP76", "sites/one/fit-outs/a/box/ip", "IP code")]
    [InlineData("temperature: -20…60 °C", "temperature: 60 °C", "sites/one/fit-outs/a/box/parts/board/temperature", "highest")]
    [InlineData("heat: 2 W", "heat: -2 W", "sites/one/fit-outs/a/box/heat", "")]
    [InlineData("rise: 8 K", "rise: 8 °C", "sites/one/fit-outs/a/box/parts/board/rise", "temperature")]
    [InlineData("length: 3 m", "length: -3 m", "sites/one/fit-outs/a/mast/tubes/1/length", "")]
    [InlineData("height: 2 m", "height: 3.5 m", "sites/one/fit-outs/a/mast/guys/height", "above the top")]
    [InlineData("above-bracket: 2.5 m", "above-bracket: 10 m", "sites/one/fit-outs/a/mast/box/above-bracket", "above the top")]
    [InlineData("length: 2.9 m", "length: 30 m", "sites/one/fit-outs/a/mast/cable/length", "beyond the top")]
    [InlineData("class: III", "class: V", "sites/one/fit-outs/a/earthing/class", "")]
    [InlineData("speed: 26 m/s", "speed: -26 m/s", "sites/one/wind/speed", "")]
    [InlineData("speed: 26 m/s", "speed: 26 m", "sites/one/wind/speed", "is a length")]
    [InlineData("50 years", "50", "sites/one/wind/return-period", "return period")]
    [InlineData("50 years", "1 years", "sites/one/wind/return-period", "return period")]
    [InlineData("diameter: 16 mm", "diameter: 0 mm", "sites/one/fit-outs/a/earthing/rods/diameter", "")]
    [InlineData("length: 1.5 m", "length: 0 m", "sites/one/fit-outs/a/earthing/rods/length", "")]
    public void What_cannot_be_is_refused_with_its_key(string sound, string broken, string path, string says)
    {
        using PlanFolderFixture folder = new();
        Assert.Empty(folder.Read(Mast).Problems);

        PlanReading reading = folder.Read(Mast.Replace(sound, broken, StringComparison.Ordinal));
        PlanProblem problem = Assert.Single(reading.Problems);
        Assert.Equal(path, problem.Path);
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
    }
}
