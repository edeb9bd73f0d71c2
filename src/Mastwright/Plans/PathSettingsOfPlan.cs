using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Plans;

/// <summary>Fills the settings of a plan's paths, and lists each default that was used.</summary>
internal static class PathSettingsOfPlan
{
    internal static (PathSettings Settings, ImmutableArray<Assumption> Assumptions) Of(Plan plan)
    {
        ImmutableArray<Assumption>.Builder assumed = ImmutableArray.CreateBuilder<Assumption>();
        double Or(double? given, double otherwise, Assumption assumption)
        {
            if (given is null)
            {
                assumed.Add(assumption);
            }

            return given ?? otherwise;
        }

        // A correction for every link brings its own spread: the default of the model's error is then not used.
        bool isSpreadMeasured = CorrectionUse.Of(plan) is { AppliesTo.IsEmpty: true };
        PathSettings settings = new()
        {
            FrequencyHz = plan.Modem.FrequencyHz,
            TimePercent = Or(plan.Wanted.TimePercent, PlanDefaults.TimePercent, PlanDefaults.Time),
            LocationPercent = Or(plan.Wanted.LocationPercent, PlanDefaults.LocationPercent, PlanDefaults.Location),
            LowKFactor = Or(plan.Air.LowKFactor, PlanDefaults.LowKFactor, PlanDefaults.LowK),
            LocationDb = plan.Spread.LocationDb,
            Wanted = new()
            {
                MarginDb = Or(plan.Wanted.MarginDb, PlanDefaults.MarginDb, PlanDefaults.Margin),
                ModelErrorDb = isSpreadMeasured
                    ? plan.Spread.ModelErrorDb ?? PlanDefaults.ModelErrorDb
                    : Or(plan.Spread.ModelErrorDb, PlanDefaults.ModelErrorDb, PlanDefaults.ModelError),
                ModelErrorSource = plan.Spread.ModelErrorDb is null ? PlanDefaults.ModelError.Source : "plan",
                LocationDb = plan.Spread.LocationDb ?? 0,
                LocationSource = plan.Spread.LocationDb is null ? "ITU-R P.1812, location variability" : "plan",
                FadingDb = Or(plan.Spread.FadingDb, PlanDefaults.FadingDb, PlanDefaults.Fading),
                FadingSource = plan.Spread.FadingDb is null ? PlanDefaults.Fading.Source : "plan",
            },
        };
        return (settings, assumed.ToImmutable());
    }
}
