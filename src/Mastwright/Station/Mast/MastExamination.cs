using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Station.Wind;

namespace Mastwright.Station.Mast;

/// <summary>Whether a mast stands up to the wind: every judgement with its ledgers.</summary>
public static class MastExamination
{
    /// <summary>Examines a mast.</summary>
    /// <param name="input">What is known.</param>
    public static MastResult Of(MastInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        if (input.Antenna.Indoors)
        {
            return new() { Examination = Examination.Nothing };
        }

        if (input.Mast is null)
        {
            return new()
            {
                Examination = new() { Findings = [MastFindings.NotDescribed(input.FitOutPath)] },
                LeastLengthMetres = input.Antenna.TotalLengthMetres ?? input.Antenna.LengthMetres ?? 0,
                LengthLacks = ["mast"],
            };
        }

        MastAssembly assembly = new(input);
        List<Finding> findings = [.. assembly.Findings];
        List<Assumption> assumptions = [.. assembly.Assumptions];
        ImmutableArray<MastMass> masses = MastMasses.Of(input, assembly, null, assumptions);
        findings.AddRange(MastFindings.Upright(input, assembly));
        MastResult result = new()
        {
            Examination = Examination.Nothing,
            MassKilograms = masses.IsEmpty ? null : masses.Sum(mass => mass.Kilograms),
            BracketHeightMetres = assembly.BracketHeightMetres,
            LeastLengthMetres = input.Mast.FreeLengthMetres + (input.Mast.BracketSpacingMetres ?? 0) + (assembly.AntennaLengthMetres ?? 0),
            LengthLacks = [.. LengthLacks(input.Mast, assembly)],
            Figure = assembly.Figure(),
        };
        WindModel? wind = WindReading.Of(input.Wind, input.Catalogue, input.WindPath, out Finding? problem);
        if (problem is not null)
        {
            findings.Add(problem);
        }

        ImmutableArray<MastCase> cases = wind is null ? [] : Cases(input, assembly, wind, findings, assumptions);
        if (assembly.Missing.Count > 0)
        {
            findings.Add(MastFindings.Incomplete(input.MastPath, assembly.Missing));
        }

        List<Ledger> ledgers = [];
        if (!cases.IsEmpty)
        {
            assumptions.AddRange(wind!.Assumptions);
            assumptions.AddRange(MastDefaults.Of(input));
            MastCase worst = cases.MaxBy(one => one.Worst.Utilisation)!;
            ledgers.AddRange(Ledgers(input, assembly, wind, worst));
            ledgers.AddRange(Holding(input, wind, cases));
            findings.AddRange(MastFindings.Of(input, wind, cases, worst));
            result = result with { Utilisation = worst.Worst.Utilisation, Figure = result.Figure! with { Bending = worst.Bending() } };
        }
        else if (!masses.IsEmpty)
        {
            ledgers.Add(new("mass above the upper bracket, without ice", "kg", [.. masses.Select(mass => new LedgerLine(mass.Code, mass.Label, mass.Kilograms, mass.Source))]));
        }

        return result with { Examination = new() { Ledgers = [.. ledgers], Findings = [.. findings], Assumptions = [.. assumptions.Distinct()] } };
    }

    private static IEnumerable<string> LengthLacks(MastFit mast, MastAssembly assembly)
    {
        if (mast.Tubes.IsEmpty)
        {
            yield return "mast/tubes";
        }

        if (mast.BracketSpacingMetres is null)
        {
            yield return "mast/bracket/spacing";
        }

        if (assembly.AntennaLengthMetres is null)
        {
            yield return "antenna/total-length";
        }
    }

    private static ImmutableArray<MastCase> Cases(MastInput input, MastAssembly assembly, WindModel wind, List<Finding> findings, List<Assumption> assumptions)
    {
        // A tube that is not known, or a height, leaves nothing to add up.
        if (assembly.Tubes.Length < input.Mast!.Tubes.Length || assembly.Tubes.IsEmpty || assembly.BracketHeightMetres is not { } bracket || IsTooHigh(input, assembly, bracket))
        {
            return [];
        }

        List<MastCase> cases = [];
        Add(null);
        if (input.Wind.IceClass.Length > 0)
        {
            if (input.Catalogue.Structure.Ice.Find(input.Wind.IceClass) is { } ice)
            {
                Add(ice);
                if (input.Wind.IceWindShare is null)
                {
                    assumptions.Add(WindDefaults.IceShare(input.WindPath));
                }
            }
            else
            {
                findings.Add(MastFindings.NotListed(input.WindPath, "ice", input.Wind.IceClass, input.Catalogue.Structure.Ice));
            }
        }

        return [.. cases];

        void Add(IceRow? ice)
        {
            MastLoads loads = new(input, assembly, wind, ice);
            ImmutableArray<MastLoad> all = loads.All();
            if (loads.Missing.Length > 0)
            {
                assembly.Missing.Add(loads.Missing);
            }
            else
            {
                cases.Add(new(input, assembly, wind, ice, all, MastMasses.Of(input, assembly, ice, [])));
            }
        }
    }

    private static bool IsTooHigh(MastInput input, MastAssembly assembly, double bracket)
    {
        if (bracket + input.Mast!.FreeLengthMetres + (assembly.AntennaLengthMetres ?? 0) <= WindModel.GreatestHeightMetres)
        {
            return false;
        }

        assembly.Missing.Add("a height of at most 200 m above the ground, where the wind's form ends");
        return true;
    }

    /// <summary>Brackets, guys, lean and swing, each of the case in which it is greatest: the one that its finding tells of.</summary>
    private static IEnumerable<Ledger> Holding(MastInput input, WindModel wind, ImmutableArray<MastCase> cases)
    {
        if (input.Mast!.BracketSpacingMetres is { } spacing)
        {
            MastCase pulls = MastFindings.Pulling(cases, spacing);
            yield return MastLedgers.Bracket(pulls, wind, spacing, isUpper: true);
            yield return MastLedgers.Bracket(pulls, wind, spacing, isUpper: false);
        }

        if (input.Mast.Guys is { } guys)
        {
            yield return MastLedgers.Guy(MastFindings.Guyed(cases), wind, guys);
        }
        else
        {
            yield return MastLedgers.Swing(cases[^1]);
        }

        MastCase leans = MastFindings.Leaning(cases);
        yield return MastLedgers.Lean(leans, wind);
        if (MastPointing.BeamwidthDegrees(input.Antenna) is { } beamwidth)
        {
            yield return MastLedgers.Pointing(leans, MastPointing.LeanDegrees(leans), beamwidth);
        }
    }

    private static IEnumerable<Ledger> Ledgers(MastInput input, MastAssembly assembly, WindModel wind, MastCase worst)
    {
        double top = assembly.BracketHeightMetres!.Value + input.Mast!.FreeLengthMetres;
        yield return wind.Ledger(top, "the top of the mast");
        foreach (SectionCheck check in worst.Checks)
        {
            yield return worst.MomentLedger(check);
            yield return check.ResistanceLedger();
            yield return check.UtilisationLedger(worst.Name);
        }

        yield return worst.DeflectionLedger();
        yield return worst.MassLedger();
    }
}
