using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.BoxClimate;

/// <summary>How warm, cold and damp it gets in a box, and whether water gets in: every judgement with its ledgers.</summary>
public static class BoxExamination
{
    /// <summary>Examines a box.</summary>
    /// <param name="input">What is known.</param>
    public static BoxResult Of(BoxInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        BoxFit box = input.Box;
        if (!box.IsDescribed)
        {
            return box.TemperatureCelsius is not null
                ? BoxResult.Nothing
                : new() { Examination = new() { Findings = [Finding.Unknown("box-not-described", input.FitOutPath, "box")] } };
        }

        List<Assumption> assumptions = [];
        List<Finding> findings = [];
        List<Ledger> ledgers = [];
        BoxResult result = BoxResult.Nothing;
        Estimate? heat = Heat(input, ledgers, assumptions);
        Estimate? outside = box.OutsideCelsius ?? OfYear(input.Year);
        if (box.OutsideCelsius is null && outside is not null && input.IsMadeYear)
        {
            assumptions.Add(BoxDefaults.MadeOutside(input.Path));
        }

        if (BoxReading.Of(input, heat, outside, findings, assumptions) is { } model)
        {
            BoxClimateReview review = new(input, model, heat!.Value, outside!.Value, assumptions);
            findings.AddRange(review.Findings());
            ledgers.AddRange(review.Ledgers());
            result = new() { InsideCelsius = review.InsideCelsius, HeatWatts = heat, DewHours = review.Year?.DewHours, DewLacks = input.YearLacks, Model = model, OutsideCelsius = outside };
        }

        findings.AddRange(BoxWaterFindings.Of(input));
        return result with
        {
            Examination = new() { Ledgers = [.. ledgers], Findings = [.. findings], Assumptions = [.. assumptions.Distinct()] },
        };
    }

    private static Estimate? Heat(BoxInput input, List<Ledger> ledgers, List<Assumption> assumptions)
    {
        Ledger? parts = input.Box.HeatWatts is { } given
            ? new("heat in the box, on average", "W", [new("given", "everything inside", given.Median, input.Path + "/heat")])
            : input.SupplyHeat;
        if (parts is null)
        {
            return null;
        }

        if (input.Box.HeatWatts is null)
        {
            assumptions.Add(BoxDefaults.Heat(input.Path));
        }

        double heater = input.Box.HeaterWatts ?? 0;
        Ledger all = heater > 0 ? new(parts.Title, parts.Unit, parts.Lines.Add(new("heater", "heater, always on", heater, input.Path + "/heater"))) : parts;
        ledgers.Add(all);
        return (input.Box.HeatWatts ?? Estimate.Exactly(parts.Total)) + Estimate.Exactly(heater);
    }

    private static Estimate? OfYear(ImmutableArray<BoxHour> year) => year.IsEmpty
        ? null
        : Estimate.Of(year.Min(hour => hour.OutsideCelsius), year.Average(hour => hour.OutsideCelsius), year.Max(hour => hour.OutsideCelsius));
}
