using System.Globalization;
using Mastwright.Tests.EndToEnd;
using Mastwright.Tests.EndToEnd.Published;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Mastwright.Tests.Workbench.Browser.ServedDemo))]

namespace Mastwright.Tests.Workbench.Browser;

/// <summary>
/// The published program, moved elsewhere, serving the demo without any network, and a browser in the same place. Both run in a network namespace
/// of their own, which holds nothing but its loopback; where making one is not permitted, only the browser is kept from foreign addresses.
/// </summary>
public sealed class ServedDemo : IAsyncLifetime
{
    private MovedProgram? program;
    private ServerRun? server;
    private IPlaywright? playwright;

    /// <summary>Where the pages are: "http://localhost:43123/".</summary>
    public string Address => server!.Address;

    /// <summary>The browser; every test opens a context of its own.</summary>
    public IBrowser Browser { get; private set; } = null!;

    /// <summary>Memory that the server holds now, in MiB.</summary>
    public double ServerMebibytes => server!.Mebibytes;

    /// <summary>The driver of browsers.</summary>
    internal IPlaywright Driver => playwright!;

    /// <summary>The published program.</summary>
    internal MovedProgram Program => program!;

    public async ValueTask InitializeAsync()
    {
        if (Environment.GetEnvironmentVariable("MASTWRIGHT_PUBLISHED") is not { Length: > 0 })
        {
            // ./test quick leaves these tests out; the fixture of an assembly is made all the same.
            return;
        }

        program = new();
        ProgramRun.Start(program.File, program.Folder, null, "demo").EndsWith(0);
        bool isAlone = ProgramRun.Start("unshare", program.Folder, null, "-n", "true").ExitCode == 0;
        string[] serve = [program.File, "serve", Path.Combine("skerrin-demo", "plan.yaml"), "--port", "0"];
        server = isAlone
            ? await ServerRun.Start(program.Folder, "unshare", ["-n", "sh", "-c", "ip link set lo up && exec \"$@\"", "sh", .. serve]).ConfigureAwait(false)
            : await ServerRun.Start(program.Folder, serve[0], serve[1..]).ConfigureAwait(false);
        playwright = await Playwright.CreateAsync().ConfigureAwait(false);
        Browser = isAlone ? await TestBrowser.Launch(playwright, Inside(server.Id)).ConfigureAwait(false) : await TestBrowser.Launch(playwright).ConfigureAwait(false);
    }

    public async ValueTask DisposeAsync()
    {
        if (Browser is not null)
        {
            await Browser.DisposeAsync().ConfigureAwait(false);
        }

        playwright?.Dispose();
        if (server is not null)
        {
            await server.DisposeAsync().ConfigureAwait(false);
        }

        program?.Dispose();
    }

    /// <summary>A page of its own, and the list of everything that went wrong on it.</summary>
    public Task<(IPage Page, List<string> Faults)> Open(int width = 1440, int height = 900, bool isDark = false) =>
        TestBrowser.Open(Browser, Address, TestBrowser.Window(width, height, isDark));

    /// <summary>A starter that runs the browser in the namespace of the server.</summary>
    private string Inside(int process)
    {
        string path = Path.Combine(program!.Folder, "browser");
        File.WriteAllText(path, string.Create(CultureInfo.InvariantCulture, $"#!/bin/sh\nexec nsenter --net=/proc/{process}/ns/net -- chromium \"$@\"\n"));
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }

        return path;
    }
}
