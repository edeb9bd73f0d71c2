using System.Globalization;
using Mastwright.Findings;

namespace Mastwright.Station.Rules;

/// <summary>How rules and their numbers are written in sentences.</summary>
internal static class RuleWords
{
    /// <summary>A band as "869.4–869.65 MHz".</summary>
    internal static string Band(double lowHz, double highHz) => Text($"{lowHz / 1e6:0.####}–{highHz / 1e6:0.####} MHz");

    /// <summary>A frequency in MHz.</summary>
    internal static string Megahertz(double hertz) => Text($"{hertz / 1e6:0.0###} MHz");

    /// <summary>A width in kHz.</summary>
    internal static string Kilohertz(double hertz) => Text($"{hertz / 1e3:0.#} kHz");

    /// <summary>A level in dBm that is not to be exceeded, with one decimal and never rounded up: what is told may be set as it stands.</summary>
    /// <remarks>The billionth of a tenth lets a level through that only the sum of its lines made a little less.</remarks>
    internal static string AtMost(double dbm) => Text($"{Math.Floor((10 * dbm) + 1e-9) / 10:0.0}");

    /// <summary>A row with its band and its text: "band P (869.4–869.65 MHz, ERC/REC 70-03)"; the band is left out where the row is named by it.</summary>
    internal static string Named(RadioRule rule) => rule.Name.Contains("MHz", StringComparison.Ordinal)
        ? $"{rule.Name} ({rule.Source.Short})"
        : $"{rule.Name} ({Band(rule.LowHz, rule.HighHz)}, {rule.Source.Short})";

    /// <summary>A power as "27.0 dBm ERP".</summary>
    internal static string Power(double dbm, PowerReference reference) => Text($"{dbm:0.0} dBm{Suffix(reference)}");

    /// <summary>A power with its watts: "27.0 dBm ERP (500 mW)".</summary>
    internal static string PowerAndWatts(double dbm, PowerReference reference)
    {
        double milliwatts = Math.Pow(10, dbm / 10);
        string watts = milliwatts >= 1000 ? Text($"{milliwatts / 1000:0.##} W") : milliwatts >= 10 ? Text($"{milliwatts:0} mW") : Text($"{milliwatts:0.##} mW");
        return $"{Power(dbm, reference)} ({watts})";
    }

    /// <summary>A verdict in a sentence.</summary>
    internal static string Word(Verdict verdict) => verdict switch
    {
        Verdict.Ok => "ok",
        Verdict.Tight => "tight",
        Verdict.Fails => "fails",
        _ => "unknown",
    };

    /// <summary>A share of the time: three significant digits.</summary>
    internal static string Percent(double percent) => percent >= 10 ? Text($"{percent:0.0} %") : percent >= 1 ? Text($"{percent:0.00} %") : Text($"{percent:0.000} %");

    /// <summary>What to say of a row that nobody held, or of which edition it is nobody knows; empty for one that was read.</summary>
    internal static string Doubt(RuleSource source) => source switch
    {
        { FromMemory: true } => $" The row is from memory: read {source.Document} before relying on it.",
        { EditionKnown: false } => $" Of which edition the row is was not told where it was read: read {source.Document} in force before relying on it.",
        _ => "",
    };

    /// <summary>The same of a row in its region, whose own law may be what was not read.</summary>
    internal static string Doubt(RuleSource source, RadioRegion region) => Doubt(source) + (region.Unread.Length > 0 ? $" Not read: {region.Unread}." : "");

    internal static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static string Suffix(PowerReference reference) => reference switch
    {
        PowerReference.Erp => " ERP",
        PowerReference.Eirp => " EIRP",
        _ => " at the antenna's port",
    };
}
