using CsCheck;
using Mastwright.Station.Rules;

namespace Mastwright.Tests.Station.Rules;

/// <summary>Decision 2006/771/EC, annex as replaced by Decision (EU) 2019/1345: adjacent bands as one, under the specific conditions of each.</summary>
public sealed class AdjacentRowsTests
{
    private static readonly RadioRule Low = Row("low", 865, 868) with { PowerDbm = 14, DutyCyclePercent = 1, MostOccupiedHz = 3e6, PoliteAllowed = true };
    private static readonly RadioRule High = Row("high", 868, 868.6) with { PowerDbm = 10, DutyCyclePercent = 0.1, MostOccupiedHz = 600e3, PoliteAllowed = true };

    [Fact]
    public void Two_rows_as_one_have_the_strictest_of_each()
    {
        RadioRule both = AdjacentRows.Together(Low, High)!;

        Assert.Equal((865e6, 868.6e6), (both.LowHz, both.HighHz));
        Assert.Equal((10.0, 0.1, 600e3), (both.PowerDbm, both.DutyCyclePercent, both.MostOccupiedHz));
        Assert.True(both.PoliteAllowed);
        Assert.True(both.IsJoined);
        Assert.True(AdjacentRows.Together(Low, High with { DutyCyclePercent = null, PoliteAllowed = false })!.PoliteAllowed);
        Assert.False(AdjacentRows.Together(Low, High with { PoliteAllowed = false })!.PoliteAllowed);
    }

    [Fact]
    public void Together_they_never_allow_more_than_either() =>
        Gen.Select(Limit, Limit, Limit, Limit).Sample((lowPower, highPower, lowShare, highShare) =>
        {
            RadioRule both = AdjacentRows.Together(Low with { PowerDbm = lowPower, DutyCyclePercent = lowShare }, High with { PowerDbm = highPower, DutyCyclePercent = highShare })!;
            return NoMore(both.PowerDbm, lowPower) && NoMore(both.PowerDbm, highPower) && NoMore(both.DutyCyclePercent, lowShare) && NoMore(both.DutyCyclePercent, highShare);
        });

    [Fact]
    public void Rows_of_two_documents_or_two_kinds_of_limit_are_not_taken_together()
    {
        Assert.Null(AdjacentRows.Together(Low, High with { Source = High.Source with { Document = "another" } }));
        Assert.Null(AdjacentRows.Together(Low, High with { Reference = PowerReference.Eirp }));
        Assert.Null(AdjacentRows.Together(Low, High with { DensityDbm = 0, DensityBandwidthHz = 10e3 }));
    }

    [Fact]
    public void A_source_in_doubt_puts_both_in_doubt()
    {
        Assert.True(AdjacentRows.Together(Low, High)!.Source.IsFirm);
        Assert.False(AdjacentRows.Together(Low, High with { Source = High.Source with { FromMemory = true } })!.Source.IsFirm);
        Assert.False(AdjacentRows.Together(Low with { Source = Low.Source with { Edition = RuleSource.UnknownEdition } }, High)!.Source.IsFirm);
    }

    /// <summary>Only the edges that a signal lies across are joined: a gap, a refused row and an edge that it does not reach are none.</summary>
    [Theory]
    [InlineData(867.9, 868.1, 1)]
    [InlineData(867.7, 867.9, 0)]
    [InlineData(868.5, 868.7, 0)]
    [InlineData(864.9, 868.1, 3)]
    public void Runs_end_at_gaps_and_at_the_signals_edges(double lowMegahertz, double highMegahertz, int runs)
    {
        RadioRule[] rules = [Row("first", 863, 865), Low, High, Row("kept", 868.6, 868.7) with { Access = RuleAccess.Refused }, Row("far", 868.7, 869.2)];

        Assert.Equal(runs, AdjacentRows.Across([.. rules], lowMegahertz * 1e6, highMegahertz * 1e6).Length);
    }

    private static Gen<double?> Limit => Gen.Select(Gen.Bool, Gen.Double[0.1, 30]).Select((given, value) => given ? value : (double?)null);

    private static bool NoMore(double? both, double? one) => one is not { } limit || both <= limit;

    private static RadioRule Row(string key, double low, double high) => new()
    {
        Key = key,
        Region = "XX",
        Name = key,
        LowHz = low * 1e6,
        HighHz = high * 1e6,
        Reference = PowerReference.Erp,
        Source = new("Invented act", "1", "a", "2026-11-28"),
    };
}
