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
            return read with { FitOuts = state.FitOuts } == state && read.FitOuts.SequenceEqual(state.FitOuts);
        });

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
