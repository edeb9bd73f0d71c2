using System.Globalization;
using Mastwright.Evidence.Statistics;

namespace Mastwright.Evidence.Proof;

/// <summary>Numbers of a proof as text.</summary>
internal static class ProofWords
{
    internal static string Db(double value) => Text($"{value:0.0} dB");

    internal static string Size(double value) => Db(Math.Abs(value));

    internal static string Signed(double value) => Text($"{value:+0.0;−0.0;0.0} dB").Replace('-', '−');

    internal static string Range(ConfidenceInterval? interval, double confidence) => interval is { } one
        ? Text($"({100 * confidence:0.#} %: {one.Low:0.0} to {one.High:0.0})").Replace('-', '−')
        : "(no interval: too few days)";

    internal static string Share(ConfidenceInterval? interval) => interval is { } one ? Text($"{100 * one.Low:0} to {100 * one.High:0} %") : "unknown";

    internal static string Day(long microseconds) => DateTimeOffset.UnixEpoch.AddTicks(10 * microseconds).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    internal static string Count(double value, string one, string many) => Text($"{value:0} {(value == 1 ? one : many)}");

    internal static string List(IReadOnlyList<string> names) => names.Count switch
    {
        0 => "none",
        1 => names[0],
        _ => string.Join(", ", names.Take(names.Count - 1)) + " and " + names[^1],
    };

    internal static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
