using Mastwright.Quantities;

namespace Mastwright.Records.Import;

/// <summary>Reads the time of a row by a mapping, and tells a clock that cannot be right.</summary>
internal sealed class TimeReader
{
    private readonly TimeText time;
    private readonly FieldReader field;
    private readonly SourceClock clock;
    private readonly TimeZoneInfo? local;

    internal TimeReader(TimeText time, SourcePlaces places, SourceClock clock)
    {
        this.time = time;
        this.clock = clock;
        field = FieldReader.Of("time", time, places)!;
        ResolutionMicroseconds = Microseconds(time.Resolution)!.Value;
        AheadMicroseconds = Microseconds(time.AheadOfUtc);
        local = time.Zone is null or "utc" ? null : TimeZoneInfo.FindSystemTimeZoneById(time.Zone);
    }

    internal long ResolutionMicroseconds { get; }

    internal long? AheadMicroseconds { get; }

    /// <summary>A length of time in whole microseconds; null when it is none.</summary>
    internal static long? Microseconds(string? text) =>
        text is not null && Quantity.TryParse(text, Dimension.Time, out Estimate time, out _) ? (long)Math.Round(time.Median * 1e6) : null;

    internal ReadOnlySpan<char> Text<TRow>(TRow row)
        where TRow : ISourceRow, allows ref struct => field.Text(row);

    /// <summary>The time in microseconds since 1970 UTC; the reason is empty where it is one.</summary>
    internal long Read<TRow>(TRow row, out string reason)
        where TRow : ISourceRow, allows ref struct
    {
        ReadOnlySpan<char> written = field.Text(row);
        if (written.IsEmpty)
        {
            reason = "the time is empty";
            return 0;
        }

        if (!TryRead(written, out long microseconds, out bool isLocal))
        {
            reason = $"the time is not written as {time.Written}{(time is { Written: "iso-8601", Zone: null } ? " with its zone" : "")}";
            return 0;
        }

        reason = "";
        if (isLocal)
        {
            microseconds = FromLocal(microseconds, ref reason);
        }

        reason = reason.Length > 0 ? reason
            : microseconds < SourceClock.EarliestMicroseconds ? "the time is before the year 2000: the clock was not set"
            : microseconds - (AheadMicroseconds ?? 0) > clock.LatestMicroseconds ? "the time is in the future by the clock of this computer: one of the two is wrong, or a local time was taken for UTC"
            : "";
        return microseconds;
    }

    private bool TryRead(ReadOnlySpan<char> written, out long microseconds, out bool isLocal)
    {
        isLocal = false;
        return time.Written switch
        {
            "unix-seconds" => ClockText.TryUnix(written, 1_000_000, out microseconds),
            "unix-milliseconds" => ClockText.TryUnix(written, 1000, out microseconds),
            "unix-microseconds" => ClockText.TryUnix(written, 1, out microseconds),
            _ => ClockText.TryIso(written, zoneMayLack: time.Zone is not null, out microseconds, out bool zoneLacks) && ((isLocal = zoneLacks && local is not null) || true),
        };
    }

    /// <summary>UTC of a local time. The hour that comes twice a year is not guessed, and the one that is left out does not exist.</summary>
    private long FromLocal(long microseconds, ref string reason)
    {
        DateTime clockFace = new(DateTime.UnixEpoch.Ticks + (microseconds * TimeSpan.TicksPerMicrosecond), DateTimeKind.Unspecified);
        if (local!.IsAmbiguousTime(clockFace))
        {
            reason = $"the time is in the hour that comes twice as the clocks of {time.Zone} go back";
        }
        else if (local.IsInvalidTime(clockFace))
        {
            reason = $"the time is in the hour that the clocks of {time.Zone} leave out as they go forward";
        }

        return microseconds - (local.GetUtcOffset(clockFace).Ticks / TimeSpan.TicksPerMicrosecond);
    }
}
