using System.Text.Json;

namespace Mastwright.Tests.EndToEnd.Commands;

/// <summary>check --compare on Skerrin: the old antenna behind its coax against the new one over its box.</summary>
public sealed class CompareTests(SkerrinRun skerrin)
{
    [Fact]
    public void Fit_outs_stand_side_by_side_with_what_is_better_in_words_and_their_parts()
    {
        ProgramRun run = skerrin.Run("check skerrin-demo/plan.yaml --compare --site ferry-house").EndsWith(0);

        string text = string.Join(' ', run.Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("eaves net-loft * hill-hut", text, StringComparison.Ordinal);
        Assert.Contains("Weakest link's margin: net-loft and hill-hut are better: eaves", text, StringComparison.Ordinal);
        Assert.Contains("Air in the box, hottest: eaves is better: eaves 28 °C (as the plan gives it), net-loft", text, StringComparison.Ordinal);
        Assert.Contains("not known of eaves (of the box only the temperature is given), hill-hut (of the box only the temperature is given).", text, StringComparison.Ordinal);
        Assert.Contains("1 × line rg-58, 14 m", text, StringComparison.Ordinal);
        Assert.Contains("1 × data cable cat-5e, 24 m", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Creamery:", text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_compared_is_what_a_check_of_each_says()
    {
        using JsonDocument compared = JsonDocument.Parse(skerrin.Run("check skerrin-demo/plan.yaml --compare --site ferry-house --json").EndsWith(0).Output);
        using JsonDocument check = JsonDocument.Parse(skerrin.Run("check skerrin-demo/plan.yaml --site ferry-house --json").Output);
        JsonElement bending = check.RootElement.GetProperty("findings").EnumerateArray().Single(finding => finding.GetProperty("code").GetString() == "mast-bending");
        JsonElement weakest = check.RootElement.GetProperty("links").EnumerateArray().MinBy(link => link.GetProperty("back").GetProperty("margin-db").GetProperty("median").GetDouble());

        Assert.Equal(bending.GetProperty("value").GetProperty("median").GetDouble(), Of("wind-utilisation"), 1e-9);
        Assert.Equal(
            Math.Min(weakest.GetProperty("out").GetProperty("margin-db").GetProperty("median").GetDouble(), weakest.GetProperty("back").GetProperty("margin-db").GetProperty("median").GetDouble()),
            Of("weakest-link"),
            1e-9);

        // Watts drawn and lost are those of the ledger that the check shows.
        JsonElement power = check.RootElement.GetProperty("fit-outs").EnumerateArray().Single(one => one.GetProperty("subject").GetString() == "ferry-house/net-loft").GetProperty("ledgers").EnumerateArray().Single(ledger => ledger.GetProperty("title").GetString() == "power from the mains, on average");
        Assert.Equal(power.GetProperty("total").GetDouble(), Of("watts-drawn"), 1e-9);
        Assert.Equal(
            power.GetProperty("lines").EnumerateArray().Where(line => line.GetProperty("label").GetString()!.StartsWith("lost in ", StringComparison.Ordinal)).Sum(line => line.GetProperty("value").GetDouble()),
            Of("watts-lost"),
            1e-9);

        double Of(string code) => compared.RootElement.GetProperty("sites")[0].GetProperty("measures").EnumerateArray().Single(measure => measure.GetProperty("code").GetString() == code)
            .GetProperty("values").EnumerateArray().Single(value => value.GetProperty("fit-out").GetString() == "net-loft").GetProperty("value").GetProperty("median").GetDouble();
    }

    [Fact]
    public void A_site_with_one_fit_out_has_nothing_to_compare()
    {
        ProgramRun run = ProgramRun.Of(skerrin.Start, "check", "skerrin-demo/plan.yaml", "--compare", "--site", "creamery").EndsWith(2);
        Assert.Contains("'creamery' has one fit-out or none", run.Error, StringComparison.Ordinal);
        Assert.Empty(run.Output);
    }
}
