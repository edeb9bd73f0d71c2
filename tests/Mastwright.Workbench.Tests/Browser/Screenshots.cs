using Microsoft.Playwright;

namespace Mastwright.Tests.Workbench.Browser;

/// <summary>Pictures of pages, kept for whoever looks at a run of the tests.</summary>
internal static class Screenshots
{
    /// <summary>Keeps a picture of the page in artifacts/screenshots.</summary>
    internal static async Task Keep(IPage page, string name)
    {
        string folder = Path.Combine(TestPlaces.Repository, "artifacts", "screenshots");
        Directory.CreateDirectory(folder);
        await page.ScreenshotAsync(new() { Path = Path.Combine(folder, name + ".png") }).ConfigureAwait(false);
    }
}
