using CsCheck;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Antenna;
using Mastwright.Station.Mast;
using Mastwright.Station.Wind;
using Mastwright.Tests.Station.Wind;

namespace Mastwright.Tests.Station.Mast;

public sealed class MastExaminationTests
{
    /// <summary>3 m of 60.3 × 3.2 steel above brackets 0.6 m apart; the pole's top is 10 m above open ground, where 26 m/s press with 993.84 Pa.</summary>
    internal static readonly MastInput Input = new()
    {
        FitOutPath = "p",
        Mast = new()
        {
            Tubes = [new("p/mast/tubes/1", "steel-60.3x3.2", null, null, "s235", 3)],
            BracketHeightMetres = 7,
            BracketSpacingMetres = 0.6,
            BracketCapacityNewtons = 5000,
            FixedTo = "masonry",
        },
        Antenna = new()
        {
            Height = new(Estimate.Exactly(10), HeightAbove.Ground),
            GainDbi = Estimate.Exactly(8),
            TotalLengthMetres = 0.1,
            WindAreaSquareMetres = 0.06,
            DragCoefficient = 1.2,
            MassKilograms = 1,
        },
        AntennaHeightMetres = Estimate.Exactly(10),
        Wind = WindRowsForTests.Plain,
        Catalogue = WindRowsForTests.Catalogue,
    };

    [Fact]
    public void Moment_and_utilisation_come_out_as_worked_by_hand()
    {
        MastResult result = MastExamination.Of(Input);
        Ledger moment = Ledger(result, "bending moment at the upper bracket");

        // Tube: q(10 m)·1.2·60.3 mm = 71.914 N/m over 3 m: 323.6 N·m. Antenna: its top is at 10.1 m, 0.06 m²·1.2, lever 3.05 m.
        double antenna = EurocodeWind.PeakPressurePa(WindRowsForTests.Open, 26, 10.1) * 1.2 * 0.06;
        double characteristic = (71.914 * 4.5) + (antenna * 3.05);
        Assert.Equal(1.5 * characteristic, moment.Total, 0.1);
        Assert.Equal(71.914 * 4.5, moment.Lines[0].Value, 0.02);
        Assert.Equal(0.5 * characteristic, moment.Lines.Single(line => line.Code == "load-factor").Value, 0.05);

        double strength = 7.784e-6 * 235e6;
        double weight = ((4.506 * 3) + 1) * 9.80665 * 1.35 / (5.740e-4 * 235e6);
        Assert.Equal((1.5 * characteristic / strength) + weight, result.Utilisation!.Value, 2e-4);
        Assert.Equal((4.506 * 3) + 1, result.MassKilograms!.Value, 2e-3);
        Assert.Equal(3.7, result.WholeLengthMetres!.Value, 1e-9);
    }

    [Fact]
    public void The_brackets_bear_a_couple_and_the_wind_on_top_of_it()
    {
        // Characteristic 538.28 N·m over 0.6 m: 897.1 N below; with the wind itself (71.914·3 + 71.56 N) 1184.4 N above. Independent script, from rounded figures.
        MastLoad[] loads = [new("wind", "", 71.914 * 3, 0, 3), new("tip", "", 71.56, 3, 3)];
        Cantilever mast = new([(3, 49e3)], [.. loads]);
        Assert.Equal(897.1, mast.MomentNewtonMetres(0) / 0.6, 0.1);
        Assert.Equal(1184.4, (mast.MomentNewtonMetres(0) / 0.6) + mast.ShearNewtons(0), 0.1);

        Finding bracket = Single(MastExamination.Of(Input), "mast-bracket");
        double moment = Ledger(MastExamination.Of(Input), "bending moment at the upper bracket").Total;
        Assert.True(bracket.Value!.Value.Median > moment / 0.6);
        Assert.Equal(Verdict.Ok, bracket.Verdict);
    }

    [Fact]
    public void Brackets_lean_pointing_loss_and_swing_have_ledgers_that_end_at_their_findings()
    {
        MastResult result = MastExamination.Of(Input);

        // As in the first test: tube 71.914 N/m over 3 m, antenna with its lever of 3.05 m; load factor 1.5, brackets 0.6 m apart.
        double antenna = EurocodeWind.PeakPressurePa(WindRowsForTests.Open, 26, 10.1) * 1.2 * 0.06;
        double couple = ((71.914 * 4.5) + (antenna * 3.05)) / 0.6;
        double plain = couple + (71.914 * 3) + antenna;
        Assert.Equal(1.5 * couple, Ledger(result, "force on the lower bracket, design value").Total, 0.2);
        Ledger upper = Ledger(result, "force on the upper bracket, design value");
        Assert.Equal(1.5 * plain, upper.Total, 0.2);
        Assert.Equal(Single(result, "mast-bracket").Value!.Value.Median, upper.Total, 1e-9);
        Assert.Contains("characteristic wind so far: 119", upper.Lines.Single(line => line.Code == "structural-factor").Note, StringComparison.Ordinal);

        Ledger lean = Ledger(result, "lean of the mast's top");

        // Textbook slopes of a cantilever: w·L³/6EI, P·L²/2EI and, for the antenna's centre 0.05 m above the top, M·L/EI; I = 23.47 cm⁴ (EN 10219-2).
        double radians = ((71.914 * 27 / 6) + (antenna * 9 / 2) + (antenna * 0.05 * 3)) / (210e9 * 23.47e-8);
        Assert.Equal(double.RadiansToDegrees(radians), lean.Total, 1e-3);
        Ledger loss = Ledger(result, "loss of the beam by the lean");
        Assert.Equal(Single(result, "antenna-pointing-in-wind").Value!.Value.Median, loss.Total, 1e-12);

        Ledger swing = Ledger(result, "natural frequency");
        Assert.Equal(Single(result, "mast-swing").Value!.Value.Median, swing.Total, 1e-9);
        Assert.True(swing.Lines.Single(line => line.Code == "antenna").Value < 0);
    }

    [Fact]
    public void A_guy_s_tension_has_its_ledger()
    {
        MastResult guyed = MastExamination.Of(Input with { Mast = Input.Mast! with { Guys = new(2, 60, 0.004, 4, 9000, 4000, 4) } });
        Ledger tension = Ledger(guyed, "tension of a guy");

        Assert.Equal(Single(guyed, "mast-guys").Value!.Value.Median, tension.Total, 1e-9);
        double across = tension.Lines.Single(line => line.Code == "across").Value;
        Assert.Equal(across, tension.Lines.Single(line => line.Code == "slope").Value, 1e-9); // 1/cos 60° is 2.
        Assert.DoesNotContain(guyed.Examination.Ledgers, ledger => ledger.Unit == "Hz");
    }

    /// <summary>An ultimate gust for the form of ASCE/SEI 7-16.</summary>
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
    public void The_American_form_takes_a_tenth_off_the_strength_and_calls_nothing_characteristic()
    {
        MastResult american = MastExamination.Of(Input with { Wind = Gust });
        Ledger strength = Ledger(american, "bending strength");

        // φ 0.90 of AISC 360-16, clause F1, from memory; W = 7.784 cm³.
        Assert.Equal(0.9 * 7.784 * 235, strength.Total, 0.5);
        Assert.Equal(-0.1 * 7.784 * 235, strength.Lines.Single(line => line.Code == "resistance-factor").Value, 0.1);
        Assert.Contains(american.Examination.Assumptions, assumption => assumption is { Code: "weight-factor" } && assumption.Text.Contains("1.2", StringComparison.Ordinal));
        Assert.Contains("under the ultimate wind", FindingSentences.Text(Single(american, "mast-bending")), StringComparison.Ordinal);
        Assert.DoesNotContain(american.Examination.Ledgers, ledger => (ledger.Title + string.Concat(ledger.Lines.Select(line => line.Note))).Contains("characteristic", StringComparison.Ordinal));

        // A factor of the plan's own stands in for either.
        Ledger own = Ledger(MastExamination.Of(Input with { Wind = Gust, Mast = Input.Mast! with { MaterialFactor = 1.25 } }), "bending strength");
        Assert.Equal(7.784 * 235 / 1.25, own.Total, 0.5);
    }

    [Fact]
    public void Every_value_that_nobody_gave_is_listed()
    {
        MastInput input = Input with
        {
            Antenna = Input.Antenna with { DragCoefficient = null },
            Mast = Input.Mast! with { Box = new(0.2, 0.3, 1, 2, null), Cable = new(0.007, null, 0.06) },
        };
        string[] wanted = ["antenna-area-drag", "mast-box-drag", "mast-cable-length", "round-members", "weight-factor"];
        Assert.Equal(wanted, Codes(input).Intersect(wanted).Order(StringComparer.Ordinal));

        MastInput given = input with
        {
            Antenna = Input.Antenna,
            Mast = input.Mast! with { Box = input.Mast.Box! with { DragCoefficient = 1.8 }, Cable = input.Mast.Cable! with { LengthMetres = 2 } },
        };
        Assert.Equal(["round-members", "weight-factor"], Codes(given).Intersect(wanted).Order(StringComparer.Ordinal));

        static IEnumerable<string> Codes(MastInput of) => MastExamination.Of(of).Examination.Assumptions.Select(assumption => assumption.Code);
    }

    [Fact]
    public void The_swing_is_told_with_the_case_that_it_is_of() => Assert.Contains(
        "with ice of class G2",
        FindingSentences.Text(Single(MastExamination.Of(Input with { Wind = Input.Wind with { IceClass = "G2" }, Antenna = Input.Antenna with { DiameterMetres = 0.025 } }), "mast-swing")),
        StringComparison.Ordinal);

    [Fact]
    public void Half_of_wind_weight_and_ice_on_the_ropes_hangs_on_the_mast()
    {
        MastInput guyed = Input with { Mast = Input.Mast! with { Guys = new(2, 45, 0.004, 4, 9000, 4000, 4) } };
        Ledger moment = Ledger(MastExamination.Of(guyed), "bending moment at the upper bracket");
        Ledger mass = Ledger(MastExamination.Of(guyed), "mass above the upper bracket");

        // Four ropes of 4 m and 4 mm, the half of each: pressure at 9 m · 1.2 · 0.004 · 4 · 4/2, lever 2 m; 7850 · 0.55 · π/4 · 0.004² = 0.05426 kg/m over 8 m.
        double pressure = EurocodeWind.PeakPressurePa(WindRowsForTests.Open, 26, 9);
        Assert.Equal(pressure * 1.2 * 0.004 * 4 * 4 / 2 * 2, moment.Lines.Single(line => line.Code == "guy-wind").Value, 1e-6);
        Assert.Equal(0.05426 * 8, mass.Lines.Single(line => line.Code == "guys").Value, 1e-4);
        Assert.Contains("without ice", FindingSentences.Text(Single(MastExamination.Of(guyed), "mast-guys")), StringComparison.Ordinal);
    }

    [Fact]
    public void More_ice_never_makes_a_guy_pull_less() =>
        Gen.Select(Gen.Int[0, 3], Gen.Double[10, 80], Gen.Double[1, 3]).Sample((step, angle, height) =>
        {
            string[] classes = ["", "G1", "G2", "G3", "G4"];
            Assert.True(Tension(classes[step + 1]) >= Tension(classes[step]) - 1e-9);

            double Tension(string ice) => Single(
                MastExamination.Of(Input with
                {
                    Wind = Input.Wind with { IceClass = ice },
                    Antenna = Input.Antenna with { DiameterMetres = 0.06 },
                    Mast = Input.Mast! with { Guys = new(height, angle, 0.004, 4, 9000, 4000, 3) },
                    Catalogue = Iced,
                }),
                "mast-guys").Value!.Value.Median;
        });

    private static readonly StationCatalogue Iced = new([], [], [])
    {
        Structure = WindRowsForTests.Catalogue.Structure with
        {
            Ice = new(new[] { 0.01, 0.02, 0.03, 0.04 }.Select((thickness, i) => new IceRow(FormattableString.Invariant($"G{i + 1}"), thickness, null, 900, "test")), row => row.Key),
        },
    };

    [Fact]
    public void No_verdict_on_the_mast_is_ok_while_nobody_knows_what_holds_it()
    {
        MastResult result = MastExamination.Of(Input with { Mast = Input.Mast! with { BracketCapacityNewtons = null } });

        Assert.NotEmpty(result.Examination.Findings.Where(finding => finding.Code.StartsWith("mast-", StringComparison.Ordinal)));
        Assert.DoesNotContain(result.Examination.Findings, finding => finding.Verdict == Verdict.Ok);
        Assert.Equal(Verdict.Unknown, Single(result, "mast-bending").Verdict);
        Assert.Equal(Verdict.Unknown, Single(result, "mast-bracket").Verdict);
        Assert.Equal(Verdict.Unknown, Single(result, "mast-swing").Verdict);
        Assert.Equal(Verdict.Unknown, Single(result, "antenna-pointing-in-wind").Verdict);
        Assert.Contains("nobody knows what holds the mast", FindingSentences.Text(Single(result, "antenna-pointing-in-wind")), StringComparison.Ordinal);
    }

    [Fact]
    public void No_verdict_on_the_mast_is_ok_while_the_spacing_of_its_brackets_is_not_known()
    {
        MastResult result = MastExamination.Of(Input with { Mast = Input.Mast! with { BracketSpacingMetres = null } });

        Assert.Equal(Verdict.Unknown, Single(result, "mast-bending").Verdict);
        Assert.DoesNotContain(result.Examination.Findings, finding => finding.Verdict == Verdict.Ok);
    }

    [Fact]
    public void The_reach_lacks_what_the_plan_does_not_give()
    {
        Assert.Empty(MastExamination.Of(Input).LengthLacks);
        MastResult spacing = MastExamination.Of(Input with { Mast = Input.Mast! with { BracketSpacingMetres = null } });
        Assert.Equal(["mast/bracket/spacing"], spacing.LengthLacks);
        Assert.Null(spacing.WholeLengthMetres);
        Assert.Equal(3.1, spacing.LeastLengthMetres, 1e-9); // 3 m of tube, 0.1 m of antenna.
        Assert.Equal(["antenna/total-length"], MastExamination.Of(Input with { Antenna = Input.Antenna with { TotalLengthMetres = null } }).LengthLacks);
        Assert.Equal(["mast"], MastExamination.Of(Input with { Mast = null }).LengthLacks);
    }

    [Fact]
    public void A_chimney_is_warned_of_only_while_nobody_knows_what_it_bears()
    {
        MastFit chimney = Input.Mast! with { FixedTo = "chimney" };

        Assert.DoesNotContain("no mast at all", FindingSentences.Text(Single(MastExamination.Of(Input with { Mast = chimney }), "mast-bracket")), StringComparison.Ordinal);
        Assert.Contains(
            "no mast at all", FindingSentences.Text(Single(MastExamination.Of(Input with { Mast = chimney with { BracketCapacityNewtons = null } }), "mast-bracket")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_mast_that_is_too_weak_fails_whether_or_not_its_hold_is_known()
    {
        BasicWind storm = Input.Wind with { SpeedMetresPerSecond = 60 };

        Assert.Equal(Verdict.Fails, Single(MastExamination.Of(Input with { Wind = storm }), "mast-bending").Verdict);
        Assert.Equal(Verdict.Fails, Single(MastExamination.Of(Input with { Wind = storm, Mast = Input.Mast! with { BracketCapacityNewtons = null } }), "mast-bending").Verdict);
    }

    [Fact]
    public void A_weld_takes_half_of_6082_T6_and_is_a_line_of_its_own()
    {
        MastInput aluminium = Input with { Mast = Input.Mast! with { Tubes = [new("p/mast/tubes/1", "", 0.05, 0.003, "aw-6082-t6", 3, true)] } };
        Ledger strength = Ledger(MastExamination.Of(aluminium), "bending strength");

        // W = 4.912 cm³ (independent script); 250 MPa, weld share 0.5 of EN 1999-1-1 Table 3.2b, γM1 1.1.
        Assert.Equal(4.912 * 250 * 0.5 / 1.1, strength.Total, 0.1);
        Assert.Equal(-4.912 * 250 * 0.5, strength.Lines.Single(line => line.Code == "weld").Value, 0.1);
    }

    [Fact]
    public void Ice_weighs_and_catches_more_wind()
    {
        MastInput rod = Input with { Antenna = Input.Antenna with { WindAreaSquareMetres = null, DiameterMetres = 0.025, TotalLengthMetres = 1.8, DragCoefficient = null } };
        MastResult bare = MastExamination.Of(rod);
        MastResult iced = MastExamination.Of(rod with { Wind = rod.Wind with { IceClass = "G2" } });

        Assert.True(iced.Utilisation > bare.Utilisation);
        Assert.Equal("with ice of class G2", Single(iced, "mast-bending").Details["case"]);
        Assert.Contains(iced.Examination.Assumptions, assumption => assumption.Code == "ice-wind-share");
    }

    /// <summary>By hand: 1 m at 45° comes 0.707 m down from 3.5 m; 3.5 m / sin 45° = 4.95 m.</summary>
    [Fact]
    public void A_guy_that_ends_in_the_air_is_told()
    {
        GuyLevel guys = new(3.5, 45, 0.004, 1, 9000, 5000);
        Finding guysShort = Single(MastExamination.Of(Input with { Mast = Input.Mast! with { Guys = guys } }), "mast-guys-short");

        Assert.Equal(Verdict.Unknown, guysShort.Verdict);
        Assert.Equal(4.950, guysShort.Limit!.Value, 1e-3);
        Assert.Contains("ends 2.8 m above", FindingSentences.Text(guysShort), StringComparison.Ordinal);
        Assert.DoesNotContain(
            MastExamination.Of(Input with { Mast = Input.Mast! with { Guys = guys with { LengthMetres = 5 } } }).Examination.Findings, finding => finding.Code == "mast-guys-short");
    }

    [Fact]
    public void A_lower_bracket_under_the_ground_is_told()
    {
        MastFit apart = Input.Mast! with { BracketHeightMetres = 6.9, BracketSpacingMetres = 8 };
        Finding under = Single(MastExamination.Of(Input with { Mast = apart }), "mast-bracket-underground");

        Assert.Equal(-1.1, under.Value!.Value.Median, 1e-9);
        Assert.Equal(Verdict.Unknown, under.Verdict);
        Assert.DoesNotContain(MastExamination.Of(Input with { Mast = apart with { BracketSpacingMetres = 1 } }).Examination.Findings, finding => finding.Code == "mast-bracket-underground");
        Assert.DoesNotContain(MastExamination.Of(Input with { Mast = apart with { FixedTo = "ground" } }).Examination.Findings, finding => finding.Code == "mast-bracket-underground");
    }

    [Fact]
    public void Guys_take_from_the_mast_and_stay_unknown_while_their_anchors_are()
    {
        GuyLevel guys = new(2.5, 45, 0.004, 4, 9000, null);
        MastResult held = MastExamination.Of(Input with { Mast = Input.Mast! with { Guys = guys } });

        Assert.True(held.Utilisation < MastExamination.Of(Input).Utilisation);
        Assert.Equal(Verdict.Unknown, Single(held, "mast-guys").Verdict);
        Assert.Equal(Verdict.Unknown, Single(held, "mast-bending").Verdict);
        Assert.Equal(Verdict.Ok, Single(MastExamination.Of(Input with { Mast = Input.Mast! with { Guys = guys with { AnchorNewtons = 5000 } } }), "mast-guys").Verdict);
    }

    [Fact]
    public void The_lean_of_the_top_costs_a_narrow_beam_more()
    {
        Finding wide = Single(MastExamination.Of(Input), "antenna-pointing-in-wind");
        Finding narrow = Single(MastExamination.Of(Input with { Antenna = Input.Antenna with { ElevationBeamwidthDegrees = 2 } }), "antenna-pointing-in-wind");

        // 12·(lean/beamwidth)² dB, the main beam of Rec. ITU-R F.1336.
        double lean = Math.Sqrt(narrow.Value!.Value.Median / 12) * 2;
        Assert.InRange(lean, 0.6, 0.9);
        Assert.Equal(Verdict.Tight, narrow.Verdict);
        Assert.Equal(Verdict.Ok, wide.Verdict);
    }

    [Fact]
    public void What_is_missing_is_named_and_nothing_is_made_up()
    {
        MastResult bare = MastExamination.Of(Input with { Antenna = new() { Height = Input.Antenna.Height } });
        Finding incomplete = Single(bare, "mast-incomplete");
        Assert.Contains("antenna/wind-area", incomplete.Details["missing"], StringComparison.Ordinal);
        Assert.Null(bare.Utilisation);

        Assert.Equal("wind-unknown", MastExamination.Of(Input with { Wind = new() }).Examination.Findings.Single(finding => finding.Code.StartsWith("wind-", StringComparison.Ordinal)).Code);
        Assert.Equal("mast-not-described", Assert.Single(MastExamination.Of(Input with { Mast = null }).Examination.Findings).Code);
        Assert.Empty(MastExamination.Of(Input with { Mast = null, Antenna = Input.Antenna with { Indoors = true } }).Examination.Findings);
    }

    [Fact]
    public void An_antenna_told_at_another_height_than_it_is_built_is_noticed() =>
        Assert.Equal(Verdict.Tight, Single(MastExamination.Of(Input with { AntennaHeightMetres = Estimate.Exactly(13) }), "mast-height-differs").Verdict);

    [Fact]
    public void A_short_grip_below_a_long_mast_is_noticed() =>
        Assert.Equal(Verdict.Tight, Single(MastExamination.Of(Input), "mast-bracket-spacing").Verdict);

    [Fact]
    public void A_thicker_wall_never_uses_more_of_the_strength() =>
        Gen.Select(Gen.Double[0.002, 0.015], Gen.Double[0.002, 0.015]).Sample((one, other) =>
            Used(0.06, Math.Max(one, other), 3, 26) <= Used(0.06, Math.Min(one, other), 3, 26) + 1e-9);

    [Fact]
    public void More_wind_or_more_length_never_uses_less() =>
        Gen.Select(Gen.Double[10, 45], Gen.Double[0, 10], Gen.Double[1, 4], Gen.Double[0, 2]).Sample((speed, faster, length, longer) =>
            Used(0.05, 0.004, length, speed + faster) >= Used(0.05, 0.004, length, speed) - 1e-9
            && Used(0.05, 0.004, length + longer, speed) >= Used(0.05, 0.004, length, speed) - 1e-9);

    [Fact]
    public void Every_ledger_of_a_mast_sums_to_its_total() => Assert.All(
        MastExamination.Of(Input).Examination.Ledgers, ledger => Assert.Equal(ledger.Total, ledger.Lines.Sum(line => line.Value), 1e-9));

    private static double Used(double diameter, double wall, double length, double speed) => MastExamination.Of(Input with
    {
        Mast = Input.Mast! with { Tubes = [new("t", "", diameter, wall, "s235", length)] },
        Wind = Input.Wind with { SpeedMetresPerSecond = speed },
    }).Utilisation!.Value;

    private static Finding Single(MastResult result, string code) => Assert.Single(result.Examination.Findings, finding => finding.Code == code);

    private static Ledger Ledger(MastResult result, string title) =>
        result.Examination.Ledgers.First(ledger => ledger.Title.StartsWith(title, StringComparison.Ordinal));
}
