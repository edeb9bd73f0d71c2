using System.Globalization;
using Mastwright.Records.Store;
using Microsoft.Playwright;

namespace Mastwright.Tests.Workbench.Browser;

/// <summary>The pages beside the ground: between the stations, the proof, records coming in, and the log.</summary>
[Trait("needs", "system")]
[Collection(WrittenPages.Name)]
public sealed class PagesTests(WrittenDemo demo)
{
    /// <summary>Not the network of the demo: what is proved there stays as it is.</summary>
    private const string Network = "spare";

    [Fact]
    public async Task Links_hops_shadow_and_channel_are_worked_out_and_can_be_taken_out()
    {
        (IPage page, List<string> faults) = await demo.OpenPage("network");
        await TestBrowser.Live(page);
        await page.WaitForSelectorAsync("table.plain tbody tr");
        Assert.Equal(28, await page.Locator("table[aria-label=links] tbody tr").CountAsync());
        Assert.Empty(await Axe.Grave(page));
        await Screenshots.Keep(page, "network-1440-light");

        // Every file that the page offers is there, and says what it is.
        foreach (ILocator link in await page.Locator(".taken a").AllAsync())
        {
            IAPIResponse file = await page.Context.APIRequest.GetAsync(new Uri(new Uri(demo.Address), await link.GetAttributeAsync("href")).ToString());
            Assert.Equal(200, file.Status);
            string type = file.Headers["content-type"];
            Assert.Contains(Path.GetExtension(await link.InnerTextAsync()) switch { ".svg" => "image/svg+xml", ".png" => "image/png", ".csv" => "text/csv", ".geojson" => "application/geo+json", _ => "application/json" }, type, StringComparison.Ordinal);
        }

        // By keyboard alone to the hops of another station.
        await KeyboardTests.Tab(page, ".topics a", "Hops");
        await page.Keyboard.PressAsync("Enter");
        await TestBrowser.AddressHas(page, "topic=hops");
        await page.WaitForSelectorAsync("table[aria-label=hops]");
        await KeyboardTests.Tab(page, ".asking select");
        await page.Keyboard.PressAsync("ArrowDown");
        await TestBrowser.AddressHas(page, "site=creamery");
        await page.WaitForFunctionAsync("() => document.querySelector('.answer')?.innerText.includes('From Creamery')");
        await page.SelectOptionAsync(".asking label:has-text('Hop limit') select", "2");
        await TestBrowser.AddressHas(page, "with.hop-limit=2");
        await page.WaitForFunctionAsync("() => document.querySelector('.answer')?.innerText.includes('at most 2 hops')");

        await page.GotoAsync(demo.Address + "network?topic=shadow&site=ferry-house&with.radius=5");
        await page.WaitForSelectorAsync("table[aria-label=shadow]");
        Assert.True(await page.Locator(".picture img").First.EvaluateAsync<bool>("image => image.decode().then(() => image.naturalWidth > 600)"));
        await page.GotoAsync(demo.Address + "network?topic=air");
        await page.WaitForSelectorAsync("table[aria-label=air-stations]");
        Assert.Empty(await Axe.Grave(page));
        Assert.Empty(faults);
    }

    [Fact]
    public async Task A_proof_follows_the_log_and_the_periods_that_are_dragged()
    {
        (IPage page, List<string> faults) = await demo.OpenPage("proof");
        await TestBrowser.Live(page);
        await page.WaitForSelectorAsync(".verdict-words");
        Assert.Contains("better by 8.9 dB", await page.Locator(".verdict-words").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Empty(await Axe.Grave(page));
        await Screenshots.Keep(page, "proof-1440-light");

        // The end of the period before is drawn ten days back.
        await page.WaitForSelectorAsync(".timeline svg[data-followed]");
        LocatorBoundingBoxResult box = (await page.Locator(".timeline svg").BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(box.X + (box.Width / 2) - 3, box.Y + 60);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(box.X + (box.Width / 2) - (box.Width / 6), box.Y + 60, new() { Steps = 4 });
        await page.Mouse.UpAsync();
        await TestBrowser.AddressHas(page, "before=2025-06-01..2025-06-21");
        await TestBrowser.AddressHas(page, "after=2025-07-01..2025-07-31");
        await page.WaitForFunctionAsync("() => document.querySelector('.verdict-words')?.innerText.includes('Periods of 20 and 30 days')");

        // And by keyboard, in the fields.
        await page.Locator("input[type=date]").Nth(3).FillAsync("2025-07-21");
        await page.Locator("input[type=date]").Nth(3).BlurAsync();
        await TestBrowser.AddressHas(page, "after=2025-07-01..2025-07-21");
        await page.WaitForFunctionAsync("() => document.querySelector('.verdict-words')?.innerText.includes('Periods of 20 and 20 days')");
        Assert.Empty(faults);
    }

    [Fact]
    public async Task A_file_that_is_chosen_is_mapped_shown_and_imported_once()
    {
        long before = Count();
        (IPage page, List<string> faults) = await demo.OpenPage("proof?topic=import");
        await TestBrowser.Live(page);
        string file = demo.FileOf("heard.csv");
        await File.WriteAllTextAsync(file, "time_utc,heard_by,made_by,sent_by,counter,level_dbm,ratio_db\n" + string.Concat(Enumerable.Range(0, 50).Select(row =>
            string.Create(CultureInfo.InvariantCulture, $"2025-08-01T00:{row:00}:00Z,ferry-house,creamery,creamery,{9000 + row},-10{row % 10},{row % 7}\n"))) + "no time at all,ferry-house,creamery,creamery,1,-100,1\n", TestContext.Current.CancellationToken);
        foreach (string added in (string[])["50 records added", "0 records added"])
        {
            await page.SetInputFilesAsync("input[type=file]", file);
            await page.WaitForSelectorAsync("table[aria-label=preview] tbody tr");
            Assert.Equal(10, await page.Locator("table[aria-label=preview] tbody tr").CountAsync());
            Assert.Equal("skerrin", await page.Locator(".asking input").InputValueAsync());
            await page.FillAsync(".asking input", Network);
            Assert.Empty(await Axe.Grave(page));
            await page.Locator("button:has-text('Import')").ClickAsync();
            await page.WaitForFunctionAsync("added => document.querySelector('.answer')?.innerText.includes(added)", added);
        }

        Assert.Contains("1 rows rejected", await page.Locator(".answer").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal(before + 50, Count());
        string id = (await page.Locator(".taken a:has-text('rejected.csv')").GetAttributeAsync("href"))!;
        Assert.Contains("no time at all", await (await page.Context.APIRequest.GetAsync(new Uri(new Uri(demo.Address), id).ToString())).TextAsync(), StringComparison.Ordinal);
        Assert.Empty(faults);
    }

    [Fact]
    public async Task A_server_killed_in_the_middle_of_an_import_goes_on_with_it()
    {
        const int rows = 150_000;
        long before = Count();
        (IPage page, _) = await demo.OpenPage("proof?topic=import");
        await TestBrowser.Live(page);
        string file = demo.FileOf("long.csv");
        await using (StreamWriter writer = new(file))
        {
            await writer.WriteLineAsync("time_utc,heard_by,made_by,sent_by,counter,level_dbm,ratio_db");
            DateTime start = new(2025, 8, 2, 0, 0, 0, DateTimeKind.Utc);
            for (int row = 0; row < rows; row++)
            {
                await writer.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{start.AddSeconds(row):yyyy-MM-ddTHH:mm:ssZ},ferry-house,creamery,creamery,{row},-{100 + (row % 20)},3"));
            }
        }

        await page.SetInputFilesAsync("input[type=file]", file);
        await page.WaitForSelectorAsync("table[aria-label=preview] tbody tr");
        await page.FillAsync(".asking input", Network);
        await page.Locator("button:has-text('Import')").ClickAsync();
        await page.WaitForFunctionAsync("() => /[1-9]\\d* rows/.test(document.querySelector('.tray')?.innerText ?? '')");
        await demo.Server.Kill();
        long acknowledged = Count();
        await demo.StartAgain();

        // The page takes up the line by itself, and shows the import that goes on.
        await page.WaitForFunctionAsync("rows => document.querySelector('.answer')?.innerText.includes(rows)", string.Create(CultureInfo.InvariantCulture, $"{rows} rows"));
        Assert.InRange(acknowledged, before, before + rows);
        Assert.Equal(before + rows, Count());
    }

    [Fact]
    public async Task An_entry_of_the_log_keeps_its_settings_and_shows_what_they_changed()
    {
        (IPage page, List<string> faults) = await demo.OpenPage("log");
        await TestBrowser.Live(page);
        foreach ((string text, string settings) in new[] { ("As it came", "power = 14\nhops = 3\n"), ("More power", "power = 20\nhops = 3\n") })
        {
            await page.SelectOptionAsync(".log-form select >> nth=1", "settings");
            await page.Locator(".log-form textarea").FillAsync(text);
            await page.SetInputFilesAsync(".log-form input[type=file]", new FilePayload { Name = "radio.cfg", MimeType = "text/plain", Buffer = System.Text.Encoding.UTF8.GetBytes(settings) });
            await page.WaitForSelectorAsync(".attached li");
            await page.Locator(".log-form button[type=submit]").ClickAsync();
            await page.WaitForSelectorAsync($".log li:has-text('{text}')");
        }

        Assert.Equal("- power = 14\n+ power = 20", (await page.Locator(".difference").First.InnerTextAsync()).Trim());
        Assert.Empty(await Axe.Grave(page));
        await Screenshots.Keep(page, "log-1440-light");

        // Without a word it is refused in words, and nothing is written.
        await page.Locator(".log-form button[type=submit]").ClickAsync();
        await page.WaitForSelectorAsync(".log-form .problems");
        Assert.Equal(3, await page.Locator(".log > li").CountAsync());

        // From an entry to its proof.
        await page.Locator(".log li:has-text('Collinear') a:has-text('prove it')").ClickAsync();
        await TestBrowser.AddressHas(page, "entry=1");
        await page.WaitForSelectorAsync(".verdict-words");
        Assert.Empty(faults);
    }

    [Theory]
    [InlineData("network?topic=hops", "network-hops")]
    [InlineData("proof", "proof")]
    [InlineData("log", "log")]
    public async Task A_page_fits_the_hand_in_the_dark(string question, string name)
    {
        (IPage page, List<string> faults) = await demo.OpenPage(question, TestBrowser.Window(390, 844, isDark: true));
        await TestBrowser.Live(page);
        await page.WaitForSelectorAsync("table.plain, ol.log");
        Assert.Equal("", await page.EvaluateAsync<string>("() => [...document.querySelectorAll('main > *:not(.topics, .scroll, .picture)')].filter(one => one.scrollWidth > innerWidth || one.getBoundingClientRect().right > innerWidth).map(one => one.outerHTML.slice(0, 200)).join('; ')"));
        Assert.Empty(await Axe.Grave(page));
        await Screenshots.Keep(page, name + "-390-dark");
        Assert.Empty(faults);
    }

    private long Count()
    {
        using RecordStore store = RecordStore.At(demo.StorePath);
        return store.Count(Network);
    }
}
