using System.Globalization;
using System.Text;
using System.Text.Json;
using Microsoft.Playwright;

namespace Mastwright.Tests.Workbench.Browser;

/// <summary>The whole job on the invented island: from a search for a relay to one that is dragged and kept, to a proof, to a correction that the plan adopts.</summary>
[Trait("needs", "system")]
[Collection(WrittenPages.Name)]
public sealed class StoryTests(WrittenDemo demo)
{
    [Fact]
    public async Task From_the_search_for_a_relay_to_a_correction_that_is_adopted()
    {
        (IPage page, List<string> faults) = await demo.Open("?site=ferry-house");

        // Where a relay helps: asked for, told of on every page, and there after the server was killed.
        await page.Locator(".pages a:has-text('Network')").ClickAsync();
        await page.Locator(".topics a:has-text('Where a relay helps')").ClickAsync();
        await page.SelectOptionAsync(".asking label:has-text('To each side') select", "5");
        await TestBrowser.AddressHas(page, "with.radius=5");
        await page.Locator("button:has-text('Search')").ClickAsync();
        await page.WaitForFunctionAsync("() => /[1-9]\\d* of \\d+/.test(document.querySelector('.tray')?.innerText ?? '')");
        await page.Locator(".pages a:has-text('Log')").ClickAsync();
        await page.WaitForSelectorAsync(".tray:has-text('Relays for Ferry House')");
        await page.EvaluateAsync("() => { window.isOld = true; }");
        await demo.Server.Kill();
        await demo.StartAgain();
        await page.WaitForFunctionAsync("() => !window.isOld && document.querySelector('.page.document[data-live]')");
        faults.Clear();

        // It went on by itself; stopped here, for one over links alone, which is quick.
        await page.Locator(".tray-item:has-text('Relays for Ferry House') button").ClickAsync();
        await page.WaitForSelectorAsync(".tray", new() { State = WaitForSelectorState.Detached });
        await page.Locator(".pages a:has-text('Network')").ClickAsync();
        await page.Locator(".topics a:has-text('Where a relay helps')").ClickAsync();
        await page.SelectOptionAsync(".asking label:has-text('What for') select", "stations");
        await TestBrowser.AddressHas(page, "with.goal=stations");
        await page.Locator("button:has-text('Search')").ClickAsync();
        await page.WaitForSelectorAsync("table[aria-label=relay-chosen] tbody a");
        string best = await page.Locator("table[aria-label=relay-chosen] tbody a").First.InnerTextAsync();
        Assert.StartsWith(best, await page.Locator("table[aria-label=relay-ranking] tbody a").First.InnerTextAsync(), StringComparison.Ordinal);

        // One click, and it is a trial on the ground; it is dragged a little, and kept.
        await page.Locator("table[aria-label=relay-chosen] tbody a").First.ClickAsync();
        await TestBrowser.Drawn(page);
        await TestBrowser.Settled(page);
        string place = await page.EvaluateAsync<string>("() => new URLSearchParams(location.search).get('trial')");
        Assert.StartsWith("like:ferry-house/net-loft@", place, StringComparison.Ordinal);
        LocatorBoundingBoxResult box = (await page.Locator("button.mark[data-key=trial] svg").BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(box.X + (box.Width / 2), box.Y + (box.Height / 2));
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(box.X + (box.Width / 2) + 24, box.Y + (box.Height / 2) + 12, new() { Steps = 5 });
        await page.Mouse.UpAsync();
        await page.WaitForFunctionAsync("place => new URLSearchParams(location.search).get('trial') !== place", place);
        await page.Locator(".trial-sheet button:has-text('Keep')").ClickAsync();
        await demo.TextBecomes(text => text.Contains("name: Trial place", StringComparison.Ordinal) && text.Contains("height: 6 m, above: roof, roof: 0 m", StringComparison.Ordinal));
        await TestBrowser.AddressHas(page, "trial=", isThere: false);

        // The change of the summer is proved from the log.
        await page.Locator(".pages a:has-text('Proof')").ClickAsync();
        await page.WaitForSelectorAsync(".verdict-words, main .problems", new() { Timeout = 180_000 });
        Assert.Contains("better by 8.9 dB", await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);

        // The one station's records are too few to correct the prediction; a club's measurements come in, and then it is fitted and adopted.
        await page.Locator(".topics a:has-text('Correct the prediction')").ClickAsync();
        await page.WaitForSelectorAsync(".findings:has-text('No correction can be fitted')");
        await page.Locator(".topics a:has-text('Bring records in')").ClickAsync();
        await page.WaitForSelectorAsync("input[type=file]", new() { State = WaitForSelectorState.Attached });
        await page.SetInputFilesAsync("input[type=file]", new FilePayload { Name = "club.csv", MimeType = "text/csv", Buffer = Encoding.UTF8.GetBytes(await Measured(page)) });
        await page.WaitForSelectorAsync("table[aria-label=preview] tbody tr");
        await page.FillAsync(".asking input", "club");
        await page.Locator("button:has-text('Import')").ClickAsync();
        await page.WaitForSelectorAsync(".answer:has-text('records added')");
        await page.Locator(".topics a:has-text('Correct the prediction')").ClickAsync();
        await page.SelectOptionAsync(".asking label:has-text('Network') select", "club");
        await page.WaitForSelectorAsync("table[aria-label=fit-scores]");
        await page.Locator("input[required]").FillAsync("club");
        await page.Locator("button:has-text('Adopt the correction')").ClickAsync();
        await demo.TextBecomes(text => text.EndsWith("correction: club\n", StringComparison.Ordinal) || text.Contains("\ncorrection: club", StringComparison.Ordinal));
        await page.WaitForSelectorAsync("main:has-text('The plan uses the correction')");

        // And out again.
        await page.Locator("button.undo").ClickAsync();
        await demo.TextBecomes(text => !text.Contains("correction: club", StringComparison.Ordinal));
        Assert.Empty(faults);
    }

    /// <summary>
    /// Invented levels between the stations of the plan: what it predicts, less a common amount and one of each receiver. Ferry House hears all, the others two.
    /// </summary>
    private async Task<string> Measured(IPage page)
    {
        StringBuilder rows = new("time_utc,heard_by,made_by,sent_by,counter,level_dbm,ratio_db\n");
        string[] stations = ["ferry-house", "creamery", "upper-school", "gannet-stack", "wind-shed", "pilot-hut", "lantern-bay", "east-quay"];
        int number = 0;
        foreach ((int at, string receiver) in stations.Index())
        {
            foreach ((int from, string sender) in stations.Index())
            {
                int apart = (from - at + stations.Length) % stations.Length;
                if (apart == 0 || (at > 0 && apart is not (1 or 3)))
                {
                    continue;
                }

                IAPIResponse path = await page.Context.APIRequest.GetAsync($"{demo.Address}api/v1/path?from={sender}&to={receiver}");
                using JsonDocument link = JsonDocument.Parse(await path.TextAsync());
                double level = link.RootElement.GetProperty("out").GetProperty("level-dbm").GetProperty("median").GetDouble();
                for (int packet = 0; packet < 6; packet++)
                {
                    number++;
                    double heard = level - (at == 0 ? 12 : 5 + (at % 3)) + (((number * 7 % 5) - 2) * 0.4);
                    rows.Append(CultureInfo.InvariantCulture, $"2025-09-01T{number / 60:00}:{number % 60:00}:00Z,{receiver},{sender},{sender},{number},{heard:0.0},30\n");
                }
            }
        }

        return rows.ToString();
    }
}
