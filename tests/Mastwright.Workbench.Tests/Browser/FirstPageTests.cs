using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;

namespace Mastwright.Tests.Workbench.Browser;

/// <summary>The first page in a real browser, without any network. What it takes is printed; its bounds are held by bench/workbench.</summary>
[Trait("needs", "system")]
public sealed class FirstPageTests(ServedDemo demo, ITestOutputHelper output)
{
    [Fact]
    public async Task The_page_comes_in_and_the_map_is_drawn_without_a_fault()
    {
        (IPage page, List<string> faults) = await demo.Open();
        long start = Stopwatch.GetTimestamp();
        IResponse? answer = await page.GotoAsync(demo.Address, new() { WaitUntil = WaitUntilState.DOMContentLoaded });
        TimeSpan pageIn = Stopwatch.GetElapsedTime(start);
        await page.WaitForSelectorAsync(".ground[data-drawn]", new() { Timeout = 180_000 });
        TimeSpan drawn = Stopwatch.GetElapsedTime(start);
        await TestBrowser.Drawn(page);
        Write($"page in {pageIn.TotalSeconds:0.00} s, map drawn {drawn.TotalSeconds:0.00} s, server {demo.ServerMebibytes:0} MiB");

        string policy = answer!.Headers["content-security-policy"];
        Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.Matches("script-src 'self' 'nonce-[A-Za-z0-9+/=]+';", policy);
        Assert.Contains("worker-src 'self';", policy, StringComparison.Ordinal);
        Assert.Equal(1, policy.Split("'unsafe-inline'").Length - 1);
        Assert.DoesNotContain("unsafe-eval", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("blob:", policy, StringComparison.Ordinal);
        Assert.Equal(11, await page.Locator("button.mark").CountAsync());
        await Screenshots.Keep(page, "plan-1440-light");
        Assert.Empty(faults);
    }

    [Theory]
    [InlineData(1440, 900, false)]
    [InlineData(1440, 900, true)]
    [InlineData(390, 844, false)]
    [InlineData(390, 844, true)]
    public async Task A_link_to_a_path_shows_its_ledger_and_its_strip(int width, int height, bool isDark)
    {
        (IPage page, List<string> faults) = await demo.Open(width, height, isDark);
        await page.GotoAsync(demo.Address + "?site=ferry-house&to=lantern-bay");
        await TestBrowser.Drawn(page);
        Assert.Contains("Lantern Bay", await page.TitleAsync(), StringComparison.Ordinal);
        Assert.True(await page.Locator(".ledger li").CountAsync() > 8);
        ILocator strip = page.Locator(".strip img");
        Assert.True(await strip.EvaluateAsync<bool>("image => image.decode().then(() => image.naturalWidth > 600)"));
        // Nothing is wider than the window, in the hand neither.
        Assert.True(await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= innerWidth"));
        await Screenshots.Keep(page, string.Create(CultureInfo.InvariantCulture, $"path-{width}-{(isDark ? "dark" : "light")}"));
        Assert.Empty(faults);
    }

    [Fact]
    public async Task Stations_are_reached_and_picked_by_keyboard_alone()
    {
        (IPage page, List<string> faults) = await demo.Open();
        await page.GotoAsync(demo.Address);
        await TestBrowser.Drawn(page);
        await page.FocusAsync("button.mark[data-key=ferry-house]");
        await page.Keyboard.PressAsync("Enter");
        await TestBrowser.AddressHas(page, "site=ferry-house");
        await page.FocusAsync("button.mark[data-key=gannet-stack]");
        await page.Keyboard.PressAsync("Space");
        await TestBrowser.AddressHas(page, "to=gannet-stack");
        await page.WaitForSelectorAsync(".strip img");
        Assert.Equal("Gannet Stack, own site", await page.Locator("button.mark[data-key=gannet-stack]").GetAttributeAsync("aria-label"));
        Assert.Empty(faults);
    }

    [Fact]
    public async Task Another_fit_out_changes_verdicts_and_stands_in_the_address()
    {
        (IPage page, List<string> faults) = await demo.Open();
        await page.GotoAsync(demo.Address + "?site=ferry-house");
        await TestBrowser.Drawn(page);
        string before = await page.Locator(".rows").First.InnerTextAsync();
        await page.SelectOptionAsync(".bar-fit-out select", "eaves");
        await TestBrowser.AddressHas(page, "fit-out=ferry-house/eaves");
        await page.WaitForFunctionAsync("before => document.querySelector('.rows').innerText !== before", before);
        await page.GoBackAsync();
        await page.WaitForFunctionAsync("before => document.querySelector('.rows').innerText === before", before);
        Assert.Empty(faults);
    }

    private void Write(FormattableString text) => output.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
