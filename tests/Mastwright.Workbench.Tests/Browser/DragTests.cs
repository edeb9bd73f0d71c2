using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Mastwright.Tests.Workbench.Browser;

/// <summary>What is moved on the map is followed, settles where it is let go, and is kept in the plan or taken back.</summary>
[Trait("needs", "system")]
[Collection(MovedMap.Name)]
public sealed partial class DragTests(WrittenDemo demo)
{
    [Fact]
    public async Task A_site_is_dragged_and_raised_then_kept_in_the_plan_and_taken_back()
    {
        (IPage page, List<string> faults) = await demo.Open("?site=ferry-house&to=gannet-stack&reach=margin");
        await TestBrowser.Settled(page);
        string ledgerAtRest = await page.Locator(".side .ledger").First.InnerTextAsync();

        // While it moves, links, strip, ledger and a coarse reach follow.
        LocatorBoundingBoxResult box = (await page.Locator("button.mark[data-key=ferry-house] svg").First.BoundingBoxAsync())!;
        (float x, float y) = (box.X + (box.Width / 2), box.Y + (box.Height / 2));
        await page.Mouse.MoveAsync(x, y);
        await page.Mouse.DownAsync();
        List<string> followed = [];
        for (int i = 1; i <= 3; i++)
        {
            int steps = await Steps(page);
            await page.Mouse.MoveAsync(x + (25 * i), y + (12 * i), new() { Steps = 3 });
            await page.WaitForFunctionAsync("steps => Number(document.querySelector('.ground').dataset.steps ?? 0) > steps", steps);
            followed.Add(await page.Locator(".live-panel").InnerTextAsync());
        }

        Assert.Equal(3, followed.Distinct(StringComparer.Ordinal).Count());
        Assert.Contains("Ferry House, tried", followed[0], StringComparison.Ordinal);
        Assert.Contains("Gannet Stack", followed[0], StringComparison.Ordinal);
        Assert.Contains("quick", await page.Locator(".reach-legend").InnerTextAsync(), StringComparison.Ordinal);
        Assert.True(await Inked(page, "canvas.live-strip"));
        Assert.True(await Inked(page, "canvas.live-overlay"));
        Assert.DoesNotContain("trial", page.Url, StringComparison.Ordinal);
        await Screenshots.Keep(page, "drag-1440-light");

        // Let go, the page hears of it: the address holds the trial, the whole reach settles.
        await page.Mouse.UpAsync();
        await TestBrowser.AddressHas(page, "trial=ferry-house/net-loft@");
        await page.WaitForFunctionAsync("() => document.querySelector('.ground').dataset.reach === 'settled' && !document.querySelector('.reach-legend').innerText.includes('quick')");
        await page.WaitForSelectorAsync(".live-overlay", new() { State = WaitForSelectorState.Detached });
        Assert.Equal(0, await page.Locator(".live-strip, .live-panel").CountAsync());
        Assert.Contains("Trying Ferry House", await page.Locator(".trial-sheet").InnerTextAsync(), StringComparison.Ordinal);
        Assert.NotEqual(ledgerAtRest, await page.Locator(".side .ledger").First.InnerTextAsync());

        // The handle on the strip raises the mast.
        LocatorBoundingBoxResult handle = (await page.Locator("[data-height]").BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(handle.X + (handle.Width / 2), handle.Y + (handle.Height / 2));
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(handle.X + (handle.Width / 2), handle.Y + (handle.Height / 5), new() { Steps = 3 });
        await page.WaitForSelectorAsync(".live-strip");
        await page.Mouse.UpAsync();
        await page.WaitForFunctionAsync("() => /trial=[^&]*,[^&]*,[0-9.]+/.test(decodeURIComponent(location.search))");
        Match trial = Trial().Match(Uri.UnescapeDataString(page.Url));
        double height = double.Parse(trial.Groups["height"].Value, CultureInfo.InvariantCulture);
        Assert.InRange(height, 13, 30);

        // What is kept is what the sheet shows: it hears of the height a moment after the address.
        await page.WaitForFunctionAsync("() => document.querySelector('.trial-sheet')?.innerText.includes('m up')");

        // Kept: two values of the plan's text are others, and nothing else. The roof is 7 m up; the plan counts from it.
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep" }).ClickAsync();
        await TestBrowser.AddressHas(page, "trial", isThere: false);
        string wanted = demo.Text
            .Replace("46.3981, -18.6700 ± 3 m", $"{trial.Groups["latitude"]}, {trial.Groups["longitude"]}", StringComparison.Ordinal)
            .Replace("{part: collinear-8, height: 5 m, above: roof, roof: 7 m}", string.Create(CultureInfo.InvariantCulture, $"{{part: collinear-8, height: {height - 7:0.##} m, above: roof, roof: 7 m}}"), StringComparison.Ordinal);
        Assert.Equal(wanted, demo.TextNow);

        // And taken back: to the byte.
        await page.WaitForSelectorAsync("button.undo[title*='ferry-house moved']");
        await page.Keyboard.PressAsync("Control+z");
        await demo.TextBecomes(text => text == demo.Text);
        Assert.Empty(faults);
    }

    [Fact]
    public async Task A_station_is_tried_where_the_map_is_touched_and_its_reach_is_saved_in_four_formats()
    {
        BrowserNewContextOptions hand = TestBrowser.Window(390, 844, isDark: false);
        hand.HasTouch = true;
        (IPage page, List<string> faults) = await demo.Open("?site=ferry-house&reach=margin&radius=5", hand);
        await page.Locator(".place").TapAsync();
        await page.WaitForSelectorAsync(".placing-hint:not(:empty)");
        await page.Touchscreen.TapAsync(120, 300);
        await TestBrowser.AddressHas(page, "trial=like:ferry-house/net-loft@");
        await TestBrowser.AddressHas(page, "site=trial");
        await TestBrowser.Settled(page);

        // A finger moves it too.
        string before = page.Url;
        ICDPSession wire = await page.Context.NewCDPSessionAsync(page);
        LocatorBoundingBoxResult box = (await page.Locator("button.mark[data-key=trial] svg").BoundingBoxAsync())!;
        (double x, double y) = (box.X + (box.Width / 2), box.Y + (box.Height / 2));
        await Touch("touchStart", 0);
        for (int i = 1; i <= 5; i++)
        {
            await Touch("touchMove", i);
        }

        await page.WaitForSelectorAsync(".live-panel");
        await wire.SendAsync("Input.dispatchTouchEvent", new() { ["type"] = "touchEnd", ["touchPoints"] = Array.Empty<object>() });
        await page.WaitForFunctionAsync("before => location.href !== before", before);
        await page.WaitForSelectorAsync(".live-panel", new() { State = WaitForSelectorState.Detached });
        await TestBrowser.Settled(page);

        await page.Locator(".fold").TapAsync();
        await Screenshots.Keep(page, "trial-390-light");
        foreach ((string name, byte[] start) in ((string, byte[])[])[("GeoTIFF", [(byte)'I', (byte)'I', 42, 0]), ("GeoJSON", "{\"type\""u8.ToArray()), ("PNG", [0x89, (byte)'P', (byte)'N', (byte)'G']), ("KMZ", [(byte)'P', (byte)'K', 3, 4])])
        {
            ILocator link = page.GetByRole(AriaRole.Link, new() { Name = name, Exact = true });
            IDownload file = await page.RunAndWaitForDownloadAsync(() => link.ClickAsync());
            byte[] bytes = await File.ReadAllBytesAsync(await file.PathAsync(), TestContext.Current.CancellationToken);
            Assert.Equal(start, bytes[..start.Length]);
        }

        Assert.Equal(demo.Text, demo.TextNow);
        Assert.Empty(faults);

        Task Touch(string type, int step) => wire.SendAsync("Input.dispatchTouchEvent", new() { ["type"] = type, ["touchPoints"] = new[] { new { x = x + (6 * step), y = y + (4 * step) } } });
    }

    [Fact]
    public async Task Every_layer_follows_and_is_read_in_its_own_unit()
    {
        (IPage page, List<string> faults) = await demo.Open("?site=ferry-house&radius=5");
        LocatorBoundingBoxResult box = (await page.Locator("button.mark[data-key=ferry-house] svg").BoundingBoxAsync())!;
        (float x, float y) = (box.X + (box.Width / 2), box.Y + (box.Height / 2));
        foreach ((string layer, string title, string unit) in ((string, string, string)[])[("confidence", "Confidence", "%"), ("delivery", "Packets delivered", "%"), ("level", "Level", "dBm"), ("difference", "net-loft against eaves", "dB")])
        {
            await page.SelectOptionAsync(".reach-layer", layer);
            await page.WaitForFunctionAsync("title => document.querySelector('.reach-legend .title')?.innerText.startsWith(title) && document.querySelector('.ground').dataset.reach === 'settled'", title);
            Assert.EndsWith($", in {unit}", await page.Locator(".reach-legend .title").InnerTextAsync(), StringComparison.Ordinal);
            await page.Mouse.MoveAsync(x - 60, y + 30);
            await page.WaitForFunctionAsync("unit => document.querySelector('.reach-value').innerText.endsWith(unit)", unit);
        }

        // The last of them, two maps against one another, follows the pointer as itself.
        await page.Mouse.MoveAsync(x, y);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(x + 30, y + 10, new() { Steps = 3 });
        await page.WaitForFunctionAsync("() => document.querySelector('.reach-legend').innerText.includes('quick')");
        Assert.StartsWith("net-loft against eaves", await page.Locator(".reach-legend .title").InnerTextAsync(), StringComparison.Ordinal);
        await page.Mouse.UpAsync();
        Assert.Empty(faults);
    }

    private static Task<int> Steps(IPage page) => page.EvaluateAsync<int>("() => Number(document.querySelector('.ground').dataset.steps ?? 0)");

    /// <summary>Whether a canvas holds more than one colour.</summary>
    private static Task<bool> Inked(IPage page, string canvas) => page.Locator(canvas).EvaluateAsync<bool>(
        "canvas => new Set(new Uint32Array(canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height).data.buffer)).size > 3");

    [GeneratedRegex(@"trial=[^@]+@(?<latitude>[-\d.]+),(?<longitude>[-\d.]+),(?<height>[\d.]+)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Trial();
}
