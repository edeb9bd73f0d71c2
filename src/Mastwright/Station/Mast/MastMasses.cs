using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Station.Wind;

namespace Mastwright.Station.Mast;

/// <summary>A mass carried by a mast.</summary>
/// <param name="Code">Stable name of its ledger line.</param>
/// <param name="Label">What a person reads.</param>
/// <param name="Kilograms">Mass in kg.</param>
/// <param name="FromMetres">Where it begins above the upper bracket.</param>
/// <param name="ToMetres">Where it ends.</param>
/// <param name="Source">Where it comes from.</param>
internal sealed record MastMass(string Code, string Label, double Kilograms, double FromMetres, double ToMetres, string Source)
{
    /// <summary>The part of it above a height, in kg.</summary>
    internal double Above(double heightMetres) => new MastLoad(Code, Label, Kilograms, FromMetres, ToMetres).Above(heightMetres);
}

/// <summary>The masses that a mast carries above its upper bracket.</summary>
internal static class MastMasses
{
    internal static ImmutableArray<MastMass> Of(MastInput input, MastAssembly assembly, IceRow? ice, List<Assumption> assumptions)
    {
        List<MastMass> masses = [];
        double density = input.Wind.IceDensity ?? ice?.DensityKilogramsPerCubicMetre ?? 0;
        foreach (StandingTube tube in assembly.Tubes)
        {
            masses.Add(new(
                FormattableString.Invariant($"tube-{tube.Number}"), FormattableString.Invariant($"tube {tube.Number}, {tube.Measures}"),
                tube.KilogramsPerMetre * tube.Tube.LengthMetres, tube.FootMetres, tube.TopMetres, tube.SizeSource));
            AddIce(FormattableString.Invariant($"ice-{tube.Number}"), FormattableString.Invariant($"ice on tube {tube.Number}"), tube.Section.OuterDiameterMetres, tube.FootMetres, tube.TopMetres);
        }

        double centre = assembly.AntennaCentreMetres ?? input.Mast!.FreeLengthMetres;
        double half = (assembly.AntennaLengthMetres ?? 0) / 2;
        Known("antenna", "antenna", input.Antenna.MassKilograms, centre - half, centre + half, input.AntennaPath + "/mass");
        if (input.Antenna.DiameterMetres is { } diameter)
        {
            AddIce("ice-antenna", "ice on the antenna", diameter, centre - half, centre + half);
        }

        if (input.Mast!.Box is { } box)
        {
            Known("box", "box", box.MassKilograms, box.CentreMetres, box.CentreMetres, input.MastPath + "/box/mass");
        }

        if (input.Mast.Cable is { } cable)
        {
            double length = Math.Min(cable.LengthMetres ?? input.Mast.FreeLengthMetres, input.Mast.FreeLengthMetres);
            Known("cable", "cable", cable.KilogramsPerMetre * length, 0, length, input.MastPath + "/cable/mass-per-metre");
        }

        if (input.Mast.Guys is { } guys)
        {
            double ropeMetres = (guys.Count ?? GuyLevel.UsualCount) * guys.LengthMetres / 2;
            masses.Add(new("guys", "half of the guys", GuyPull.KilogramsPerMetre(guys) * ropeMetres, guys.HeightMetres, guys.HeightMetres, input.MastPath + "/guys"));
            if (ice is not null)
            {
                masses.Add(new("ice-guys", "half of the ice on the guys", IceCoat.On(ice, guys.DiameterMetres, density).MassKilogramsPerMetre * ropeMetres, guys.HeightMetres, guys.HeightMetres, ice.Source));
            }

            if (guys.Count is null)
            {
                assumptions.Add(new("guy-count", FormattableString.Invariant($"{GuyLevel.UsualCount} guys"), "assumed", input.MastPath + "/guys/count"));
            }
        }

        return [.. masses];

        void Known(string code, string label, double? kilograms, double from, double to, string source)
        {
            if (kilograms is { } mass)
            {
                masses.Add(new(code, label, mass, from, to, source));
            }
            else
            {
                assumptions.Add(new("mass-not-counted-" + code, $"the mass of the {label} is not known and not counted", "assumed", source));
            }
        }

        void AddIce(string code, string label, double bare, double from, double to)
        {
            if (ice is not null)
            {
                masses.Add(new(code, label, IceCoat.On(ice, bare, density).MassKilogramsPerMetre * (to - from), from, to, ice.Source));
            }
        }
    }
}
