using Mastwright.Evidence;

namespace Mastwright.Tests.Evidence;

public sealed class LogEntriesTests
{
    private static readonly LogEntries Log = new(
    [
        Entry(3, 300, "ferry"), Entry(1, 100, "ferry"), Entry(2, 150, "holm"), Entry(4, 200, "ferry", SiteLogKind.Weather), Entry(5, 300, "ferry"), Entry(6, 400, "ferry"),
    ]);

    [Fact]
    public void Entries_are_in_order_of_time_and_then_of_writing() => Assert.Equal([1L, 2, 4, 3, 5, 6], Log.All.Select(entry => entry.Number));

    [Fact]
    public void Between_two_entries_lies_one_period_whichever_is_named_first()
    {
        Assert.Equal(new LogPeriod(100, 400), Log.Between(1, 6));
        Assert.Equal(new LogPeriod(100, 400), Log.Between(6, 1));
        Assert.Null(Log.Between(1, 7));
    }

    [Theory]
    [InlineData(1, long.MinValue, 100, 300)]
    [InlineData(3, 100, 300, 300)]
    [InlineData(5, 300, 300, 400)]
    [InlineData(6, 300, 400, long.MaxValue)]
    [InlineData(2, long.MinValue, 150, long.MaxValue)]
    public void Before_and_after_an_entry_reach_to_the_next_change_at_its_site(long number, long from, long at, long to)
    {
        Assert.Equal(new LogPeriod(from, at), Log.Before(number));
        Assert.Equal(new LogPeriod(at, to), Log.After(number));
    }

    [Fact]
    public void A_number_that_is_not_there_has_no_period()
    {
        Assert.Null(Log.Find(9));
        Assert.Null(Log.Before(9));
        Assert.Null(Log.After(9));
        Assert.Equal([2L], Log.Of("holm").Select(entry => entry.Number));
    }

    private static SiteLogEntry Entry(long number, long time, string site, SiteLogKind kind = SiteLogKind.FitOut) =>
        new() { Number = number, TimeMicroseconds = time, Site = site, Kind = kind, Text = "x" };
}
