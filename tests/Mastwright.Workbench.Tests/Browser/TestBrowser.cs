using Microsoft.Playwright;

namespace Mastwright.Tests.Workbench.Browser;

/// <summary>The system's browser as the tests run it: drawn by the processor, as on a machine without a graphics processor, and nothing asked of any other machine.</summary>
internal static class TestBrowser
{
    /// <summary>How long a page may take on a busy machine.</summary>
    internal const float PatienceMilliseconds = 60_000;

    internal static Task<IBrowser> Launch(IPlaywright playwright, string program = "/usr/bin/chromium") => playwright.Chromium.LaunchAsync(new()
    {
        ExecutablePath = program,
        Args =
        [
            "--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
            "--use-angle=swiftshader-webgl", "--enable-unsafe-swiftshader", "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE localhost",
        ],
    });

    /// <summary>A page of its own, and the list of everything that went wrong on it: errors, refusals by the content security policy, foreign requests.</summary>
    internal static async Task<(IPage Page, List<string> Faults)> Open(IBrowser browser, string address, BrowserNewContextOptions? options = null)
    {
        IBrowserContext context = await browser.NewContextAsync(options ?? Window(1440, 900, isDark: false)).ConfigureAwait(false);
        context.SetDefaultTimeout(PatienceMilliseconds);
        IPage page = await context.NewPageAsync().ConfigureAwait(false);
        List<string> faults = [];
        page.Console += (_, message) =>
        {
            // Without a graphics processor the browser reads each frame of the map back, and says so as if the page had.
            if (message.Type is "error" or "warning" && !message.Text.Contains("GPU stall due to ReadPixels", StringComparison.Ordinal))
            {
                faults.Add($"{message.Type}: {message.Text}");
            }
        };
        page.PageError += (_, fault) => faults.Add($"page error: {fault}");
        page.Request += (_, request) =>
        {
            if (!request.Url.StartsWith(address, StringComparison.Ordinal) && !request.Url.StartsWith("data:", StringComparison.Ordinal))
            {
                faults.Add($"asked elsewhere: {request.Url}");
            }
        };
        page.Response += (_, response) =>
        {
            if (response.Status >= 400)
            {
                faults.Add($"{response.Status}: {response.Url}");
            }
        };
        await page.AddInitScriptAsync("document.addEventListener('securitypolicyviolation', one => console.error('policy: ' + one.violatedDirective + ' ' + one.blockedURI))").ConfigureAwait(false);
        return (page, faults);
    }

    internal static BrowserNewContextOptions Window(int width, int height, bool isDark) => new()
    {
        ViewportSize = new() { Width = width, Height = height },
        ColorScheme = isDark ? ColorScheme.Dark : ColorScheme.Light,
        ReducedMotion = ReducedMotion.Reduce,
        AcceptDownloads = true,
    };

    /// <summary>Waits until the map is drawn and its links are there.</summary>
    internal static Task Drawn(IPage page) => page.WaitForSelectorAsync(".ground[data-drawn][data-links]");

    /// <summary>Waits until a page without a map is drawn and its line to the server stands.</summary>
    internal static Task Live(IPage page) => page.WaitForSelectorAsync(".page.document[data-live]");

    /// <summary>Waits until the whole reach lies on the map.</summary>
    internal static Task Settled(IPage page) => page.WaitForSelectorAsync(".ground[data-reach=settled]");

    /// <summary>Waits until the page's address holds something, or does not.</summary>
    internal static Task AddressHas(IPage page, string part, bool isThere = true) =>
        page.WaitForFunctionAsync("([part, isThere]) => decodeURIComponent(location.search).includes(part) === isThere", new object[] { part, isThere });
}
