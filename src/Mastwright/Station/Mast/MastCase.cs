using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Station.Wind;

namespace Mastwright.Station.Mast;

/// <summary>One case of wind, bare or with ice, worked out on a mast that is known.</summary>
/// <remarks>Forces and moments are those of the wind without load factor (<see cref="WindModel.PlainName"/>); the factors on them are the wind model's.</remarks>
internal sealed class MastCase
{
    internal const double Gravity = 9.80665;

    private const int StepsATube = 12;

    private readonly MastInput _input;
    private readonly WindModel _wind;
    private readonly GuyLevel? _guys;

    internal MastCase(MastInput input, MastAssembly assembly, WindModel wind, IceRow? ice, ImmutableArray<MastLoad> loads, ImmutableArray<MastMass> masses)
    {
        _input = input;
        _wind = wind;
        _guys = input.Mast!.Guys;
        Ice = ice;
        Tubes = assembly.Tubes;
        Masses = masses;
        ImmutableArray<(double LengthMetres, double Stiffness)> stiffness = [.. Tubes.Select(tube => (tube.Tube.LengthMetres, tube.Stiffness))];
        if (_guys is { } guys)
        {
            GuyAcrossNewtons = GuyPull.AcrossNewtons(stiffness, loads, guys.HeightMetres, GuyPull.StiffnessNewtonsPerMetre(guys));
            loads = loads.Add(new(
                "guy", "pull of the guys", -GuyAcrossNewtons, guys.HeightMetres, guys.HeightMetres, input.MastPath + "/guys",
                FormattableString.Invariant($"{GuyAcrossNewtons:0} N across, as a spring of {GuyPull.StiffnessNewtonsPerMetre(guys) / 1000:0} kN/m")));
        }

        Loads = loads;
        Beam = new(stiffness, loads);
        Checks = [.. Sections()];
        Worst = Checks.MaxBy(check => check.Utilisation)!;
    }

    internal IceRow? Ice { get; }

    internal ImmutableArray<StandingTube> Tubes { get; }

    internal ImmutableArray<MastLoad> Loads { get; }

    internal ImmutableArray<MastMass> Masses { get; }

    internal Cantilever Beam { get; }

    internal double GuyAcrossNewtons { get; }

    /// <summary>Every section that is checked, from the bracket up.</summary>
    internal ImmutableArray<SectionCheck> Checks { get; }

    internal SectionCheck Worst { get; }

    internal string Name => Ice is null ? "without ice" : "with ice of class " + Ice.Key;

    internal double Factor => _wind.StructuralFactor * _wind.LoadFactor;

    /// <summary>Moment at a height as a sum over what the wind blows at, then with the factors of the design value.</summary>
    internal Ledger MomentLedger(SectionCheck at)
    {
        ImmutableArray<LedgerLine>.Builder lines = ImmutableArray.CreateBuilder<LedgerLine>();
        double characteristic = 0;
        foreach (MastLoad load in Loads)
        {
            double moment = load.MomentAt(at.HeightMetres);
            characteristic += moment;
            lines.Add(new(load.Code, load.Label, moment, load.Source, FormattableString.Invariant(
                $"{load.Above(at.HeightMetres):0.0} N, centre {Math.Max(load.FromMetres, at.HeightMetres) / 2 + (load.ToMetres / 2) - at.HeightMetres:0.00} m above") + "; " + load.Note));
        }

        double structural = characteristic * (_wind.StructuralFactor - 1);
        lines.Add(new("structural-factor", "structural factor", structural, _wind.StructuralSource, FormattableString.Invariant(
            $"× {_wind.StructuralFactor:0.###}; {_wind.PlainName} so far: {characteristic:0.0} N·m")));
        double load1 = (characteristic + structural) * (_wind.LoadFactor - 1);
        lines.Add(new("load-factor", "load factor for wind", load1, _wind.LoadFactorSource, FormattableString.Invariant($"× {_wind.LoadFactor:0.###}")));
        return Ledger.SummingTo(
            characteristic + structural + load1, FormattableString.Invariant($"bending moment {at.Place}, design value, {Name}"), "N·m", lines.DrainToImmutable());
    }

    /// <summary>Way of the top across, part by part, under the wind without load factor.</summary>
    internal Ledger DeflectionLedger()
    {
        (double, double)[] tubes = [.. Tubes.Select(tube => (tube.Tube.LengthMetres, tube.Stiffness))];
        ImmutableArray<LedgerLine> lines =
        [
            .. Loads.Select(load => new LedgerLine(
                load.Code, load.Label, new Cantilever(tubes, [load]).DeflectionMetres(Beam.LengthMetres) * 1000, load.Source, FormattableString.Invariant($"{load.ForceNewtons:0.0} N"))),
        ];
        return new($"way of the mast's top across, {_wind.PlainName}, {Name}", "mm", lines);
    }

    internal Ledger MassLedger() => new($"mass above the upper bracket, {Name}", "kg", [.. Masses.Select(mass => new LedgerLine(mass.Code, mass.Label, mass.Kilograms, mass.Source))]);

    /// <summary>Moment, strength and way across from the bracket to the top: <see cref="StepsATube"/> steps a tube, both sides of where two tubes meet.</summary>
    internal MastBending Bending() => new(Name, [.. Tubes.SelectMany(Points)], Loads, Worst.Place, Worst.HeightMetres, Worst.Utilisation) { WindName = _wind.PlainName };

    private IEnumerable<BendingPoint> Points(StandingTube tube)
    {
        // The strength between the sections that are checked is that of the unsoftened tube.
        double strength = tube.YieldMoment * StrengthFactor.Of(_input, _wind, tube).Share;
        for (int i = 0; i <= StepsATube; i++)
        {
            double height = tube.FootMetres + (tube.Tube.LengthMetres * i / StepsATube);
            double here = i == 0 && tube.IsSoftened ? strength * tube.Grade.WeldShare : strength;
            yield return new(height, Math.Abs(Beam.MomentNewtonMetres(height)) * Factor, here, Beam.DeflectionMetres(height));
        }
    }

    /// <summary>Forces in newtons of the lower and the upper bracket, as design values.</summary>
    internal (double Lower, double Upper) Brackets(double spacingMetres)
    {
        double couple = Beam.MomentNewtonMetres(0) / spacingMetres;
        return (Math.Abs(couple) * Factor, Math.Abs(couple + Beam.ShearNewtons(0)) * Factor);
    }

    private IEnumerable<SectionCheck> Sections()
    {
        foreach (StandingTube tube in Tubes)
        {
            yield return Check(tube, tube.FootMetres, tube.FootMetres == 0 ? "at the upper bracket" : FormattableString.Invariant($"at the foot of tube {tube.Number}, {tube.FootMetres:0.00} m up"), tube.IsSoftened);
            if (_guys is { } guys && guys.HeightMetres > tube.FootMetres && guys.HeightMetres < tube.TopMetres)
            {
                yield return Check(tube, guys.HeightMetres, FormattableString.Invariant($"at the guys, {guys.HeightMetres:0.00} m up"), isSoftened: false);
            }
        }
    }

    private SectionCheck Check(StandingTube tube, double height, string place, bool isSoftened)
    {
        double down = Masses.Sum(mass => mass.Above(height)) * Gravity;
        double guyDown = _guys is { } guys && guys.HeightMetres > height ? GuyPull.DownNewtons(GuyAcrossNewtons, guys.AngleDegrees) : 0;
        return new()
        {
            Tube = tube,
            HeightMetres = height,
            Place = place,
            CharacteristicMoment = Math.Abs(Beam.MomentNewtonMetres(height)),
            DesignMoment = Math.Abs(Beam.MomentNewtonMetres(height)) * Factor,
            DesignThrust = (down * _wind.WeightFactor) + (guyDown * Factor),
            WeldShare = isSoftened ? tube.Grade.WeldShare : 1,
            Strength = StrengthFactor.Of(_input, _wind, tube),
            Wind = _wind,
        };
    }
}
