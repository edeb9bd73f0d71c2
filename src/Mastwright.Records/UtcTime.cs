using System.Globalization;
using Mastwright.Records.Import;

namespace Mastwright.Records;

/// <summary>Times of commands and reports, as text and in microseconds since 1970 UTC.</summary>
public static class UtcTime
{
    /// <summary>Reads a date and time of ISO 8601 with its zone, such as 2026-07-01T12:00Z or 2026-07-01T14:00:30+02:00.</summary>
    public static bool TryParse(string text, out long microseconds)
    {
        ArgumentNullException.ThrowIfNull(text);
        // The seconds may be left out where a person writes the time.
        string whole = text.Length > 16 && text[13] == ':' && text[16] is 'Z' or 'z' or '+' or '-' ? text.Insert(16, ":00") : text;
        return ClockText.TryIso(whole, zoneMayLack: false, out microseconds, out _);
    }

    /// <summary>The text of a time, to the second where it is whole: 2026-07-01T12:00:00Z.</summary>
    public static string Text(long microseconds) =>
        new DateTime(DateTime.UnixEpoch.Ticks + (microseconds * TimeSpan.TicksPerMicrosecond), DateTimeKind.Utc).ToString("yyyy-MM-dd'T'HH:mm:ss.FFFFFF'Z'", CultureInfo.InvariantCulture);

    /// <summary>The time that a clock shows.</summary>
    public static long Of(DateTimeOffset time) => (time - DateTimeOffset.UnixEpoch).Ticks / TimeSpan.TicksPerMicrosecond;
}
