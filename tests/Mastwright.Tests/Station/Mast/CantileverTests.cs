using System.Collections.Immutable;
using CsCheck;
using Mastwright.Station.Mast;

namespace Mastwright.Tests.Station.Mast;

/// <summary>The beam against worked figures and the textbook's closed forms.</summary>
public sealed class CantileverTests
{
    private static readonly TubeSection Steel603 = new(0.0603, 0.0032);

    [Fact]
    public void A_mast_under_wind_and_a_tip_load_agrees_with_the_worked_figures()
    {
        // 60.3 × 3.2 steel, 3 m free, 71.914 N/m and 71.56 N at the tip (q 993.84 Pa, cf 1.2): worked out by an independent script.
        Cantilever mast = new([(3, 210e9 * Steel603.SecondMomentMetres4)], [Wind(71.914, 3), Tip(71.56, 3)]);

        Assert.Equal(538.28, mast.MomentNewtonMetres(0), 0.02);
        Assert.Equal(69.154e6, mast.MomentNewtonMetres(0) / Steel603.ElasticModulusMetres3, 5e3);
        Assert.Equal(27.842e-3, mast.DeflectionMetres(3), 2e-6);
        Assert.Equal(0.7506, double.RadiansToDegrees(mast.SlopeRadians(3)), 1e-4);
    }

    [Theory]
    [InlineData(0.0483, 0.0032, 210e9, 41.69, 10.960)]
    [InlineData(0.05, 0.003, 70e9, 40.71, 31.019)]
    public void A_tip_load_on_two_metres_agrees_with_the_worked_figures(double diameter, double wall, double modulus, double stressMpa, double wayMillimetres)
    {
        TubeSection section = new(diameter, wall);
        Cantilever mast = new([(2, modulus * section.SecondMomentMetres4)], [Tip(100, 2)]);

        Assert.Equal(stressMpa, mast.MomentNewtonMetres(0) / section.ElasticModulusMetres3 / 1e6, 5e-3);
        Assert.Equal(wayMillimetres, mast.DeflectionMetres(2) * 1000, 1e-3);
    }

    [Fact]
    public void A_stepped_mast_agrees_with_two_beams_put_on_each_other()
    {
        // Force at the tip: the lower beam bears F and F·b, the upper F alone (textbook superposition).
        (double a, double b, double ea, double eb, double force) = (2.4, 1.8, 49e3, 24e3, 80);
        Cantilever mast = new([(a, ea), (b, eb)], [Tip(force, a + b)]);

        double slope = (force * a * a / (2 * ea)) + (force * b * a / ea);
        double way = (force * a * a * a / (3 * ea)) + (force * b * a * a / (2 * ea)) + (slope * b) + (force * b * b * b / (3 * eb));
        Assert.Equal(way, mast.DeflectionMetres(a + b), 1e-12);
        Assert.Equal(slope + (force * b * b / (2 * eb)), mast.SlopeRadians(a + b), 1e-12);
    }

    [Fact]
    public void What_stands_above_the_top_bends_the_mast_by_its_lever()
    {
        Cantilever mast = new([(2, 50e3)], [new("antenna", "", 50, 2, 3.8)]);

        Assert.Equal(50 * 2.9, mast.MomentNewtonMetres(0), 1e-9);
        Assert.Equal((50 * 8 / (3 * 50e3)) + (50 * 0.9 * 4 / (2 * 50e3)), mast.DeflectionMetres(2), 1e-12);
    }

    [Fact]
    public void A_rigid_prop_at_the_tip_takes_three_eighths_of_the_wind()
    {
        // The textbook's propped cantilever under an even load: 3wL/8 at the prop, wL²/8 at the foot.
        ImmutableArray<(double, double)> tubes = [(3, 50e3)];
        double pull = GuyPull.AcrossNewtons(tubes, [Wind(70, 3)], 3, double.PositiveInfinity);
        Cantilever mast = new(tubes, [Wind(70, 3), Tip(-pull, 3)]);

        Assert.Equal(3.0 / 8 * 70 * 3, pull, 1e-9);
        Assert.Equal(70 * 9 / 8.0, mast.MomentNewtonMetres(0), 1e-9);
    }

    [Fact]
    public void A_guy_at_45_degrees_pulls_by_the_root_of_two_of_what_it_holds()
    {
        Assert.Equal(707.1, GuyPull.TensionNewtons(500, 45), 0.01);
        Assert.Equal(500, GuyPull.DownNewtons(500, 45), 1e-9);
    }

    [Fact]
    public void A_stiffer_guy_never_leaves_the_top_further_out() =>
        Gen.Select(Gen.Double[1, 1e6], Gen.Double[1, 1e6]).Sample((one, other) =>
            WayWithGuy(Math.Max(one, other)) <= WayWithGuy(Math.Min(one, other)) + 1e-12);

    [Fact]
    public void A_longer_mast_is_never_bent_less_by_the_same_wind() =>
        Gen.Select(Gen.Double[0.2, 8], Gen.Double[0.2, 8]).Sample((one, other) =>
            new Cantilever([(Math.Max(one, other), 50e3)], [Wind(70, Math.Max(one, other))]).MomentNewtonMetres(0)
                >= new Cantilever([(Math.Min(one, other), 50e3)], [Wind(70, Math.Min(one, other))]).MomentNewtonMetres(0) - 1e-9);

    [Fact]
    public void A_plain_tube_swings_as_often_as_the_exact_solution_says_within_a_hundredth()
    {
        // 1.8751²/(2π)·√(EI/(mL⁴)) = 6.502 Hz for 60.3 × 3.2 steel, 3 m: worked out by an independent script. Rayleigh's quotient lies above.
        StandingTube tube = new(1, new("p", "", 0.0603, 0.0032, "s235", 3), Steel603, Wind0.Steel, 0, "");
        double hertz = NaturalFrequency.Hertz([tube], [new("tube", "", tube.KilogramsPerMetre * 3, 0, 3, "")]);

        Assert.InRange(hertz, 6.502, 6.502 * 1.01);
    }

    private static double WayWithGuy(double stiffness)
    {
        ImmutableArray<(double, double)> tubes = [(3, 50e3)];
        double pull = GuyPull.AcrossNewtons(tubes, [Wind(70, 3)], 2, stiffness);
        return new Cantilever(tubes, [Wind(70, 3), Tip(-pull, 2)]).DeflectionMetres(2);
    }

    private static MastLoad Wind(double newtonsPerMetre, double length) => new("wind", "", newtonsPerMetre * length, 0, length);

    private static MastLoad Tip(double newtons, double at) => new("tip", "", newtons, at, at);

    private static class Wind0
    {
        internal static readonly TubeGradeRow Steel = Station.Wind.WindRowsForTests.Steel;
    }
}
