using System.Globalization;
using Microsoft.Playwright;

namespace Mastwright.Tests.Workbench.Browser;

/// <summary>What stands at a site, as a page: a changed length followed through, kept and undone, by keyboard alone.</summary>
[Trait("needs", "system")]
[Collection(WrittenPages.Name)]
public sealed class BuildPageTests(WrittenDemo demo)
{
    private const string Cable = "build?site=ferry-house&element=supply/3";

    [Fact]
    public async Task A_longer_cable_is_followed_to_a_finding_kept_and_undone_by_keyboard_alone()
    {
        (IPage page, List<string> faults) = await Open("build?site=ferry-house");

        // The diagram is a row of links: the one over the cable opens its panel.
        await page.FocusAsync(".spot[data-element='supply/2']");
        await page.Keyboard.PressAsync("Shift+Tab");
        Assert.Equal("Data cable with power, 24 m, cat-5e, 44.0 V, 1.99 W, ok", await page.EvaluateAsync<string>("() => document.activeElement.getAttribute('aria-label')"));
        await page.Keyboard.PressAsync("Enter");
        await TestBrowser.AddressHas(page, "element=supply/3");
        await page.WaitForSelectorAsync("[data-field='supply/3/length']");

        // 900 m of it: nothing starts any more.
        await page.FocusAsync("[data-field='supply/3/length']");
        await page.Keyboard.PressAsync("Control+a");
        await page.Keyboard.TypeAsync("900 m");
        await page.Keyboard.PressAsync("Enter");
        await TestBrowser.AddressHas(page, "change=ferry-house/net-loft/supply/3/length:900 m");
        await page.WaitForSelectorAsync(".moved .verdict-fails");
        Assert.Equal(demo.Text, demo.TextNow);

        // A reload shows the same; then a length that is right is tried and kept.
        await page.ReloadAsync();
        await TestBrowser.Live(page);
        await page.FocusAsync("[data-field='supply/3/length']");
        Assert.Equal("900 m", await page.InputValueAsync("[data-field='supply/3/length']"));
        await page.Keyboard.PressAsync("Control+a");
        await page.Keyboard.TypeAsync("60 m");
        await page.Keyboard.PressAsync("Enter");
        await TestBrowser.AddressHas(page, "length:60 m");
        await page.WaitForFunctionAsync("() => !document.querySelector('.moved .verdict-fails') && document.querySelector('.tried td')");
        await page.FocusAsync(".tried .keep");
        await page.Keyboard.PressAsync("Enter");
        await demo.TextBecomes(text => text == demo.Text.Replace("length: 24 m", "length: 60 m", StringComparison.Ordinal));
        await TestBrowser.AddressHas(page, "change=", isThere: false);
        await page.WaitForFunctionAsync("() => document.querySelector(\".spot[data-element='supply/3']\").getAttribute('aria-label').includes('60 m')");

        await page.WaitForSelectorAsync("button.undo[title*='supply/3/length changed to 60 m']");
        await page.FocusAsync("button.undo");
        await page.Keyboard.PressAsync("Enter");
        await demo.TextBecomes(text => text == demo.Text);
        Assert.Empty(faults);
    }

    [Fact]
    public async Task A_part_is_chosen_from_the_catalogue_and_nonsense_is_refused_where_it_stands()
    {
        (IPage page, List<string> faults) = await Open("build?site=ferry-house&element=mast");
        await page.SelectOptionAsync("[data-field='mast/tubes/1/size']", "steel-48.3x3.2");
        await TestBrowser.AddressHas(page, "mast/tubes/1/size:steel-48.3x3.2");
        await page.WaitForSelectorAsync(".moved .verdict-fails");
        await page.FillAsync("[data-field='mast/tubes/1/length']", "a bit");
        await page.Keyboard.PressAsync("Tab");
        await page.WaitForSelectorAsync(".tried [role=alert] .problems");
        Assert.Contains("mast/tubes/1/length", await page.Locator(".tried .problems").InnerTextAsync(), StringComparison.Ordinal);
        Assert.True(await page.Locator(".tried .keep").IsDisabledAsync());
        await page.ClickAsync(".tried .drop-all");
        await page.WaitForFunctionAsync("() => !document.querySelector('.tried')");
        Assert.Equal(demo.Text, demo.TextNow);
        Assert.Empty(faults);
    }

    [Theory]
    [InlineData(1440, 900, false)]
    [InlineData(390, 844, true)]
    public async Task The_page_shows_its_pictures_and_is_no_wider_than_the_window(int width, int height, bool isDark)
    {
        (IPage page, List<string> faults) = await Open(Cable + "&compare=eaves", TestBrowser.Window(width, height, isDark));
        Assert.Equal(6, await page.Locator(".diagram-sheet img, .station-picture img").CountAsync());
        foreach (ILocator image in await page.Locator(".diagram-sheet img, .station-picture img").AllAsync())
        {
            await image.ScrollIntoViewIfNeededAsync();
            Assert.True(await image.EvaluateAsync<bool>("image => image.decode().then(() => image.naturalWidth >= 340)"));
        }

        Assert.True(await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= innerWidth && document.querySelector('main').scrollWidth <= document.querySelector('main').clientWidth"));
        await page.EvaluateAsync("() => document.querySelector('main').scrollTo(0, 0)");
        await Screenshots.Keep(page, string.Create(CultureInfo.InvariantCulture, $"build-{width}-{(isDark ? "dark" : "light")}"));
        string[] grave = await Axe.Grave(page);
        Assert.True(grave.Length == 0, string.Join('\n', grave));

        // Everything can be taken out; in the hand it is the same.
        foreach (string address in isDark ? [] : await page.Locator(".taken a").EvaluateAllAsync<string[]>("links => links.map(link => link.getAttribute('href'))"))
        {
            IAPIResponse answer = await page.APIRequest.GetAsync(new Uri(new Uri(demo.Address), address).ToString());
            Assert.Equal(200, answer.Status);
            Assert.True((await answer.BodyAsync()).Length > 100, address);
        }

        Assert.Empty(faults);
    }

    private async Task<(IPage Page, List<string> Faults)> Open(string question, BrowserNewContextOptions? options = null)
    {
        (IPage page, List<string> faults) = await demo.OpenPage(question, options);
        await TestBrowser.Live(page);
        return (page, faults);
    }

}
