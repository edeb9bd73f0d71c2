using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;
using Mastwright.Station.Wind;

namespace Mastwright.Station.Mast;

/// <summary>The judgements on a mast.</summary>
internal static class MastFindings
{
    /// <summary>Share of the strength above which a mast that still holds is called tight.</summary>
    private const double TightShare = 0.8;

    /// <summary>Free length over bracket spacing that is not to be exceeded: common practice.</summary>
    private const double MostFreeOverSpacing = 4;

    /// <summary>Beam loss in dB above which the lean of the top is called tight: common practice.</summary>
    private const double MostPointingLossDb = 1;

    /// <summary>Natural frequency in hertz below which a structure is flexible (ASCE/SEI 7-16, clause 26.2, from memory).</summary>
    private const double LeastRigidHertz = 1;

    /// <summary>Height in metres by which mast and antenna may be told differently.</summary>
    private const double HeightToleranceMetres = 0.5;

    /// <summary>Share of a guy's breaking force that may be used, as a design value: EN 1993-1-11, breaking force over 1.5·γR with γR 1.1; from memory.</summary>
    private const double GuyShare = 0.6;

    private const string OpenWords = " It stays open while nobody knows what holds the mast.";

    internal static Finding NotDescribed(string fitOutPath) => Finding.Unknown("mast-not-described", fitOutPath, "mast");

    internal static Finding Incomplete(string mastPath, IEnumerable<string> missing) =>
        Finding.Unknown("mast-incomplete", mastPath, "mast", ("missing", string.Join("; ", missing.Distinct(StringComparer.Ordinal))));

    internal static Finding NotListed<T>(string path, string kind, string given, KeyedRows<T> rows)
        where T : class => Finding.Unknown(
            "mast-part-not-listed", path, kind, ("kind", kind), ("given", given),
            ("near", NearestWord.Of(given, rows.Keys) is { } near ? $" Did you mean '{near}'?" : ""), ("known", rows.Listed()));

    internal static Finding MaterialsDiffer(string path, TubeRow size, TubeGradeRow grade) => Finding.Unknown(
        "tube-grade-differs", path, "tube", ("size", size.Key), ("grade", grade.Key),
        ("size-material", size.Material == TubeMaterial.Steel ? "steel" : "aluminium"), ("grade-material", grade.Material == TubeMaterial.Steel ? "steel" : "aluminium"));

    /// <summary>What is to be said of a mast whatever the wind.</summary>
    internal static IEnumerable<Finding> Upright(MastInput input, MastAssembly assembly)
    {
        if (HeightsDiffer(input, assembly) is { } heights)
        {
            yield return heights;
        }

        if (Spacing(input) is { } spacing)
        {
            yield return Held(spacing, input.Mast!);
        }

        if (LowerBracketUnderground(input, assembly) is { } under)
        {
            yield return under;
        }

        if (GuysShort(input) is { } guysShort)
        {
            yield return guysShort;
        }

        foreach (StandingTube tube in assembly.Tubes.Where(tube => tube.Slenderness > tube.SlendernessLimit))
        {
            yield return new()
            {
                Code = "tube-wall-thin",
                Subject = tube.Tube.PlanPath,
                Verdict = Verdict.Unknown,
                Quantity = "diameter over wall",
                Value = Estimate.Exactly(tube.Slenderness),
                Limit = tube.SlendernessLimit,
                Margin = tube.SlendernessLimit - tube.Slenderness,
                Source = tube.Grade.Material == TubeMaterial.Steel ? "EN 1993-1-1, Table 5.2, class 3" : "common practice",
                Details = FindingDetails.Of(
                    ("ratio", FormattableString.Invariant($"{tube.Slenderness:0}")), ("limit", FormattableString.Invariant($"{tube.SlendernessLimit:0}"))),
            };
        }
    }

    /// <summary>What is to be said of a mast in the wind.</summary>
    internal static IEnumerable<Finding> Of(MastInput input, WindModel wind, ImmutableArray<MastCase> cases, MastCase worst)
    {
        MastFit mast = input.Mast!;
        yield return Bending(input, wind, worst);

        // What bends most need not pull most: each force is told of the case in which it is greatest.
        yield return Held(Brackets(input, mast.BracketSpacingMetres is { } spacing ? Pulling(cases, spacing) : worst), mast);
        if (mast.Guys is { } guys)
        {
            yield return Held(Guys(input, guys, Guyed(cases)), mast);
        }
        else
        {
            yield return Held(Frequency(input, cases[^1]), mast);
        }

        yield return Held(Pointing(input, wind, Leaning(cases)), mast);
    }

    /// <summary>A judgement on a mast as it counts: while nobody knows what holds the mast, none of them is ok.</summary>
    internal static Finding Held(Finding finding, MastFit mast)
    {
        bool isOpened = finding.Verdict == Verdict.Ok && !mast.IsHoldKnown;
        return finding with
        {
            Verdict = isOpened ? Verdict.Unknown : finding.Verdict,
            Details = finding.Details.SetItem("open", isOpened ? OpenWords : ""),
        };
    }

    /// <summary>The case that pulls most at a bracket.</summary>
    internal static MastCase Pulling(ImmutableArray<MastCase> cases, double spacingMetres) => cases.MaxBy(one => Greater(one.Brackets(spacingMetres)))!;

    /// <summary>The case that pulls most at a guy.</summary>
    internal static MastCase Guyed(ImmutableArray<MastCase> cases) => cases.MaxBy(one => Math.Abs(one.GuyAcrossNewtons))!;

    /// <summary>The case in which the top leans most.</summary>
    internal static MastCase Leaning(ImmutableArray<MastCase> cases) => cases.MaxBy(MastPointing.LeanDegrees)!;

    private static double Greater((double Lower, double Upper) forces) => Math.Max(forces.Lower, forces.Upper);

    private static Finding Bending(MastInput input, WindModel wind, MastCase worst)
    {
        bool isOpen = !input.Mast!.IsHoldKnown;
        SectionCheck at = worst.Worst;
        Verdict verdict = at.Utilisation > 1 ? Verdict.Fails : at.Utilisation > TightShare ? Verdict.Tight : Verdict.Ok;
        bool fails = verdict == Verdict.Fails;
        bool slender = worst.Tubes.Any(tube => tube.Slenderness > tube.SlendernessLimit);
        return new()
        {
            Code = "mast-bending",
            Subject = input.MastPath,
            Verdict = !fails && (isOpen || slender) ? Verdict.Unknown : verdict,
            Quantity = "share of the strength used",
            Unit = "%",
            Value = Estimate.Exactly(100 * at.Utilisation),
            Limit = 100,
            Margin = 100 - (100 * at.Utilisation),
            Source = $"{wind.FormName}; {(wind.Form == WindForm.Asce ? at.Strength.Source : at.Tube.Grade.Material == TubeMaterial.Steel ? "EN 1993-1-1, clause 6.2" : "EN 1999-1-1, clause 6.2")}",
            Details = FindingDetails.Of(
                ("used", Percent(at.Utilisation)),
                ("place", at.Place),
                ("case", worst.Name),
                ("moment", FormattableString.Invariant($"{at.DesignMoment:0} N·m")),
                ("strength", FormattableString.Invariant($"{at.ResistanceMoment:0} N·m")),
                ("plain", FormattableString.Invariant($"{at.CharacteristicMoment:0} N·m, {Percent(at.CharacteristicUtilisation)} of yield, under the {wind.PlainName}")),
                ("open", fails ? "" : isOpen ? OpenWords : slender ? " It stays open, the wall being thin." : ""),
                ("ask", isOpen && !fails ? "Give what holds the mast; else take" : "Take")),
        };
    }

    private static Finding Brackets(MastInput input, MastCase worst)
    {
        MastFit mast = input.Mast!;
        string path = input.MastPath + "/bracket";
        if (mast.BracketSpacingMetres is not { } spacing)
        {
            return Finding.Unknown("mast-bracket-spacing-unknown", path, "force of a bracket");
        }

        (double lower, double upper) = worst.Brackets(spacing);
        double most = Math.Max(lower, upper);
        return new()
        {
            Code = "mast-bracket",
            Subject = path,
            Verdict = mast.BracketCapacityNewtons is not { } bears ? Verdict.Unknown : most > bears ? Verdict.Fails : most > TightShare * bears ? Verdict.Tight : Verdict.Ok,
            Quantity = "force of a bracket",
            Unit = "N",
            Value = Estimate.Exactly(most),
            Limit = mast.BracketCapacityNewtons,
            Margin = mast.BracketCapacityNewtons - most,
            Source = mast.BracketCapacityNewtons is null ? "" : path + "/capacity",
            Details = FindingDetails.Of(
                ("upper", Force(upper)),
                ("lower", Force(lower)),
                ("spacing", FormattableString.Invariant($"{spacing:0.00} m")),
                ("case", worst.Name),
                ("capacity", mast.BracketCapacityNewtons is { } capacity ? $"one bears {Force(capacity)}" : "what one bears is not known"),
                ("fixed-to", mast.FixedTo.Length == 0 ? "" : $" They are fixed to {mast.FixedTo}{(mast.FixedTo == "chimney" && mast.BracketCapacityNewtons is null ? ", which may bear no mast at all" : "")}.")),
        };
    }

    private static Finding? Spacing(MastInput input)
    {
        MastFit mast = input.Mast!;
        if (mast.BracketSpacingMetres is not { } spacing || mast.FreeLengthMetres <= 0 || mast.Guys is not null)
        {
            return null;
        }

        double ratio = mast.FreeLengthMetres / spacing;
        bool isFar = ratio > MostFreeOverSpacing;
        return new()
        {
            Code = "mast-bracket-spacing",
            Subject = input.MastPath + "/bracket",
            Verdict = isFar ? Verdict.Tight : Verdict.Ok,
            Quantity = "free length over bracket spacing",
            Value = Estimate.Exactly(ratio),
            Limit = MostFreeOverSpacing,
            Margin = MostFreeOverSpacing - ratio,
            Source = "common practice",
            Details = FindingDetails.Of(
                ("free", FormattableString.Invariant($"{mast.FreeLengthMetres:0.0} m")),
                ("spacing", FormattableString.Invariant($"{spacing:0.00} m")),
                ("wanted", FormattableString.Invariant($"{mast.FreeLengthMetres / MostFreeOverSpacing:0.00} m"))),
        };
    }

    private static Finding Guys(MastInput input, GuyLevel guys, MastCase worst)
    {
        double tension = GuyPull.TensionNewtons(Math.Abs(worst.GuyAcrossNewtons), guys.AngleDegrees) * worst.Factor;
        double? rope = guys.BreakingNewtons * GuyShare;
        double? limit = rope is null || guys.AnchorNewtons is null ? rope ?? guys.AnchorNewtons : Math.Min(rope.Value, guys.AnchorNewtons.Value);
        bool isKnown = rope is not null && guys.AnchorNewtons is not null;
        return new()
        {
            Code = "mast-guys",
            Subject = input.MastPath + "/guys",
            Verdict = tension > limit ? Verdict.Fails : !isKnown ? Verdict.Unknown : tension > TightShare * limit ? Verdict.Tight : Verdict.Ok,
            Quantity = "tension of a guy",
            Unit = "N",
            Value = Estimate.Exactly(tension),
            Limit = limit,
            Margin = limit - tension,
            Source = "0.6 of the breaking force, from memory; " + input.MastPath + "/guys",
            Details = FindingDetails.Of(
                ("case", worst.Name),
                ("tension", Force(tension)),
                ("down", Force(GuyPull.DownNewtons(Math.Abs(worst.GuyAcrossNewtons), guys.AngleDegrees) * worst.Factor)),
                ("rope", rope is { } bears ? $"0.6 of its breaking force is {Force(bears)}" : "its breaking force is not known"),
                ("anchor", guys.AnchorNewtons is { } anchor ? $"its anchor bears {Force(anchor)}" : "what its anchor bears is not known")),
        };
    }

    private static Finding Frequency(MastInput input, MastCase heaviest)
    {
        double hertz = NaturalFrequency.Hertz(heaviest.Tubes, heaviest.Masses);
        return new()
        {
            Code = "mast-swing",
            Subject = input.MastPath,
            Verdict = hertz < LeastRigidHertz ? Verdict.Tight : Verdict.Ok,
            Quantity = "natural frequency",
            Unit = "Hz",
            Value = Estimate.Exactly(hertz),
            Limit = LeastRigidHertz,
            Margin = hertz - LeastRigidHertz,
            Source = "ASCE/SEI 7-16, clause 26.2, from memory",
            Details = FindingDetails.Of(("case", heaviest.Name), ("frequency", FormattableString.Invariant($"{hertz:0.0} Hz")), ("limit", FormattableString.Invariant($"{LeastRigidHertz:0} Hz"))),
        };
    }

    /// <summary>The lean of the top against the beam.</summary>
    private static Finding Pointing(MastInput input, WindModel wind, MastCase worst)
    {
        double? beamwidth = MastPointing.BeamwidthDegrees(input.Antenna);
        double lean = MastPointing.LeanDegrees(worst);
        double? loss = beamwidth is { } width ? MastPointing.LossDb(lean, width) : null;
        return new()
        {
            Code = "antenna-pointing-in-wind",
            Subject = input.AntennaPath,
            Verdict = loss is not { } db ? Verdict.Unknown : db > MostPointingLossDb ? Verdict.Tight : Verdict.Ok,
            Quantity = "loss by the lean of the top",
            Unit = "dB",
            Value = loss is { } known ? Estimate.Exactly(known) : null,
            Limit = MostPointingLossDb,
            Margin = MostPointingLossDb - loss,
            Source = "common practice",
            Details = FindingDetails.Of(
                ("way", FormattableString.Invariant($"{Math.Abs(worst.Beam.DeflectionMetres(worst.Beam.LengthMetres)) * 1000:0} mm")),
                ("lean", FormattableString.Invariant($"{lean:0.0}°")),
                ("case", worst.Name),
                ("wind", wind.PlainName),
                ("loss", loss is { } lost ? FormattableString.Invariant($"costs {lost:0.0} dB of a beam {beamwidth:0}° high") : "costs an unknown part of a beam of unknown width")),
        };
    }

    /// <summary>A lower bracket that would lie below the ground the upper one is counted from.</summary>
    private static Finding? LowerBracketUnderground(MastInput input, MastAssembly assembly)
    {
        if (input.Mast!.BracketSpacingMetres is not { } spacing || assembly.BracketHeightMetres is not { } upper || input.Mast.FixedTo == "ground")
        {
            return null;
        }

        double lower = upper - spacing;
        return lower >= -HeightToleranceMetres ? null : new()
        {
            Code = "mast-bracket-underground",
            Subject = input.MastPath + "/bracket",
            Verdict = Verdict.Unknown,
            Quantity = "height of the lower bracket above the ground",
            Unit = "m",
            Value = Estimate.Exactly(lower),
            Limit = 0,
            Margin = lower,
            Source = input.MastPath + "/bracket",
            Details = FindingDetails.Of(("spacing", Metres(spacing)), ("upper", Metres(upper)), ("below", Metres(-lower))),
        };
    }

    /// <summary>A guy that ends in the air: by its length and angle it does not come down to the upper bracket's level.</summary>
    private static Finding? GuysShort(MastInput input)
    {
        if (input.Mast!.Guys is not { } guys)
        {
            return null;
        }

        double sine = Math.Sin(double.DegreesToRadians(guys.AngleDegrees));
        double wanted = guys.HeightMetres / sine;
        double above = guys.HeightMetres - (guys.LengthMetres * sine);
        return above <= HeightToleranceMetres ? null : new()
        {
            Code = "mast-guys-short",
            Subject = input.MastPath + "/guys",
            Verdict = Verdict.Unknown,
            Quantity = "length of a guy",
            Unit = "m",
            Value = Estimate.Exactly(guys.LengthMetres),
            Limit = wanted,
            Margin = guys.LengthMetres - wanted,
            Source = "height over the sine of the angle",
            Details = FindingDetails.Of(
                ("length", Metres(guys.LengthMetres)), ("angle", FormattableString.Invariant($"{guys.AngleDegrees:0.#}°")), ("height", Metres(guys.HeightMetres)),
                ("above", Metres(above)), ("wanted", Metres(wanted))),
        };
    }

    private static string Metres(double metres) => FormattableString.Invariant($"{metres:0.0} m");

    private static Finding? HeightsDiffer(MastInput input, MastAssembly assembly)
    {
        if (input.Mast!.BracketHeightMetres is not { } bracket || input.AntennaHeightMetres is not { } antenna
            || input.Antenna.SideMountOffsetMetres is not null || assembly.AntennaLengthMetres is not { } length)
        {
            return null;
        }

        double built = bracket + input.Mast.FreeLengthMetres + (length / 2);
        double off = Math.Abs(built - antenna.Median) - antenna.HalfRange;
        return off <= HeightToleranceMetres ? null : new()
        {
            Code = "mast-height-differs",
            Subject = input.MastPath,
            Verdict = Verdict.Tight,
            Quantity = "height of the antenna's centre",
            Unit = "m",
            Value = Estimate.Exactly(built),
            Limit = antenna.Median,
            Margin = -off,
            Source = input.AntennaPath + "/height",
            Details = FindingDetails.Of(("built", FormattableString.Invariant($"{built:0.0} m")), ("given", FormattableString.Invariant($"{antenna.Median:0.0} m"))),
        };
    }

    private static string Percent(double share) => FormattableString.Invariant($"{share * 100:0} %");

    private static string Force(double newtons) => newtons >= 1000 ? FormattableString.Invariant($"{newtons / 1000:0.00} kN") : FormattableString.Invariant($"{newtons:0} N");
}
