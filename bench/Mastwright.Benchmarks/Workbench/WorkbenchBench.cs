using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json;
using Mastwright.Benchmarks.Figures;
using Mastwright.Benchmarks.Reach;
using Mastwright.Tests.Workbench.Browser;
using Microsoft.Playwright;

namespace Mastwright.Benchmarks.Workbench;

/// <summary>The workbench as its reader meets it: in the browser of the tests, which draws without a graphics processor.</summary>
internal static class WorkbenchBench
{
    private const int Loads = 5;
    private const int Steps = 200;
    private const int FirstSteps = 10;
    private const int MoveMilliseconds = 40;
    private const double RoundPixels = 60;
    private const int Searches = 8;

    /// <summary>Prints every figure.</summary>
    /// <returns>Whether every bound holds.</returns>
    internal static async Task<bool> Run(string scratch, string program)
    {
        ReachReport report = new();
        ReachReport.Head();
        ServedScene scene = await ServedScene.Open(scratch, program).ConfigureAwait(false);
        await using (scene.ConfigureAwait(false))
        {
            await FirstFrame(scene).ConfigureAwait(false);
            await Opening(report, scene).ConfigureAwait(false);
            await Dragging(report, scene, "", 150).ConfigureAwait(false);
            await LongWork(scene).ConfigureAwait(false);
            await Dragging(report, scene, ", while searches for relays go on", 200).ConfigureAwait(false);
            await EndWork(scene).ConfigureAwait(false);
            ReachReport.Part("Memory of the server after all this");
            report.Most("held (VmRSS), demo", scene.Server.Mebibytes, 512, "MiB");
            await Killed(report, scene).ConfigureAwait(false);
        }

        return report.IsOk;
    }

    private static async Task FirstFrame(ServedScene scene)
    {
        ReachReport.Part("Start of the server");
        await scene.Server.Kill().ConfigureAwait(false);
        long start = Stopwatch.GetTimestamp();
        await scene.Serve("0").ConfigureAwait(false);
        ReachReport.Plain("open", Stopwatch.GetElapsedTime(start).TotalMilliseconds, "ms", "it listens, the plan is read");
        using HttpClient client = new() { BaseAddress = new(scene.Server.Address) };
        object question = new { station = "ferry-house", reach = new Dictionary<string, object> { ["radius-metres"] = 10_000, ["cell-metres"] = 92.6, ["quick"] = true } };
        foreach (string name in (string[])["links and reach of a first step of a drag, from the start", "the same again"])
        {
            start = name.EndsWith("start", StringComparison.Ordinal) ? start : Stopwatch.GetTimestamp();
            using HttpResponseMessage answer = await client.PostAsJsonAsync(new Uri("api/v1/drag", UriKind.Relative), question).ConfigureAwait(false);
            answer.EnsureSuccessStatusCode();
            ReachReport.Plain(name, Stopwatch.GetElapsedTime(start).TotalMilliseconds, "ms");
        }
    }

    private static async Task Opening(ReachReport report, ServedScene scene)
    {
        ReachReport.Part(string.Create(CultureInfo.InvariantCulture, $"Opening the demo, median of {Loads} fresh browser profiles"));
        List<(double Ready, double Drawn)> loads = [];
        for (int i = 0; i < Loads; i++)
        {
            IPage page = await scene.Page("").ConfigureAwait(false);
            double[] marks = await page.EvaluateAsync<double[]>("() => ['page-ready', 'map-drawn'].map(name => performance.getEntriesByName(name)[0].startTime)").ConfigureAwait(false);
            loads.Add((marks[0], marks[1]));
            await page.Context.CloseAsync().ConfigureAwait(false);
        }

        report.Most("the page is interactive: its line stands", Sample.Median(loads.Select(load => load.Ready)), 2000, "ms", Worst(loads.Select(load => load.Ready)));
        report.Most("the map is drawn", Sample.Median(loads.Select(load => load.Drawn)), 4000, "ms", Worst(loads.Select(load => load.Drawn)));
    }

    /// <summary>Asks for work that takes longer than the drag that follows: one search after another.</summary>
    private static async Task LongWork(ServedScene scene)
    {
        using HttpClient client = new() { BaseAddress = new(scene.Server.Address) };
        for (int radius = 50; radius > 50 - Searches; radius--)
        {
            object question = new { kind = "relay", settings = new Dictionary<string, string> { ["site"] = "ferry-house", ["radius"] = radius.ToString(CultureInfo.InvariantCulture), ["relays"] = "3" } };
            using HttpResponseMessage answer = await client.PostAsJsonAsync(new Uri("api/v1/work", UriKind.Relative), question).ConfigureAwait(false);
            answer.EnsureSuccessStatusCode();
        }
    }

    /// <summary>Ends the work. A drag beside work that was over before it would have measured nothing.</summary>
    private static async Task EndWork(ServedScene scene)
    {
        using HttpClient client = new() { BaseAddress = new(scene.Server.Address) };
        using JsonDocument work = (await client.GetFromJsonAsync<JsonDocument>(new Uri("api/v1/work", UriKind.Relative)).ConfigureAwait(false))!;
        string[] left = [.. work.RootElement.GetProperty("items").EnumerateArray().Where(item => item.GetProperty("state").GetString() is "waiting" or "running").Select(item => item.GetProperty("id").GetString()!)];
        ReachReport.Plain("searches not done when it ended", left.Length, "", $"of {Searches}");
        if (left.Length == 0)
        {
            throw new InvalidOperationException("All searches were done before the drag was: ask for more of them.");
        }

        foreach (string id in left)
        {
            using HttpResponseMessage answer = await client.PostAsync(new Uri($"api/v1/work/{id}/cancel", UriKind.Relative), null).ConfigureAwait(false);
            answer.EnsureSuccessStatusCode();
        }
    }

    private static async Task Dragging(ReachReport report, ServedScene scene, string besides, double mostMilliseconds)
    {
        ReachReport.Part(string.Create(CultureInfo.InvariantCulture, $"Dragging a station, {Steps} steps, reach of 10 km at 3 arc-seconds, links and strip{besides}"));
        IPage page = await scene.Page("?site=ferry-house&to=gannet-stack&reach=margin").ConfigureAwait(false);
        await TestBrowser.Settled(page).ConfigureAwait(false);
        LocatorBoundingBoxResult box = (await page.Locator("button.mark[data-key=ferry-house] svg").BoundingBoxAsync().ConfigureAwait(false))!;
        (double x, double y) = (box.X + (box.Width / 2), box.Y + (box.Height / 2));
        await page.Mouse.MoveAsync((float)x, (float)y).ConfigureAwait(false);
        await page.Mouse.DownAsync().ConfigureAwait(false);
        double[] steps = [];
        for (int move = 1; steps.Length < FirstSteps + Steps; move++)
        {
            // Round and round, as fast as a hand looks about.
            double turn = move * 0.05;
            await page.Mouse.MoveAsync((float)(x + (RoundPixels * Math.Sin(turn))), (float)(y + (RoundPixels * (1 - Math.Cos(turn))))).ConfigureAwait(false);
            await Task.Delay(MoveMilliseconds).ConfigureAwait(false);
            steps = await page.EvaluateAsync<double[]>("() => performance.getEntriesByName('drag-step').map(step => step.duration)").ConfigureAwait(false);
        }

        double[] sorted = [.. steps.Skip(FirstSteps).Take(Steps).Order()];
        report.Most("95th percentile, pointer to the frame that shows it", sorted[(int)(0.95 * Steps) - 1], mostMilliseconds, "ms", string.Create(CultureInfo.InvariantCulture, $"median {sorted[Steps / 2]:0} ms, most {sorted[^1]:0} ms"));
        double[] answers = await page.EvaluateAsync<double[]>("() => performance.getEntriesByType('resource').filter(one => one.name.endsWith('/drag')).map(one => one.duration)").ConfigureAwait(false);
        ReachReport.Plain("of these, question to answer", Sample.Median(answers), "ms", "median");
        await page.Mouse.UpAsync().ConfigureAwait(false);
        await TestBrowser.AddressHas(page, "trial=").ConfigureAwait(false);
        await page.Context.CloseAsync().ConfigureAwait(false);
    }

    private static async Task Killed(ReachReport report, ServedScene scene)
    {
        ReachReport.Part("A killed server, started again");
        IPage page = await scene.Page("?site=ferry-house&panel=plan").ConfigureAwait(false);
        await page.WaitForSelectorAsync(".plan-editor[data-ready]").ConfigureAwait(false);
        await scene.Server.Kill().ConfigureAwait(false);
        await page.WaitForSelectorAsync("html[data-line=retrying]", new() { State = WaitForSelectorState.Attached }).ConfigureAwait(false);
        await page.EvaluateAsync("() => { window.isOld = true; }").ConfigureAwait(false);
        long start = Stopwatch.GetTimestamp();
        await scene.Serve(new Uri(scene.Server.Address).Port.ToString(CultureInfo.InvariantCulture)).ConfigureAwait(false);
        await page.WaitForFunctionAsync("() => !window.isOld && document.querySelector('.plan-editor')?.dataset.ready && performance.getEntriesByName('page-ready').length > 0").ConfigureAwait(false);
        report.Most("the same page stands again, from the server's start", Stopwatch.GetElapsedTime(start).TotalMilliseconds, 5000, "ms");
    }

    private static string Worst(IEnumerable<double> values) => string.Create(CultureInfo.InvariantCulture, $"most {values.Max():0} ms");
}
