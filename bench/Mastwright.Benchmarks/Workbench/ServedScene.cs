using System.Diagnostics;
using Mastwright.Tests.Workbench.Browser;
using Microsoft.Playwright;

namespace Mastwright.Benchmarks.Workbench;

/// <summary>The demo, served by the published command, and the browser of the tests.</summary>
internal sealed class ServedScene : IAsyncDisposable
{
    private readonly string folder;
    private readonly string program;

    private ServedScene(string folder, string program) => (this.folder, this.program) = (folder, program);

    internal ServerRun Server { get; private set; } = null!;

    internal IPlaywright Driver { get; private set; } = null!;

    internal IBrowser Browser { get; private set; } = null!;

    public async ValueTask DisposeAsync()
    {
        await Browser.DisposeAsync().ConfigureAwait(false);
        Driver.Dispose();
        await Server.DisposeAsync().ConfigureAwait(false);
    }

    /// <summary>Writes the demo anew and serves it.</summary>
    internal static async Task<ServedScene> Open(string scratch, string program)
    {
        ServedScene scene = new(Path.GetFullPath(scratch), Path.GetFullPath(program));
        if (Directory.Exists(scene.folder))
        {
            Directory.Delete(scene.folder, recursive: true);
        }

        Directory.CreateDirectory(scene.folder);
        ProcessStartInfo demo = new(scene.program, ["demo", Path.Combine(scene.folder, "skerrin")]) { RedirectStandardOutput = true, UseShellExecute = false };
        using (Process written = Process.Start(demo)!)
        {
            await written.StandardOutput.ReadToEndAsync().ConfigureAwait(false);
            await written.WaitForExitAsync().ConfigureAwait(false);
        }

        await scene.Serve("0").ConfigureAwait(false);
        scene.Driver = await Playwright.CreateAsync().ConfigureAwait(false);
        scene.Browser = await TestBrowser.Launch(scene.Driver).ConfigureAwait(false);
        return scene;
    }

    /// <summary>Starts the server, again where it was before.</summary>
    internal async Task Serve(string port) =>
        Server = await ServerRun.Start(folder, program, "serve", Path.Combine("skerrin", "plan.yaml"), "--port", port).ConfigureAwait(false);

    /// <summary>A page at an address of the workbench, with the whole of it drawn.</summary>
    internal async Task<IPage> Page(string question, BrowserNewContextOptions? options = null)
    {
        IPage page = await Opened(question, options).ConfigureAwait(false);
        await TestBrowser.Drawn(page).ConfigureAwait(false);
        return page;
    }

    /// <summary>A page without a map, once something of it is there.</summary>
    internal async Task<IPage> Document(string question, string wanted, BrowserNewContextOptions? options = null)
    {
        IPage page = await Opened(question, options).ConfigureAwait(false);
        await page.WaitForSelectorAsync(wanted).ConfigureAwait(false);
        return page;
    }

    private async Task<IPage> Opened(string question, BrowserNewContextOptions? options)
    {
        (IPage page, _) = await TestBrowser.Open(Browser, Server.Address, options).ConfigureAwait(false);
        await page.GotoAsync(Server.Address + question).ConfigureAwait(false);
        return page;
    }
}
