using System.Globalization;
using Mastwright.Tests.EndToEnd;
using Microsoft.Playwright;

namespace Mastwright.Tests.Workbench.Browser;

/// <summary>A demo that may be written, killed and started again, served beside the first one, and a browser of its own. The tests of one come one after another.</summary>
public sealed class WrittenDemo(ServedDemo demo) : IAsyncLifetime
{
    private static int count;

    private readonly string served = string.Create(CultureInfo.InvariantCulture, $"written-demo-{Interlocked.Increment(ref count)}");
    private ServerRun? server;
    private string text = "";

    /// <summary>Where the pages are; the same after a new start.</summary>
    public string Address => server!.Address;

    /// <summary>The browser; every test opens a context of its own.</summary>
    public IBrowser Browser { get; private set; } = null!;

    /// <summary>The plan's file.</summary>
    public string PlanPath => Path.Combine(demo.Program.Folder, served, "plan.yaml");

    /// <summary>The store of records beside it.</summary>
    public string StorePath => Path.Combine(demo.Program.Folder, served, "records.sqlite");

    /// <summary>A file of its folder.</summary>
    public string FileOf(string name) => Path.Combine(demo.Program.Folder, served, name);

    /// <summary>The plan's text as the demo writes it.</summary>
    public string Text => text;

    /// <summary>The plan's text as it is now.</summary>
    public string TextNow => File.ReadAllText(PlanPath);

    /// <summary>The driver of browsers.</summary>
    internal IPlaywright Driver => demo.Driver;

    /// <summary>The server.</summary>
    internal ServerRun Server => server!;

    public async ValueTask InitializeAsync()
    {
        ProgramRun.Start(demo.Program.File, demo.Program.Folder, null, "demo", served).EndsWith(0);
        text = TextNow;
        Task<IBrowser> launched = TestBrowser.Launch(Driver);
        await Start(port: "0").ConfigureAwait(false);
        Browser = await launched.ConfigureAwait(false);
    }

    public async ValueTask DisposeAsync()
    {
        if (Browser is not null)
        {
            await Browser.DisposeAsync().ConfigureAwait(false);
        }

        if (server is not null)
        {
            await server.DisposeAsync().ConfigureAwait(false);
        }
    }

    /// <summary>A page of its own at an address, drawn, with the plan as the demo wrote it. Pages of earlier tests are closed.</summary>
    public async Task<(IPage Page, List<string> Faults)> Open(string question, BrowserNewContextOptions? options = null)
    {
        (IPage page, List<string> faults) = await OpenPage(question, options).ConfigureAwait(false);
        await TestBrowser.Drawn(page).ConfigureAwait(false);
        return (page, faults);
    }

    /// <summary>The same for a page without a map.</summary>
    public async Task<(IPage Page, List<string> Faults)> OpenPage(string question, BrowserNewContextOptions? options = null)
    {
        foreach (IBrowserContext earlier in Browser.Contexts.ToArray())
        {
            await earlier.CloseAsync().ConfigureAwait(false);
        }

        if (!string.Equals(TextNow, text, StringComparison.Ordinal))
        {
            await File.WriteAllTextAsync(PlanPath, text).ConfigureAwait(false);
        }

        (IPage page, List<string> faults) = await TestBrowser.Open(Browser, Address, options).ConfigureAwait(false);
        await page.GotoAsync(Address + question).ConfigureAwait(false);
        return (page, faults);
    }

    /// <summary>Starts the server anew where it was.</summary>
    public Task StartAgain() => Start(new Uri(Address).Port.ToString(CultureInfo.InvariantCulture));

    /// <summary>Waits until the plan's text is as wanted.</summary>
    public async Task TextBecomes(Func<string, bool> isWanted)
    {
        long until = Environment.TickCount64 + (long)TestBrowser.PatienceMilliseconds;
        while (!isWanted(TextNow))
        {
            Assert.True(Environment.TickCount64 < until, TextNow);
            await Task.Delay(30).ConfigureAwait(false);
        }
    }

    private async Task Start(string port) => server = await ServerRun.Start(demo.Program.Folder, demo.Program.File, "serve", Path.Combine(served, "plan.yaml"), "--port", port).ConfigureAwait(false);
}
