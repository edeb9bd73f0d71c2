using Mastwright.Findings;
using Mastwright.Station.Wind;

namespace Mastwright.Station.Mast;

/// <summary>One section of a mast: what it has to bear and what it bears.</summary>
/// <remarks>
/// Elastic bending and thrust added: EN 1993-1-1, clause 6.2.9.2; EN 1999-1-1, clause 6.2.9, both on the safe side for a round tube. Buckling, fatigue,
/// dents, rust and holes are not counted.
/// </remarks>
internal sealed record SectionCheck
{
    internal required StandingTube Tube { get; init; }

    /// <summary>Height above the upper bracket in metres.</summary>
    internal required double HeightMetres { get; init; }

    internal required string Place { get; init; }

    /// <summary>Bending moment in N·m under the wind without structural or load factor.</summary>
    internal required double CharacteristicMoment { get; init; }

    /// <summary>Bending moment in N·m as a design value.</summary>
    internal required double DesignMoment { get; init; }

    /// <summary>Thrust in newtons as a design value.</summary>
    internal required double DesignThrust { get; init; }

    /// <summary>Share of the strength that a weld leaves.</summary>
    internal required double WeldShare { get; init; }

    /// <summary>What the code takes off the strength.</summary>
    internal required StrengthFactor Strength { get; init; }

    /// <summary>The wind whose factors are on moment and thrust.</summary>
    internal required WindModel Wind { get; init; }

    /// <summary>Bending strength in N·m as a design value.</summary>
    internal double ResistanceMoment => Tube.YieldMoment * WeldShare * Strength.Share;

    /// <summary>Thrust in newtons that the section's yield bears, as a design value.</summary>
    internal double ResistanceThrust => Tube.Section.AreaSquareMetres * Tube.Grade.YieldPa * WeldShare * Strength.Share;

    /// <summary>Share of the strength that is used, as design values: 1 is all of it.</summary>
    internal double Utilisation => (DesignMoment / ResistanceMoment) + (DesignThrust / ResistanceThrust);

    /// <summary>Share of the yield stress that the wind uses without any factor.</summary>
    internal double CharacteristicUtilisation => CharacteristicMoment / Tube.YieldMoment;

    internal Ledger ResistanceLedger()
    {
        double yield = Tube.YieldMoment;
        double softened = yield * WeldShare;
        return Ledger.SummingTo(ResistanceMoment, $"bending strength {Place}, design value", "N·m",
        [
            new("yield", $"{Tube.Grade.Name} at yield", yield, Tube.SizeSource + "; " + Tube.Grade.Source, FormattableString.Invariant(
                $"W = {Tube.Section.ElasticModulusMetres3 * 1e6:0.###} cm³ · {Tube.Grade.YieldPa / 1e6:0} MPa")),
            new("weld", "softening by the weld", softened - yield, Tube.Grade.Source, FormattableString.Invariant($"× {WeldShare:0.##}")),
            new(Strength.Code, Strength.Label, ResistanceMoment - softened, Strength.Source, Strength.Note),
        ]);
    }

    internal Ledger UtilisationLedger(string caseName) => Ledger.SummingTo(
        Utilisation * 100, $"share of the strength used {Place}, {caseName}", "%",
        [
            new("bending", "bending by the wind", 100 * DesignMoment / ResistanceMoment, "the two ledgers above", FormattableString.Invariant($"{DesignMoment:0.0} of {ResistanceMoment:0.0} N·m")),
            new("thrust", "weight and the guys' downthrust", 100 * DesignThrust / ResistanceThrust, Wind.Form == WindForm.Eurocode ? "EN 1993-1-1, clause 6.2.9.2" : "AISC 360-16, clause H1, from memory; added in full, on the safe side", FormattableString.Invariant(
                $"{DesignThrust:0} of {ResistanceThrust:0} N; weight × {Wind.WeightFactor:0.##}")),
        ]);
}
