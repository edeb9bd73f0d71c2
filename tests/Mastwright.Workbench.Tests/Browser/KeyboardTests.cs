using Microsoft.Playwright;

namespace Mastwright.Tests.Workbench.Browser;

/// <summary>The whole job by keyboard alone, and what a screen reader meets.</summary>
[Trait("needs", "system")]
[Collection(MovedMap.Name)]
public sealed class KeyboardTests(WrittenDemo demo)
{
    private const int MostTabs = 160;

    [Fact]
    public async Task The_whole_job_is_done_by_keyboard_alone()
    {
        (IPage page, List<string> faults) = await demo.Open("");

        // The first stop leads past the map to the stations; a station and its path are links there.
        await page.Keyboard.PressAsync("Tab");
        Assert.Equal("To the stations and the ledger", await Focused(page, "innerText"));
        await page.Keyboard.PressAsync("Enter");
        Assert.Equal("side", await Focused(page, "id"));
        await Tab(page, ".side .rows a", "Ferry House");
        await page.Keyboard.PressAsync("Enter");
        await TestBrowser.AddressHas(page, "site=ferry-house");
        await page.WaitForSelectorAsync("#links-title");
        await Tab(page, ".side .rows a", "Gannet Stack");
        await page.Keyboard.PressAsync("Enter");
        await TestBrowser.AddressHas(page, "to=gannet-stack");

        // Another fit-out, and back.
        await Tab(page, ".bar-fit-out select");
        await page.Keyboard.PressAsync("ArrowUp");
        await TestBrowser.AddressHas(page, "fit-out=ferry-house/");
        await page.Keyboard.PressAsync("ArrowDown");
        await TestBrowser.AddressHas(page, "fit-out", isThere: false);

        // The reach.
        await Tab(page, ".reach-layer");
        await page.Keyboard.PressAsync("ArrowDown");
        await TestBrowser.AddressHas(page, "reach=margin");
        await TestBrowser.Settled(page);

        // The station is moved, and keeps the focus.
        await Tab(page, "button.mark[data-key=ferry-house]");
        await page.Keyboard.PressAsync("Shift+ArrowRight");
        await page.Keyboard.PressAsync("Shift+ArrowRight");
        await TestBrowser.AddressHas(page, "trial=ferry-house/net-loft@46.39810,-18.6");
        await page.WaitForFunctionAsync("() => document.activeElement?.matches('button.mark[data-key=ferry-house]')");

        // The mast is raised by half a metre a step, then all is kept.
        await Tab(page, "[data-height]");
        await page.Keyboard.PressAsync("ArrowUp");
        await page.Keyboard.PressAsync("ArrowUp");
        await page.WaitForFunctionAsync("() => decodeURIComponent(location.search).includes(',13')");
        await Tab(page, ".trial-sheet button", "Keep");
        await page.Keyboard.PressAsync("Enter");
        await TestBrowser.AddressHas(page, "trial", isThere: false);
        await demo.TextBecomes(text => text.Contains("height: 6 m, above: roof, roof: 7 m", StringComparison.Ordinal));

        // Taken back by the button.
        await page.WaitForSelectorAsync("button.undo[title*='ferry-house moved']");
        await Tab(page, "button.undo");
        await page.Keyboard.PressAsync("Enter");
        await demo.TextBecomes(text => text == demo.Text);

        // The text: in, changed, saved, and out again.
        await Tab(page, "button.plan-open");
        await page.Keyboard.PressAsync("Enter");
        await PlanTextTests.Ready(page);
        await Tab(page, ".cm-content");
        await page.Keyboard.PressAsync("Control+End");
        await page.Keyboard.TypeAsync("# by hand\n");
        await page.Keyboard.PressAsync("Control+s");
        await demo.TextBecomes(text => text == demo.Text + "# by hand\n");
        await page.Keyboard.PressAsync("Escape");
        await page.Keyboard.PressAsync("Tab");
        Assert.False(await page.EvaluateAsync<bool>("() => document.activeElement.matches('.cm-content')"));
        Assert.Empty(faults);
    }

    [Fact]
    public async Task The_rules_of_accessible_pages_find_nothing_serious()
    {
        (IPage page, _) = await demo.Open("?site=ferry-house&to=lantern-bay&reach=margin&trial=ferry-house/net-loft@46.40000,-18.66000,14");
        await TestBrowser.Settled(page);
        foreach (string step in (string[])["path", "path, dark", "plan", "text"])
        {
            switch (step)
            {
                case "path, dark":
                    await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
                    break;
                case "plan":
                    await page.GotoAsync(demo.Address);
                    await TestBrowser.Drawn(page);
                    break;
                case "text":
                    await page.Locator("button.plan-open").ClickAsync();
                    await PlanTextTests.Ready(page);
                    await PlanTextTests.Type(page, "region: EU", "\nshoe-size: 44");
                    await page.WaitForSelectorAsync(".plan-editor[data-problems='1']");
                    break;
            }

            string[] found = await Axe.Grave(page);
            Assert.True(found.Length == 0, $"{step}:\n{string.Join('\n', found)}");
        }
    }

    /// <summary>Presses Tab until what is wanted has the focus, as someone without a mouse does.</summary>
    internal static async Task Tab(IPage page, string selector, string text = "")
    {
        await page.WaitForFunctionAsync("([selector, text]) => [...document.querySelectorAll(selector)].some(one => one.innerText.includes(text) || text === '')", new[] { selector, text });
        for (int i = 0; i < MostTabs; i++)
        {
            if (await page.EvaluateAsync<bool>("([selector, text]) => document.activeElement.matches(selector) && (text === '' || document.activeElement.innerText.includes(text))", new[] { selector, text }))
            {
                return;
            }

            await page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"{selector} '{text}' is not reached by the Tab key; the focus is on {await Focused(page, "outerHTML")}");
    }

    private static Task<string> Focused(IPage page, string property) => page.EvaluateAsync<string>("property => document.activeElement[property]", property);
}
