using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Station.Wind;

/// <summary>Reads a basic wind for a form: refuses a kind that the form cannot take, and applies the conversions that were asked for.</summary>
public static class WindReading
{
    /// <summary>Least return period in years of an ultimate wind of ASCE/SEI 7-16 (Figures 26.5-1 and 26.5-2, from memory).</summary>
    private const int LeastUltimateYears = 300;

    /// <summary>The pressure model of a basic wind.</summary>
    /// <param name="wind">The wind.</param>
    /// <param name="catalogue">Where terrain and exposure categories come from.</param>
    /// <param name="planPath">Where in the plan the wind stands.</param>
    /// <param name="problem">Why there is none; null when there is one.</param>
    /// <returns>The model; null when something is missing or the form refuses the wind.</returns>
    public static WindModel? Of(BasicWind wind, StationCatalogue catalogue, string planPath, out Finding? problem)
    {
        ArgumentNullException.ThrowIfNull(wind);
        ArgumentNullException.ThrowIfNull(catalogue);
        problem = Missing(wind, planPath) ?? (wind.Form == WindForm.Asce ? AsceRefusal(wind, planPath) : EurocodeRefusal(wind, planPath));
        if (problem is not null)
        {
            return null;
        }

        if (wind.Form == WindForm.Asce)
        {
            return catalogue.Structure.Exposures.Find(wind.Exposure) is { } exposure
                ? AsceModel.Of(wind, exposure, planPath)
                : Unlisted("exposure", wind.Exposure, catalogue.Structure.Exposures.Listed(), planPath, out problem);
        }

        return catalogue.Structure.Terrains.Find(wind.Terrain) is { } terrain
            ? EurocodeModel.Of(wind, terrain, planPath)
            : Unlisted("terrain", wind.Terrain, catalogue.Structure.Terrains.Listed(), planPath, out problem);
    }

    /// <summary>A wind in words: "a 3-second gust of 40 m/s, 50 years, characteristic".</summary>
    internal static string Words(BasicWind wind) => FormattableString.Invariant(
        $"a {Word(wind.Averaging!.Value)} of {wind.SpeedMetresPerSecond:0.##} m/s, {wind.ReturnPeriodYears} years, {(wind.Level == WindLevel.Ultimate ? "ultimate" : "characteristic")}");

    private static string Word(WindAveraging averaging) => averaging == WindAveraging.ThreeSecondGust ? "3-second gust" : "10-minute mean";

    private static Finding? Missing(BasicWind wind, string planPath)
    {
        MissingKeys missing = new();
        missing.Need(wind.SpeedMetresPerSecond is null, "speed");
        missing.Need(wind.Averaging is null, "averaging");
        missing.Need(wind.ReturnPeriodYears is null, "return-period");
        missing.Need(wind.Level is null, "level");
        missing.Need(wind.Form is null, "form");
        missing.Need(wind.Form == WindForm.Eurocode && wind.Terrain.Length == 0, "terrain");
        missing.Need(wind.Form == WindForm.Asce && wind.Exposure.Length == 0, "exposure");
        return missing.Any ? Finding.Unknown("wind-unknown", planPath, "wind pressure", ("missing", missing.Listed)) with { Unit = "Pa" } : null;
    }

    private static Finding? EurocodeRefusal(BasicWind wind, string planPath)
    {
        List<string> advice = [];
        if (wind is { Averaging: WindAveraging.ThreeSecondGust, GustFactor: null })
        {
            advice.Add("gust-factor");
        }

        if (wind is { Level: WindLevel.Ultimate, UltimateFactor: null })
        {
            advice.Add("ultimate-factor");
        }

        if (wind is { Level: WindLevel.Characteristic, ReturnPeriodYears: not EurocodeWind.BasicReturnPeriodYears, DesignReturnPeriodYears: null })
        {
            advice.Add("design-return-period");
        }

        return Refused(wind, advice, "a 10-minute mean of 50 years, characteristic", planPath);
    }

    private static Finding? AsceRefusal(BasicWind wind, string planPath)
    {
        List<string> advice = [];
        if (wind is { Averaging: WindAveraging.TenMinuteMean, GustFactor: null })
        {
            advice.Add("gust-factor");
        }

        if (wind is { Level: WindLevel.Characteristic, UltimateFactor: null })
        {
            advice.Add("ultimate-factor");
        }

        bool isTooCommon = wind is { Level: WindLevel.Ultimate, ReturnPeriodYears: < LeastUltimateYears };
        return isTooCommon || advice.Count > 0
            ? Refused(wind, advice, "an ultimate 3-second gust of 300, 700, 1700 or 3000 years", planPath, isTooCommon)
            : null;
    }

    private static Finding? Refused(BasicWind wind, List<string> conversions, string needs, string planPath, bool always = false) =>
        conversions.Count == 0 && !always ? null : new()
        {
            Code = "wind-kind-refused",
            Subject = planPath,
            Verdict = Verdict.Unknown,
            Quantity = "wind pressure",
            Unit = "Pa",
            Source = WindModel.NameOf(wind.Form!.Value),
            Details = FindingDetails.Of(
                ("form", WindModel.NameOf(wind.Form.Value)),
                ("needs", needs),
                ("given", Words(wind)),
                ("advice", conversions.Count == 0
                    ? "Give a wind of that kind."
                    : $"Give a wind of that kind, or ask for the conversion with {string.Join(" and ", conversions)}.")),
        };

    private static WindModel? Unlisted(string key, string given, string known, string planPath, out Finding? problem)
    {
        problem = new()
        {
            Code = "wind-category-unknown",
            Subject = StationDefaults.Join(planPath, key),
            Verdict = Verdict.Unknown,
            Quantity = "wind pressure",
            Unit = "Pa",
            Details = FindingDetails.Of(("key", key), ("given", given), ("known", known)),
        };
        return null;
    }
}
