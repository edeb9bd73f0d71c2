using System.Text.Json;
using Microsoft.Playwright;

namespace Mastwright.Tests.Workbench.Browser;

/// <summary>The plan's text in the page: problems in place, drafts, conflicts, and a server that is killed in the middle.</summary>
[Trait("needs", "system")]
[Collection(WrittenPages.Name)]
public sealed class PlanTextTests(WrittenDemo demo, ITestOutputHelper output)
{
    [Fact]
    public async Task A_mistake_is_shown_where_it_stands_and_the_draft_outlives_a_killed_server()
    {
        (IPage page, List<string> faults) = await demo.Open("?site=ferry-house&panel=plan");
        await Ready(page);
        await Type(page, "region: EU", "\nshoe-size: 44");
        await page.WaitForSelectorAsync(".plan-editor[data-problems='1']");
        int line = Array.FindIndex(demo.Text.Split('\n'), one => one.StartsWith("region: EU", StringComparison.Ordinal)) + 2;
        ILocator problem = page.Locator(".plan-problems li");
        Assert.Equal($"{line}:1", await problem.Locator("b").InnerTextAsync());
        Assert.Contains("shoe-size", await problem.InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal("shoe-size", await page.Locator(".cm-lintRange-error").InnerTextAsync());
        Assert.Equal("Save with 1 problem", await page.Locator(".plan-save").InnerTextAsync());
        await Screenshots.Keep(page, "text-1440-light");
        await page.WaitForSelectorAsync($".plan-editor[data-kept='{demo.Text.Length + "\nshoe-size: 44".Length}']");

        // What is refused on the way down is no fault of the page.
        Assert.Empty(faults);
        string address = page.Url;
        await demo.Server.Kill();
        await Type(page, "shoe-size: 44", "\nhat-size: 58");
        await page.WaitForSelectorAsync("html[data-line=retrying], html[data-line=show]", new() { State = WaitForSelectorState.Attached });
        Assert.True(await page.Locator("#components-reconnect-modal").IsVisibleAsync());
        await page.EvaluateAsync("() => { window.isOld = true; }");
        long start = Environment.TickCount64;
        await demo.StartAgain();
        long open = Environment.TickCount64;
        await page.WaitForFunctionAsync("() => !window.isOld && document.querySelector('.plan-editor')?.dataset.ready && document.querySelector('.cm-content')?.innerText.includes('hat-size: 58')");
        output.WriteLine($"the page stands again {(Environment.TickCount64 - start) / 1000.0:0.00} s after the start of the server, {(Environment.TickCount64 - open) / 1000.0:0.00} s after it is open");
        Assert.Equal(address, page.Url);
        Assert.Equal(demo.Text, demo.TextNow);
        await TestBrowser.Drawn(page);

        // The page is a whole one: it hears and answers.
        await page.GetByRole(AriaRole.Button, new() { Name = "Drop edits" }).ClickAsync();
        await page.WaitForSelectorAsync(".plan-editor[data-dirty=false][data-problems='0']");
        await page.Locator("button.plan-open").ClickAsync();
        await TestBrowser.AddressHas(page, "panel=plan", isThere: false);
    }

    [Fact]
    public async Task Two_browsers_and_an_editor_lose_nothing_of_one_another()
    {
        (IPage page, List<string> faults) = await demo.Open("?panel=plan");
        await Ready(page);
        await using IBrowser other = await TestBrowser.Launch(demo.Driver);
        (IPage second, List<string> secondFaults) = await TestBrowser.Open(other, demo.Address);
        await second.GotoAsync(demo.Address + "?panel=plan");
        await TestBrowser.Drawn(second);
        await Ready(second);

        // The first saves; the second has the new text without a click.
        await Type(page, "name: Skerrin", " West");
        await page.Keyboard.PressAsync("Control+s");
        await page.WaitForSelectorAsync(".plan-status[data-verdict=ok]");
        await second.WaitForFunctionAsync("() => document.querySelector('.cm-content').innerText.includes('name: Skerrin West') && document.title.includes('Skerrin West')");

        // The second has unsaved edits when an editor outside writes: both versions are shown, and saved together.
        await Type(second, "region: EU", "   # here");
        await second.WaitForSelectorAsync(".plan-editor[data-dirty=true]");
        await File.WriteAllTextAsync(demo.PlanPath, demo.TextNow.Replace("name: Ferry House", "name: Old Ferry House", StringComparison.Ordinal), TestContext.Current.CancellationToken);
        await second.WaitForFunctionAsync("() => document.querySelector('.plan-status').innerText.startsWith('The file was changed meanwhile')");
        await second.Keyboard.PressAsync("Control+s");
        await second.WaitForSelectorAsync(".plan-editor[data-conflict=true] .cm-mergeView");
        string[] sides = [.. await second.Locator(".plan-versions .cm-content").AllInnerTextsAsync()];
        Assert.Contains("Old Ferry House", sides[0], StringComparison.Ordinal);
        Assert.Contains("# here", sides[1], StringComparison.Ordinal);
        await Screenshots.Keep(second, "conflict-1440-light");
        await second.GetByRole(AriaRole.Button, new() { Name = "Save both changes together" }).ClickAsync();
        await demo.TextBecomes(text => text == demo.Text.Replace("name: Skerrin\n", "name: Skerrin West\n", StringComparison.Ordinal)
            .Replace("region: EU", "region: EU   # here", StringComparison.Ordinal).Replace("name: Ferry House", "name: Old Ferry House", StringComparison.Ordinal));
        await page.WaitForFunctionAsync("() => document.querySelector('.cm-content').innerText.includes('# here')");

        // A change of the map that was made of an older state is not written either: both stand there to choose from.
        await page.GotoAsync(demo.Address + "?site=ferry-house&trial=ferry-house/net-loft@46.40000,-18.66000");
        await TestBrowser.Drawn(page);
        await page.RouteAsync("**/api/v1/plan/keep", async route =>
        {
            using JsonDocument change = JsonDocument.Parse(route.Request.PostData!);
            Assert.Equal(64, change.RootElement.GetProperty("based-on").GetString()!.Length);
            await File.WriteAllTextAsync(demo.PlanPath, demo.TextNow + "# written between\n");
            await route.ContinueAsync();
        });
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep" }).ClickAsync();
        await page.WaitForSelectorAsync(".plan-editor[data-conflict=true]");
        Assert.EndsWith("# written between\n", demo.TextNow, StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the file's" }).ClickAsync();
        await page.WaitForSelectorAsync(".plan-drafts p");
        Assert.Equal(2, faults.Count(fault => fault.Contains("409", StringComparison.Ordinal)));
        Assert.DoesNotContain(faults.Concat(secondFaults), fault => !fault.Contains("409", StringComparison.Ordinal));
    }

    internal static Task Ready(IPage page) => page.WaitForSelectorAsync(".plan-editor[data-ready]");

    /// <summary>Puts the cursor behind a piece of the text and types.</summary>
    internal static async Task Type(IPage page, string behind, string text)
    {
        await page.Locator(".cm-line", new() { HasText = behind }).First.ClickAsync();
        await page.Keyboard.PressAsync("Home");
        for (int i = 0; i < behind.Length; i++)
        {
            await page.Keyboard.PressAsync("ArrowRight");
        }

        await page.Keyboard.InsertTextAsync(text);
    }
}
