using System.Net;
using System.Net.Http.Json;
using System.Text.Json;

namespace Mastwright.Tests.EndToEnd.Commands;

/// <summary>draw on Skerrin, and the same asked of the served program with values tried.</summary>
public sealed class DrawTests(SkerrinRun skerrin, ServedPlan served) : IClassFixture<ServedPlan>
{
    private const string Longer = "west/pole/antenna/height:40 m";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public void A_picture_is_written_and_told_in_words()
    {
        ProgramRun run = skerrin.Run("draw skerrin-demo/plan.yaml ferry-house/net-loft diagram line.svg --width 390").EndsWith(0);
        string text = string.Join(' ', run.Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("data cable with power, 24 m, cat-5e (ok)", text, StringComparison.Ordinal);
        Assert.All(run.Output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        string svg = File.ReadAllText(Path.Combine(skerrin.Start, "line.svg"));
        Assert.Contains("width=\"390\"", svg, StringComparison.Ordinal);
        Assert.Contains("data-part=\"element supply/3\"", svg, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("draw skerrin-demo/plan.yaml creamery mast m.svg", "give it tubes under sites/creamery/fit-outs/flue/mast")]
    [InlineData("draw skerrin-demo/plan.yaml wind-shed diagram m.svg", "is a neighbour")]
    [InlineData("draw skerrin-demo/plan.yaml ferry-house diagram m.svg --width 100", "340 to 2000 pixels wide")]
    public void What_cannot_be_drawn_is_refused(string line, string words) => ProgramRun.Of(skerrin.Start, line.Split(' ')).IsRefusedWith(words);

    [Fact]
    public async Task A_value_that_is_tried_is_in_every_answer_and_in_no_file()
    {
        double before = Margin(await Document("api/v1/check"));
        double tried = Margin(await Document($"api/v1/check?change={Uri.EscapeDataString(Longer)}"));
        Assert.True(tried > before + 3, $"{tried} after {before}");
        Assert.Contains("40 m up", await served.Client.GetStringAsync(Address($"api/v1/station/diagram.svg?station=west&change={Uri.EscapeDataString(Longer)}"), Stop), StringComparison.Ordinal);
        Assert.Contains(",", await served.Client.GetStringAsync(Address("api/v1/station/findings.csv?station=west"), Stop), StringComparison.Ordinal);
        Assert.Contains("weakest link's margin", await served.Client.GetStringAsync(Address($"api/v1/station/moved.csv?station=west&change={Uri.EscapeDataString(Longer)}"), Stop), StringComparison.Ordinal);
        Assert.DoesNotContain("weakest link's margin", await served.Client.GetStringAsync(Address("api/v1/station/moved.csv?station=west"), Stop), StringComparison.Ordinal);
        Assert.Equal(SmallPlan.Text, await File.ReadAllTextAsync(served.PlanPath, Stop));
    }

    [Theory]
    [InlineData("api/v1/check?change=west/pole/antenna/height:tall", "a length from")]
    [InlineData("api/v1/check?change=west", "is no change")]
    [InlineData("api/v1/station/mast.svg?station=west", "No mast can be drawn")]
    [InlineData("api/v1/station/diagram.svg?station=nowhere", "is no station of the plan")]
    [InlineData("api/v1/station/diagram.png?station=west&width=9", "340 to 2000 pixels wide")]
    [InlineData("api/v1/compare?site=west", "has one fit-out or none")]
    public async Task What_cannot_be_answered_says_why(string address, string words)
    {
        HttpResponseMessage answer = await served.Client.GetAsync(Address(address), Stop);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains(words, await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Values_are_kept_only_where_the_plan_reads_with_them()
    {
        string hash = (await Document("api/v1/plan/text")).GetProperty("hash").GetString()!;
        HttpResponseMessage refused = await served.Client.PostAsJsonAsync("api/v1/plan/keep", new Dictionary<string, object> { ["based-on"] = hash, ["changes"] = (string[])["west/pole/antenna/height:tall"] }, Stop);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Equal(SmallPlan.Text, await File.ReadAllTextAsync(served.PlanPath, Stop));

        HttpResponseMessage kept = await served.Client.PostAsJsonAsync("api/v1/plan/keep", new Dictionary<string, object> { ["based-on"] = hash, ["changes"] = (string[])[Longer] }, Stop);
        Assert.Equal(HttpStatusCode.OK, kept.StatusCode);
        Assert.Equal(SmallPlan.Text.Replace("height: 12 m}", "height: 40 m}", StringComparison.Ordinal), await File.ReadAllTextAsync(served.PlanPath, Stop));
        JsonElement written = await kept.Content.ReadFromJsonAsync<JsonElement>(Stop);
        HttpResponseMessage undone = await served.Client.PostAsJsonAsync("api/v1/plan/undo", new Dictionary<string, object> { ["based-on"] = written.GetProperty("hash").GetString()! }, Stop);
        Assert.Equal(HttpStatusCode.OK, undone.StatusCode);
        Assert.Equal(SmallPlan.Text, await File.ReadAllTextAsync(served.PlanPath, Stop));
    }

    private static double Margin(JsonElement check) => check.GetProperty("links")[0].GetProperty("out").GetProperty("margin-db").GetProperty("median").GetDouble();

    private static Uri Address(string address) => new(address, UriKind.Relative);

    private async Task<JsonElement> Document(string address) => JsonElement.Parse(await served.Client.GetByteArrayAsync(Address(address), Stop));
}
