using Mastwright.Station.Wind;

namespace Mastwright.Station.Mast;

/// <summary>What a design code takes off the yield strength: a partial factor that divides it, or a resistance factor that multiplies it.</summary>
/// <param name="Code">Stable name of its ledger line.</param>
/// <param name="Label">What a person reads.</param>
/// <param name="Share">What is left of the strength, above 0 to 1.</param>
/// <param name="Note">The factor as its code writes it.</param>
/// <param name="Source">Document and clause, catalogue row, or place in the plan.</param>
internal sealed record StrengthFactor(string Code, string Label, double Share, string Note, string Source)
{
    /// <summary>φ of bending and of thrust by AISC 360-16, chapters E and F, for steel, and by the Aluminum Design Manual, part I, chapters E and F, for aluminium; from memory.</summary>
    private const double ResistanceFactor = 0.9;

    /// <summary>The factor of a tube: the plan's own, else that of the code that goes with the wind's form.</summary>
    internal static StrengthFactor Of(MastInput input, WindModel wind, StandingTube tube)
    {
        if (input.Mast!.MaterialFactor is { } given)
        {
            return Partial(given, input.MastPath + "/material-factor");
        }

        return wind.Form == WindForm.Eurocode
            ? Partial(tube.Grade.MaterialFactor, "catalogue " + tube.Grade.Key + ": " + tube.Grade.Source)
            : new(
                "resistance-factor", "resistance factor φ", ResistanceFactor, FormattableString.Invariant($"× {ResistanceFactor:0.00}"),
                (tube.Grade.Material == TubeMaterial.Steel ? "AISC 360-16, clause F1" : "Aluminum Design Manual, part I, chapter F") + ", from memory");
    }

    private static StrengthFactor Partial(double factor, string source) => new("material-factor", "partial factor on the strength", 1 / factor, FormattableString.Invariant($"÷ {factor:0.##}"), source);
}
