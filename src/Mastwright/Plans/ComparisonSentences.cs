using System.Globalization;
using Mastwright.Quantities;

namespace Mastwright.Plans;

/// <summary>A comparison in English: which fit-out is better in what.</summary>
public static class ComparisonSentences
{
    /// <summary>A sentence for each measure.</summary>
    public static IEnumerable<string> Of(FitOutComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        return comparison.Measures.Select(measure => Sentence(comparison, measure));
    }

    /// <summary>A value without its unit: "12.3", "4…10", "18.9 of 27", "?".</summary>
    /// <param name="measure">The measure.</param>
    /// <param name="value">Its value of one fit-out.</param>
    public static string Value(ComparedMeasure measure, ComparedValue value)
    {
        ArgumentNullException.ThrowIfNull(measure);
        ArgumentNullException.ThrowIfNull(value);
        if (value.Value is not { } known)
        {
            return "?";
        }

        string text = Text(known, measure);
        string limit = measure.Better == BetterWhen.Neither && value.Limit is { } most ? string.Create(CultureInfo.InvariantCulture, $" of {most:0.#}") : "";
        string note = measure.Code == "links-kept" ? " " + value.Note : "";
        return text + limit + note;
    }

    private static string Sentence(FitOutComparison comparison, ComparedMeasure measure)
    {
        (string Key, ComparedValue Value)[] known =
            [.. comparison.FitOuts.Zip(measure.Values, (fitOut, value) => (fitOut.FitOut.Key, value)).Where(one => one.value.Value is not null)];
        string lacking = string.Join(", ", comparison.FitOuts.Zip(measure.Values, (fitOut, value) => (fitOut.FitOut.Key, value)).Where(one => one.value.Value is null).Select(one => one.Key + Note(measure, one.value)));
        string open = lacking.Length == 0 ? "" : $"; not known of {lacking}";
        string label = char.ToUpperInvariant(measure.Label[0]) + measure.Label[1..];
        if (known.Length == 0)
        {
            return $"{label}: {(measure.Values.All(value => value.Note.Length == 0) ? "not known of any" : "not known of " + lacking)}.";
        }

        string values = string.Join(", ", known.Select(one => $"{one.Key} {Value(measure, one.Value)}{(measure.Unit.Length == 0 ? "" : " " + measure.Unit)}{Note(measure, one.Value)}"));
        if (measure.Better == BetterWhen.Neither)
        {
            string[] over = [.. known.Where(one => one.Value.Limit is { } limit && one.Value.Value!.Value.Median > limit).Select(one => one.Key)];
            string none = known.Any(one => one.Value.Limit is null) ? "" : ", none above its limit";
            return $"{label}: {values}{(over.Length > 0 ? $"; above the limit: {string.Join(", ", over)}" : none)}{open}.";
        }

        string[] ahead = [.. measure.Ahead.Select(i => comparison.FitOuts[i].FitOut.Key)];
        string verdict = ahead.Length switch
        {
            0 => known.Length == 1 ? "" : "no clear difference: ",
            1 => $"{ahead[0]} is better: ",
            _ => $"{string.Join(", ", ahead[..^1])} and {ahead[^1]} are better: ",
        };
        return $"{label}: {verdict}{values}{open}.";
    }

    private static string Note(ComparedMeasure measure, ComparedValue value) => value.Note.Length == 0 || measure.Code is "links-kept" or "radiated-power"
        ? ""
        : measure.Code == "weakest-link" ? $" (to {value.Note})" : $" ({value.Note})";

    private static string Text(Estimate value, ComparedMeasure measure)
    {
        string low = Number(value.Low, measure);
        string high = Number(value.High, measure);
        return low == high ? Number(value.Median, measure) : $"{low}…{high}";
    }

    private static string Number(double value, ComparedMeasure measure) => measure.Unit switch
    {
        "" or "h" or "%" or "°C" => Math.Round(value).ToString("0", CultureInfo.InvariantCulture),
        "W" => value.ToString("0.00", CultureInfo.InvariantCulture),
        _ => value.ToString(measure.Code == "weakest-link" ? "+0.0;-0.0;0.0" : "0.0", CultureInfo.InvariantCulture),
    };
}
