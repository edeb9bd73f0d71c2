using Mastwright.Tests.Workbench.Browser;
using Microsoft.Playwright;

namespace Mastwright.Benchmarks.Workbench;

/// <summary>The pictures of the README, taken of the demo.</summary>
internal static class ReadmePictures
{
    private const int WidthPixels = 1200;
    private const int HeightPixels = 750;

    /// <summary>Takes them.</summary>
    internal static async Task Take(string folder, string scratch, string program)
    {
        Directory.CreateDirectory(folder);
        ServedScene scene = await ServedScene.Open(scratch, program).ConfigureAwait(false);
        await using (scene.ConfigureAwait(false))
        {
            IPage page = await scene.Page("?site=ferry-house&to=lantern-bay&reach=margin", TestBrowser.Window(WidthPixels, HeightPixels, isDark: false)).ConfigureAwait(false);
            await TestBrowser.Settled(page).ConfigureAwait(false);
            await Take(page, folder, "workbench-path").ConfigureAwait(false);

            page = await scene.Page("?trial=like:ferry-house/net-loft@46.37560,-18.56780&site=trial&reach=margin", TestBrowser.Window(WidthPixels, HeightPixels, isDark: true)).ConfigureAwait(false);
            await TestBrowser.Settled(page).ConfigureAwait(false);
            await Take(page, folder, "workbench-trial").ConfigureAwait(false);

            page = await scene.Document("build?site=ferry-house", ".build img", TestBrowser.Window(WidthPixels, HeightPixels, isDark: false)).ConfigureAwait(false);
            await Take(page, folder, "workbench-build").ConfigureAwait(false);

            page = await scene.Document("proof?site=ferry-house&entry=1", ".verdict-words", TestBrowser.Window(WidthPixels, HeightPixels, isDark: false)).ConfigureAwait(false);
            await Take(page, folder, "workbench-proof").ConfigureAwait(false);
        }
    }

    private static async Task Take(IPage page, string folder, string name)
    {
        // The strip's picture and the labels of the contours come in on their own.
        await page.WaitForFunctionAsync("() => [...document.images].every(image => image.complete && image.naturalWidth > 0)").ConfigureAwait(false);
        await page.WaitForLoadStateAsync(LoadState.NetworkIdle).ConfigureAwait(false);
        await page.ScreenshotAsync(new() { Path = Path.Combine(folder, name + ".png"), Animations = ScreenshotAnimations.Disabled }).ConfigureAwait(false);
        await page.Context.CloseAsync().ConfigureAwait(false);
    }
}
