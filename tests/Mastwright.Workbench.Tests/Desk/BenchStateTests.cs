using System.Collections.Immutable;
using Mastwright.Workbench.Desk;

namespace Mastwright.Tests.Workbench.Desk;

public sealed class BenchStateTests
{
    private static readonly Gen<string?> Key = OneOf(null, "ferry-house", "a b", "äö", "x&y=z", "50%");

    [Fact]
    public void An_address_means_the_state_it_was_made_of() => Gen.Select(Key, Key, OneOf("relief", "plain", "background"), Gen.Bool, OneOf(null, "fails", "ok"))
        .Sample((site, to, ground, back, show) =>
        {
            BenchState state = new()
            {
                Site = site,
                To = to,
                Ground = ground!,
                IsBack = back,
                Show = show,
                View = "46.40000,-18.60000,11.25,-30,55",
                FitOuts = site is null ? ImmutableSortedDictionary<string, string>.Empty : ImmutableSortedDictionary<string, string>.Empty.Add(site, "eaves"),
            };
            BenchState read = BenchState.Parse(new("http://localhost" + state.Address()));
            return read with { FitOuts = state.FitOuts, Asked = state.Asked } == state && read.FitOuts.SequenceEqual(state.FitOuts) && read.Asked.IsEmpty;
        });

    [Fact]
    public void What_is_tried_stands_in_the_address_in_its_order()
    {
        BenchState state = new BenchState { Page = "build", Element = "supply/3" }
            .Trying(new("ferry-house", "net-loft", "supply/3/length", "40 ± 2 m"))
            .Trying(new("ferry-house", "net-loft", "radio/power", "20 dBm"))
            .Trying(new("ferry-house", "net-loft", "supply/3/length", "60 m"));
        Assert.StartsWith("/build?element=supply/3&change=ferry-house/net-loft/radio/power:20%20dBm&change=", state.Address(), StringComparison.Ordinal);
        BenchState read = BenchState.Parse(new("http://localhost" + state.Address()));
        Assert.Equal(["radio/power=20 dBm", "supply/3/length=60 m"], read.Changes.Select(change => $"{change.Path}={change.Value}"));
        Assert.Equal("supply/3", read.Element);
        Assert.Equal(["supply/3/length"], read.Dropping("sites/ferry-house/fit-outs/net-loft/radio/power").Changes.Select(change => change.Path));
        Assert.Empty(read.On("network").Changes);
    }

    [Theory]
    [InlineData("ferry-house/net-loft:5 m")]
    [InlineData("ferry-house/net-loft/antenna/height")]
    [InlineData("ferry-house/../antenna/height:5 m")]
    [InlineData("ferry-house//antenna:5 m")]
    [InlineData("ferry-house/net-loft/antenna/height:  ")]
    [InlineData(":5 m")]
    public void What_is_no_change_is_none(string text) => Assert.Null(PlanEdit.Parse(text));

    private static Gen<string?> OneOf(params string?[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    [Theory]
    [InlineData("?view=here")]
    [InlineData("?view=1,2,<script>")]
    [InlineData("?theme=loud&ground=gold&layer=all&show=bad&fit-out=/&fit-out=a/b/c&way=up&site=")]
    public void What_nobody_could_mean_is_left_out(string query) =>
        Assert.Equal(new BenchState().Address(), BenchState.Parse(new("http://localhost/" + query)).Address());

    [Fact]
    public void Picking_goes_from_station_to_path_and_back()
    {
        BenchState one = new BenchState().Picked("a");
        BenchState two = one.Picked("b");
        Assert.Equal(("a", null), (one.Site, one.To));
        Assert.Equal(("a", "b"), (two.Site, two.To));
        Assert.Equal(("a", "c"), (two.Picked("c").Site, two.Picked("c").To));
        Assert.Equal(("b", null), (two.Picked("a").Site, two.Picked("a").To));
        Assert.Equal(("a", null), (two.Picked("b").Site, two.Picked("b").To));
        Assert.Null(one.Picked("a").Site);
    }
}
