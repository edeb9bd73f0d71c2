using System.Globalization;
using Mastwright.Quantities;

namespace Mastwright.Workbench.Components;

/// <summary>Numbers as the pages write them, in the invariant culture with a true minus.</summary>
internal static class Numbers
{
    /// <summary>A number with at most two decimals.</summary>
    internal static string Plain(double value) => value.ToString("0.##;−0.##;0", CultureInfo.InvariantCulture);

    /// <summary>A change, with its sign.</summary>
    internal static string Signed(double value) => value.ToString("+0.##;−0.##;0", CultureInfo.InvariantCulture);

    /// <summary>A margin with its sign, as a range in whole decibels where it is vague; "?" when unknown.</summary>
    internal static string Margin(Estimate? margin) => margin is not { } value ? "?"
        : value.High - value.Low < 2 ? value.Median.ToString("+0.0;−0.0;0.0", CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{value.Low:+0;−0;0}…{value.High:+0;−0;0}");

    /// <summary>A distance in kilometres with one decimal.</summary>
    internal static string Kilometres(double metres) => (metres / 1000).ToString("0.0", CultureInfo.InvariantCulture);

    /// <summary>A whole number that was asked for; null where nothing was, or it is out of range.</summary>
    internal static int? Whole(string? text, int least, int most) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= least && number <= most ? number : null;
}
