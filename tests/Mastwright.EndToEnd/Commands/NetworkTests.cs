using System.Text.Json;

namespace Mastwright.Tests.EndToEnd.Commands;

/// <summary>links, hops, air and shadow on Skerrin.</summary>
public sealed class NetworkTests(SkerrinRun skerrin)
{
    [Fact]
    public void Lantern_Bay_is_reached_by_no_chain_of_sure_links_and_the_program_says_so()
    {
        // The words are those of the run that the shapes are held to.
        using JsonDocument hops = JsonDocument.Parse(skerrin.Run("hops skerrin-demo/plan.yaml ferry-house --worlds 50 --no-cache --json").Output);
        JsonElement bay = hops.RootElement.GetProperty("stations").EnumerateArray().Single(one => one.GetProperty("to").GetString() == "lantern-bay");
        Assert.Equal(JsonValueKind.Null, bay.GetProperty("fewest-hops").ValueKind);
        Assert.InRange(bay.GetProperty("reached").GetDouble(), 0, 0.75);
        Assert.Contains(hops.RootElement.GetProperty("findings").EnumerateArray(), one => one.GetProperty("code").GetString() == "hops-reach" && one.GetProperty("verdict").GetString() == "fails");
    }

    [Fact]
    public void Every_link_of_check_has_its_margin_in_the_matrix()
    {
        using JsonDocument check = JsonDocument.Parse(skerrin.Run("check skerrin-demo/plan.yaml --json").Output);
        using JsonDocument links = JsonDocument.Parse(skerrin.Run("links skerrin-demo/plan.yaml --no-cache --json").Output);
        Dictionary<string, double> margins = links.RootElement.GetProperty("links").EnumerateArray().SelectMany(pair => new[]
        {
            (Key: $"{pair.GetProperty("from")} {pair.GetProperty("to")}", Margin: Median(pair, "out")),
            (Key: $"{pair.GetProperty("to")} {pair.GetProperty("from")}", Margin: Median(pair, "back")),
        }).ToDictionary(one => one.Key, one => one.Margin, StringComparer.Ordinal);
        int compared = 0;
        foreach (JsonElement link in check.RootElement.GetProperty("links").EnumerateArray())
        {
            Assert.Equal(Median(link, "out"), margins[$"{link.GetProperty("from")} {link.GetProperty("to")}"], 1e-6);
            Assert.Equal(Median(link, "back"), margins[$"{link.GetProperty("to")} {link.GetProperty("from")}"], 1e-6);
            compared++;
        }

        Assert.True(compared > 5);
    }

    /// <summary>The demo's story (docs/guide/skerrin.md): the cairn joins both places behind The Combs, and hangs by more than the peat top does.</summary>
    [Fact]
    public void A_relay_at_the_cairn_joins_both_places_in_the_east()
    {
        using JsonDocument relay = JsonDocument.Parse(skerrin.Run("relay skerrin-demo/plan.yaml ferry-house --goal stations --candidate comb-cairn/trial --candidate peat-top/trial --no-cache --json").Output);
        JsonElement chosen = relay.RootElement.GetProperty("relays")[0];
        Assert.Equal("comb-cairn/trial", chosen.GetProperty("key").GetString());
        Assert.Equal(["Lantern Bay", "East Quay"], chosen.GetProperty("joins").EnumerateArray().Select(one => one.GetString()));
        Assert.Equal("exact", relay.RootElement.GetProperty("choice").GetProperty("bound").GetString());
        Assert.Equal(["relay-access-unknown"], relay.RootElement.GetProperty("findings").EnumerateArray().Where(one => one.GetProperty("verdict").GetString() == "unknown").Select(one => one.GetProperty("code").GetString()).Except(["relay-power-unknown"]));
        double wanted = relay.RootElement.GetProperty("wanted-margin-db").GetDouble();
        Assert.All(chosen.GetProperty("parents").EnumerateArray(), parent => Assert.True(Median(parent, "out") >= wanted && Median(parent, "back") >= wanted));
    }

    [Theory]
    [InlineData("relay skerrin-demo/plan.yaml ferry-house --relays 6", "1 to 5 are possible")]
    [InlineData("links skerrin-demo/plan.yaml --no-cache --cache here", "without a cache there is no --cache folder")]
    [InlineData("hops skerrin-demo/plan.yaml nobody", "'nobody' is no station of the plan")]
    [InlineData("hops skerrin-demo/plan.yaml ferry-house --hop-limit 0", "1 to 32 are possible")]
    [InlineData("air skerrin-demo/plan.yaml --relay-share 2", "0 to 1 is possible")]
    [InlineData("shadow skerrin-demo/plan.yaml ferry-house --picture s.gif", "ends neither in .svg nor in .png")]
    public void What_cannot_be_is_refused(string line, string words) => ProgramRun.Of(skerrin.Start, line.Split(' ')).IsRefusedWith(words);

    private static double Median(JsonElement link, string direction) => link.GetProperty(direction).GetProperty("margin-db").GetProperty("median").GetDouble();
}
