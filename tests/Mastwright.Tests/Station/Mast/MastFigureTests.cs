using Mastwright.Findings;
using Mastwright.Station.Mast;

namespace Mastwright.Tests.Station.Mast;

/// <summary>What a mast tells whoever draws it.</summary>
public sealed class MastFigureTests
{
    [Fact]
    public void The_points_are_those_of_a_beam_held_at_one_end()
    {
        MastResult result = MastExamination.Of(MastExaminationTests.Input);
        MastBending bending = result.Figure!.Bending!;

        // Handbook of beams: w·L⁴/8EI under an even load, P·L³/3EI and M·L²/2EI under a force and a moment at the end; I = 23.47 cm⁴ (EN 10219-2), E = 210 GPa.
        double stiffness = 210e9 * 23.47e-8;
        double even = bending.Loads.Single(load => load.Code == "tube-1").ForceNewtons / 3;
        double tip = bending.Loads.Single(load => load.Code == "antenna").ForceNewtons;
        double across = (even * 81 / 8 / stiffness) + (tip * 27 / 3 / stiffness) + (tip * 0.05 * 9 / 2 / stiffness);
        Assert.Equal(across, bending.TopMetres, across * 2e-3);

        // Half way up: the even load above it on its own lever, and the antenna's.
        BendingPoint middle = bending.Points.Single(point => Math.Abs(point.HeightMetres - 1.5) < 1e-9);
        Assert.Equal(1.5 * ((even * 1.5 * 0.75) + (tip * 1.55)), middle.MomentNewtonMetres, 0.1);
        Assert.Equal(7.784e-6 * 235e6, middle.StrengthNewtonMetres, 1);
    }

    [Fact]
    public void The_figure_and_the_ledgers_are_of_one_mast()
    {
        MastResult result = MastExamination.Of(MastExaminationTests.Input);
        MastBending bending = result.Figure!.Bending!;
        Ledger moment = result.Examination.Ledgers.Single(ledger => ledger.Title.StartsWith("bending moment at the upper bracket", StringComparison.Ordinal));
        Ledger across = result.Examination.Ledgers.Single(ledger => ledger.Unit == "mm");
        Assert.Equal(moment.Total, bending.Points[0].MomentNewtonMetres, 1e-9);
        Assert.Equal(across.Total, 1000 * bending.TopMetres, 1e-9);
        Assert.Equal(result.Utilisation!.Value, bending.Utilisation, 1e-12);
        Assert.Equal(3, result.Figure.FreeLengthMetres, 1e-12);
        Assert.Equal(3, result.Figure.AntennaFootMetres!.Value, 1e-12);
    }

    [Fact]
    public void A_mast_without_wind_still_stands_there()
    {
        MastResult result = MastExamination.Of(MastExaminationTests.Input with { Wind = new() });
        Assert.Single(result.Figure!.Tubes);
        Assert.Null(result.Figure.Bending);
    }

    [Fact]
    public void A_weld_softens_the_foot_of_its_tube_only()
    {
        MastInput welded = MastExaminationTests.Input with
        {
            Mast = MastExaminationTests.Input.Mast! with { Tubes = [new("p/mast/tubes/1", "", 0.05, 0.003, "aw-6082-t6", 2, WeldedAtFoot: true)] },
        };
        MastBending bending = MastExamination.Of(welded).Figure!.Bending!;
        Assert.True(bending.Points[0].StrengthNewtonMetres < 0.8 * bending.Points[1].StrengthNewtonMetres);
        Assert.All(bending.Points.Skip(1), point => Assert.Equal(bending.Points[1].StrengthNewtonMetres, point.StrengthNewtonMetres, 1e-9));
    }
}
