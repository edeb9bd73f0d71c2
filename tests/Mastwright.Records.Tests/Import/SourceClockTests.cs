using Mastwright.Evidence;

namespace Mastwright.Tests.Records.Import;

/// <summary>The clock of these imports stands at 2026-08-01T00:00:00Z.</summary>
public sealed class SourceClockTests
{
    private const string Mapping = "records: 1\ntime: {column: t, written: iso-8601, ZONE, resolution: 1 s}\nreceiver: {column: at}\n";

    [Theory]
    [InlineData("1970-01-01 00:20:11", "the clock was not set")]
    [InlineData("1999-12-31 23:59:59", "the clock was not set")]
    [InlineData("2026-08-01 00:10:01", "in the future")]
    [InlineData("2026-08-01 02:00:00", "a local time was taken for UTC")]
    public void A_clock_that_cannot_be_right_is_told_and_the_row_kept_beside(string time, string words)
    {
        (ReceptionRecord[] records, _, string rejected) = Import("zone: utc", time, "2026-07-31 00:00:00");
        Assert.Single(records);
        Assert.Contains(words, rejected, StringComparison.Ordinal);
        Assert.Contains($"\"{time},ferry\"", rejected, StringComparison.Ordinal);
    }

    [Fact]
    public void A_clock_that_is_known_to_be_ahead_may_be_so() => Assert.Single(Import("zone: utc, ahead-of-utc: 2 h", "2026-08-01 02:00:00").Records);

    /// <summary>
    /// Norway's clocks went forward on 2026-03-29 at 01:00 UTC and go back on 2025-10-26 at 01:00 UTC: Directive 2000/84/EC, articles 2 and 3 (the last Sundays of
    /// March and October, 1.00 a.m. Greenwich Mean Time).
    /// </summary>
    [Fact]
    public void Local_time_is_read_save_in_the_hour_that_comes_twice_and_the_one_that_never_comes()
    {
        (ReceptionRecord[] records, _, string rejected) = Import(
            "zone: Europe/Oslo", "2026-07-01 12:00:00", "2026-01-01 12:00:00", "2025-10-26 02:30:00", "2025-10-26 02:30:00+02:00", "2026-03-29 02:30:00", "2025-10-26 03:00:00");

        // date -u -d 'TZ="Europe/Oslo" 2026-07-01 12:00' +%s, and so on.
        Assert.Equal([1_782_900_000_000_000, 1_767_265_200_000_000, 1_761_438_600_000_000, 1_761_444_000_000_000], records.Select(one => one.TimeMicroseconds));
        Assert.Contains("\"the time is in the hour that comes twice as the clocks of Europe/Oslo go back\",\"2025-10-26 02:30:00,ferry\"", rejected, StringComparison.Ordinal);
        Assert.Contains("\"the time is in the hour that the clocks of Europe/Oslo leave out as they go forward\",\"2026-03-29 02:30:00,ferry\"", rejected, StringComparison.Ordinal);
    }

    private static (ReceptionRecord[] Records, Mastwright.Records.Import.ImportCount Count, string Rejected) Import(string zone, params string[] times) =>
        ImportRun.Of(Mapping.Replace("ZONE", zone, StringComparison.Ordinal), "t,at\n" + string.Join("", times.Select(time => time + ",ferry\n")));
}
