namespace Mastwright.Evidence.Proof;

/// <summary>A period from one moment up to but without another.</summary>
/// <param name="FromMicroseconds">Its first microsecond since 1970 UTC.</param>
/// <param name="ToMicroseconds">The first after it.</param>
public readonly record struct ProofPeriod(long FromMicroseconds, long ToMicroseconds)
{
    /// <summary>Microseconds of an hour.</summary>
    public const long Hour = 3_600_000_000;

    /// <summary>Hours that it touches; hours begin on the UTC hour, so that the same hours of a day can be compared.</summary>
    public int Hours => (int)(HourOf(ToMicroseconds - 1) - FirstHour + 1);

    /// <summary>Its first hour, counted from 1970.</summary>
    public long FirstHour => HourOf(FromMicroseconds);

    /// <summary>Days of 24 hours that it touches, from its first hour on.</summary>
    public int Days => (Hours + 23) / 24;

    /// <summary>Its length in days.</summary>
    public double LengthDays => (ToMicroseconds - FromMicroseconds) / (24.0 * Hour);

    /// <summary>Whether a moment lies in it.</summary>
    public bool Holds(long timeMicroseconds) => timeMicroseconds >= FromMicroseconds && timeMicroseconds < ToMicroseconds;

    /// <summary>The hour of a moment, counted from 1970.</summary>
    public static long HourOf(long timeMicroseconds) => (long)Math.Floor(timeMicroseconds / (double)Hour);
}
