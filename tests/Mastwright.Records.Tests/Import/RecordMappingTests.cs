using Mastwright.Records.Import;

namespace Mastwright.Tests.Records.Import;

public sealed class RecordMappingTests
{
    private const string Good = "records: 1\nnetwork: skerrin\ntime: {column: t, written: unix-seconds, resolution: 1 s}\nreceiver: {text: ferry}\n";

    [Fact]
    public void A_mapping_names_its_network() => Assert.Equal("skerrin", RecordMapping.Parse(Good, "m.yaml").Network);

    [Theory]
    [InlineData("", "m.yaml: the file is empty")]
    [InlineData("records: 2\n", "m.yaml records:")]
    [InlineData("records: 1\n", "m.yaml time:")]
    [InlineData(Good + "level: {column: l}\n", "m.yaml level/unit: write the unit: dBm")]
    [InlineData(Good + "level: {column: l, text: x, unit: dBm}\n", "m.yaml level: write either")]
    [InlineData(Good + "hops-taken: {column: h, noise-removed: true}\n", "m.yaml hops-taken/noise-removed:")]
    [InlineData(Good + "separator: xx\n", "m.yaml separator:")]
    [InlineData(Good + "leevl: {column: l}\n", "m.yaml:5:1: the key 'leevl' is not known here")]
    [InlineData(Good + "level: [\n", "m.yaml:")]
    [InlineData("records: 1\ntime: {column: t, written: unix-seconds}\nreceiver: {text: ferry}\n", "m.yaml time/resolution:")]
    [InlineData("records: 1\ntime: {column: t, written: when, resolution: 1 s}\nreceiver: {text: ferry}\n", "m.yaml time/written:")]
    [InlineData("records: 1\ntime: {column: t, written: iso-8601, resolution: 1 s, zone: summer}\nreceiver: {text: ferry}\n", "m.yaml time/zone:")]
    public void What_is_wrong_is_said_with_its_place(string text, string words) =>
        Assert.Contains(words, Assert.Throws<MappingException>(() => RecordMapping.Parse(text, "m.yaml")).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("1970-01-01T00:00:00Z", 0)]
    [InlineData("2000-02-29 12:00:00.123456789", 951_825_600_123_456)] // date -u -d '2000-02-29 12:00' +%s
    [InlineData("2016-12-31T23:59:60Z", 1_483_228_800_000_000)] // the leap second of 2016 counts as the second after it
    [InlineData("1969-12-31T23:59:59.5Z", -500_000)]
    [InlineData("2026-07-01T00:00:00-03:30", 1_782_876_600_000_000)] // date -u -d '2026-07-01 00:00:00 -0330' +%s
    public void Times_of_ISO_8601_are_read(string text, long microseconds)
    {
        Assert.True(ClockText.TryIso(text, zoneMayLack: true, out long read, out _));
        Assert.Equal(microseconds, read);
    }

    [Theory]
    [InlineData("2026-07-01T00:00:00")]
    [InlineData("2026-02-29T00:00:00Z")]
    [InlineData("2026-07-01T24:00:00Z")]
    [InlineData("01/07/2026 00:00:00Z")]
    [InlineData("2026-07-01T00:00:00+2")]
    public void Other_times_are_not_and_a_zone_is_never_guessed(string text) => Assert.False(ClockText.TryIso(text, zoneMayLack: false, out _, out _));

    [Fact]
    public void Counts_since_1970_are_read_with_their_fraction()
    {
        Assert.True(ClockText.TryUnix("1605520800.25", 1_000_000, out long read));
        Assert.Equal(1_605_520_800_250_000, read);
        Assert.False(ClockText.TryUnix("1605520800000000000", 1_000_000, out _));
        Assert.False(ClockText.TryUnix("NaN", 1, out _));
    }
}
