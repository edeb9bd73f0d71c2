using System.Buffers.Binary;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Mastwright.Tests.EndToEnd.Shapes;

namespace Mastwright.Tests.EndToEnd.Commands;

/// <summary>One step of a drag, asked of the served program: what it answers is what the commands answer for the same place.</summary>
public sealed class DragTests(ServedPlan served) : IClassFixture<ServedPlan>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("heard")]
    [InlineData("hears")]
    public async Task The_raster_has_as_many_cells_of_each_class_as_the_reach_document(string direction)
    {
        (JsonElement header, float[] values) = await Asked(new
        {
            station = "west", reach = new Dictionary<string, object> { ["radius-metres"] = 4000, ["cell-metres"] = 100, ["direction"] = direction, ["receiver"] = "mast" },
        });
        JsonElement reach = header.GetProperty("reach");
        Assert.Equal(reach.GetProperty("columns").GetInt32() * reach.GetProperty("rows").GetInt32(), values.Length);

        JsonElement document = await Document($"api/v1/reach?station=west&radius=4%20km&cell=100%20m&receiver=mast&direction={direction}");
        Assert.Equal(document.GetProperty("cells").GetInt32(), values.Count(value => !float.IsNaN(value)));
        foreach (JsonElement one in document.GetProperty(direction).GetProperty("classes").EnumerateArray())
        {
            double from = Number(one, "from-db") ?? double.NegativeInfinity;
            double to = Number(one, "to-db") ?? double.PositiveInfinity;
            Assert.Equal(one.GetProperty("cells").GetInt32(), values.Count(value => value >= from && value < to));
        }
    }

    [Fact]
    public async Task The_corners_hold_the_station_in_their_middle()
    {
        (JsonElement header, _) = await Asked(new { station = "west", reach = new { } });
        double[][] corners = [.. header.GetProperty("reach").GetProperty("corners").EnumerateArray().Select(corner => corner.EnumerateArray().Select(number => number.GetDouble()).ToArray())];
        // Cells lie at whole multiples of their side: the middle is off the station by less than one, 90 m or 0.0012° here.
        Assert.Equal(-18.70, corners.Average(corner => corner[0]), 0.0013);
        Assert.Equal(46.40, corners.Average(corner => corner[1]), 0.0013);
    }

    [Fact]
    public async Task A_trial_has_the_margins_that_a_check_of_the_moved_plan_has()
    {
        const string trial = "west/pole@46.43000,-18.65000,20";
        (JsonElement header, _) = await Asked(new { station = trial, to = "east" });
        Assert.Equal(20, header.GetProperty("height-metres").GetDouble(), 1e-9);
        JsonElement link = Assert.Single(header.GetProperty("links").EnumerateArray());
        JsonElement judged = Assert.Single((await Document($"api/v1/check?trial={Uri.EscapeDataString(trial)}")).GetProperty("links").EnumerateArray());
        Assert.Equal(Median(judged.GetProperty("out"), "margin-db"), Median(link, "out-margin-db"), 1e-9);
        Assert.Equal(Median(judged.GetProperty("back"), "margin-db"), Median(link, "back-margin-db"), 1e-9);
        Assert.Equal(header.GetProperty("ledger").GetProperty("total").GetDouble(), Median(link, "out-margin-db"), 1e-9);
        Assert.Equal(SmallPlan.Text, await File.ReadAllTextAsync(served.PlanPath, Stop));

        // The ledger's lines sum to its total, and the strip begins and ends at the antennas.
        Assert.Equal(header.GetProperty("ledger").GetProperty("total").GetDouble(), header.GetProperty("ledger").GetProperty("lines").EnumerateArray().Sum(line => line.GetProperty("value").GetDouble()), 1e-9);
        JsonElement path = header.GetProperty("path");
        Assert.Equal(30, path.GetProperty("ray-metres")[0].GetDouble(), 0.01);
        Assert.Equal(22, path.GetProperty("ray-metres").EnumerateArray().Last().GetDouble(), 0.01);
    }

    [Fact]
    public async Task A_station_that_is_dropped_is_judged_against_all_others()
    {
        (JsonElement header, _) = await Asked(new { station = "like:west/pole@46.45000,-18.62000" });
        Assert.Equal("trial/pole", header.GetProperty("station").GetString());
        Assert.Equal(["east", "west"], header.GetProperty("links").EnumerateArray().Select(link => link.GetProperty("key").GetString()!).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("""{"station":"nowhere"}""", "nowhere")]
    [InlineData("""{"station":"west/pole@91,0"}""", "is no place")]
    [InlineData("""{"station":"west/pole@46,-18,900"}""", "0.5 to 200 m")]
    [InlineData("""{"station":"west","reach":{"layer":"warmth"}}""", "has no 'warmth'")]
    [InlineData("""{"station":"west","reach":{"layer":"difference"}}""", "compare-fit-out")]
    public async Task A_wrong_question_is_told_what_would_be_right(string question, string told)
    {
        using StringContent content = new(question, System.Text.Encoding.UTF8, "application/json");
        using HttpResponseMessage answer = await served.Client.PostAsync(new Uri("api/v1/drag", UriKind.Relative), content, Stop);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains(told, await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Pages_of_others_may_not_ask()
    {
        using HttpRequestMessage request = new(HttpMethod.Post, "api/v1/drag") { Content = JsonContent.Create(new { station = "west" }) };
        request.Headers.Add("Origin", "http://elsewhere.example");
        using HttpResponseMessage answer = await served.Client.SendAsync(request, Stop);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    [Fact]
    public async Task Of_one_asker_only_the_newest_question_is_answered_and_a_question_taken_back_ends_its_work()
    {
        // Far more cells than a step of a drag: this one holds the desk until it is taken back.
        using CancellationTokenSource takenBack = CancellationTokenSource.CreateLinkedTokenSource(Stop);
        Dictionary<string, object> large = new() { ["radius-metres"] = 30_000, ["cell-metres"] = 30 };
        Task<HttpResponseMessage> holding = Post(new { station = "west", asker = "other", reach = large }, takenBack.Token);
        Task<HttpResponseMessage> older = Post(new { station = "west", asker = "me", reach = large }, Stop);
        await Task.Delay(200, Stop);
        Task<HttpResponseMessage> newer = Post(new { station = "west", asker = "me" }, Stop);
        using (HttpResponseMessage dropped = await older)
        {
            Assert.Equal(499, (int)dropped.StatusCode);
        }

        await takenBack.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => holding);
        using HttpResponseMessage answered = await newer;
        Assert.Equal(HttpStatusCode.OK, answered.StatusCode);
    }

    private Task<HttpResponseMessage> Post(object question, CancellationToken stop) =>
        served.Client.PostAsJsonAsync(new Uri("api/v1/drag", UriKind.Relative), question, stop);

    private async Task<(JsonElement Header, float[] Values)> Asked(object question)
    {
        using HttpResponseMessage answer = await Post(question, Stop);
        byte[] bytes = await answer.Content.ReadAsByteArrayAsync(Stop);
        Assert.True(answer.IsSuccessStatusCode, System.Text.Encoding.UTF8.GetString(bytes));
        int length = BinaryPrimitives.ReadInt32LittleEndian(bytes);
        Assert.Equal(0, length % 4);
        float[] values = new float[(bytes.Length - 4 - length) / 4];
        for (int i = 0; i < values.Length; i++)
        {
            values[i] = BinaryPrimitives.ReadSingleLittleEndian(bytes.AsSpan(4 + length + (4 * i)));
        }

        JsonElement header = JsonElement.Parse(bytes.AsSpan(4, length));
        JsonShapesTests.HasShape(header.GetRawText(), "drag-1");
        return (header, values);
    }

    private async Task<JsonElement> Document(string address) => JsonElement.Parse(await served.Client.GetByteArrayAsync(new Uri(address, UriKind.Relative), Stop));

    private static double? Number(JsonElement element, string name) => element.GetProperty(name) is { ValueKind: JsonValueKind.Number } number ? number.GetDouble() : null;

    private static double Median(JsonElement element, string name) => element.GetProperty(name).GetProperty("median").GetDouble();
}
