using System.Globalization;

namespace Mastwright.Records.Import;

/// <summary>Reads the times that sources write.</summary>
internal static class ClockText
{
    /// <summary>Reads a date and time of ISO 8601 in its extended form; the T may be a blank, the fraction has any number of digits.</summary>
    /// <param name="text">As "2023-06-23T10:01:57.25Z" or with "+02:00" in place of the Z.</param>
    /// <param name="zoneMayLack">Whether a time without a zone is one too; else it is none.</param>
    /// <param name="microseconds">Microseconds since 1970, of UTC or, where the zone lacks, of the clock that wrote it; a finer fraction is cut.</param>
    /// <param name="zoneLacks">Whether the text names no zone.</param>
    internal static bool TryIso(ReadOnlySpan<char> text, bool zoneMayLack, out long microseconds, out bool zoneLacks)
    {
        microseconds = 0;
        zoneLacks = false;
        if (text.Length < 19 || text[4] != '-' || text[7] != '-' || text[10] is not ('T' or ' ') || text[13] != ':' || text[16] != ':'
            || !Digits(text[..4], out int year) || !Digits(text[5..7], out int month) || !Digits(text[8..10], out int day)
            || !Digits(text[11..13], out int hour) || !Digits(text[14..16], out int minute) || !Digits(text[17..19], out int second)
            || year < 1 || month is < 1 or > 12 || day < 1 || day > DateTime.DaysInMonth(year, month) || hour > 23 || minute > 59 || second > 60)
        {
            return false;
        }

        ReadOnlySpan<char> rest = text[19..];
        long fraction = 0;
        if (rest.Length > 1 && rest[0] is '.' or ',')
        {
            int end = rest[1..].IndexOfAnyExceptInRange('0', '9') is >= 0 and int other ? other + 1 : rest.Length;
            long worth = 100_000;
            foreach (char digit in rest[1..end])
            {
                fraction += (digit - '0') * worth;
                worth /= 10;
            }

            rest = rest[end..];
        }

        if (!TryZone(rest, zoneMayLack, out long zoneMinutes))
        {
            return false;
        }

        zoneLacks = rest.IsEmpty;
        // A second 60 (a leap second) counts on into the next minute, as Unix time has it.
        long seconds = (new DateTime(year, month, day, hour, minute, 0, DateTimeKind.Utc) - DateTime.UnixEpoch).Ticks / TimeSpan.TicksPerSecond;
        microseconds = ((seconds + second - (zoneMinutes * 60)) * 1_000_000) + fraction;
        return true;
    }

    /// <summary>Reads a count since 1970 UTC, which may have a fraction.</summary>
    internal static bool TryUnix(ReadOnlySpan<char> text, decimal microsecondsPerUnit, out long microseconds)
    {
        microseconds = 0;
        // Up to the year 9999: beyond it stands another unit than the mapping says.
        if (!decimal.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal value)
            || Math.Abs(value) > 253_402_300_799_000_000m / microsecondsPerUnit)
        {
            return false;
        }

        microseconds = (long)Math.Floor(value * microsecondsPerUnit);
        return true;
    }

    private static bool TryZone(ReadOnlySpan<char> text, bool mayLack, out long minutes)
    {
        minutes = 0;
        if (text.IsEmpty)
        {
            return mayLack;
        }

        if (text is "Z" or "z")
        {
            return true;
        }

        if (text.Length != 6 || text[0] is not ('+' or '-') || text[3] != ':' || !Digits(text[1..3], out int hours) || !Digits(text[4..], out int rest) || hours > 14 || rest > 59)
        {
            return false;
        }

        minutes = ((hours * 60) + rest) * (text[0] == '-' ? -1 : 1);
        return true;
    }

    private static bool Digits(ReadOnlySpan<char> text, out int value) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out value);
}
