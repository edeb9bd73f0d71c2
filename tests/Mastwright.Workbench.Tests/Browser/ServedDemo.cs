using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Mastwright.Tests.EndToEnd;
using Mastwright.Tests.EndToEnd.Published;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Mastwright.Tests.Workbench.Browser.ServedDemo))]

namespace Mastwright.Tests.Workbench.Browser;

/// <summary>
/// The published program, moved elsewhere, serving the demo without any network, and a browser in the same place. Both run in a network namespace
/// of their own, which holds nothing but its loopback; where making one is not permitted, only the browser is kept from foreign addresses.
/// </summary>
public sealed partial class ServedDemo : IAsyncLifetime
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    private readonly List<string> said = [];
    private MovedProgram? program;
    private Process? server;
    private IPlaywright? playwright;

    /// <summary>Where the pages are: "http://localhost:43123/".</summary>
    public string Address { get; private set; } = "";

    /// <summary>The demo's folder.</summary>
    public string Folder { get; private set; } = "";

    /// <summary>The browser; every test opens a context of its own.</summary>
    public IBrowser Browser { get; private set; } = null!;

    /// <summary>Memory that the server holds now, in MiB, as the kernel counts it.</summary>
    public double ServerMebibytes
    {
        get
        {
            Match held = Held().Match(File.ReadAllText($"/proc/{server!.Id}/status"));
            return double.Parse(held.Groups["kib"].Value, CultureInfo.InvariantCulture) / 1024;
        }
    }

    public async ValueTask InitializeAsync()
    {
        if (Environment.GetEnvironmentVariable("MASTWRIGHT_PUBLISHED") is not { Length: > 0 })
        {
            // ./test quick leaves these tests out; the fixture of an assembly is made all the same.
            return;
        }

        program = new();
        Folder = Path.Combine(program.Folder, "skerrin-demo");
        ProgramRun.Start(program.File, program.Folder, null, "demo").EndsWith(0);
        bool isAlone = ProgramRun.Start("unshare", program.Folder, null, "-n", "true").ExitCode == 0;
        string[] serve = [program.File, "serve", Path.Combine("skerrin-demo", "plan.yaml"), "--port", "0"];
        server = isAlone
            ? Start("unshare", ["-n", "sh", "-c", "ip link set lo up && exec \"$@\"", "sh", .. serve])
            : Start(serve[0], serve[1..]);
        Address = await Opened().ConfigureAwait(false);

        playwright = await Playwright.CreateAsync().ConfigureAwait(false);
        Browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = isAlone ? Inside(server.Id) : "/usr/bin/chromium",
            Args =
            [
                "--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
                "--use-angle=swiftshader", "--enable-unsafe-swiftshader", "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE localhost",
            ],
        }).ConfigureAwait(false);
    }

    public async ValueTask DisposeAsync()
    {
        if (Browser is not null)
        {
            await Browser.DisposeAsync().ConfigureAwait(false);
        }

        playwright?.Dispose();
        if (server is { HasExited: false })
        {
            server.Kill(entireProcessTree: true);
            await server.WaitForExitAsync().ConfigureAwait(false);
        }

        server?.Dispose();
        program?.Dispose();
    }

    /// <summary>A page of its own, and the list of everything that went wrong on it: errors, refusals by the content security policy, foreign requests.</summary>
    public async Task<(IPage Page, List<string> Faults)> Open(int width = 1440, int height = 900, bool isDark = false)
    {
        IBrowserContext context = await Browser.NewContextAsync(new()
        {
            ViewportSize = new() { Width = width, Height = height },
            ColorScheme = isDark ? ColorScheme.Dark : ColorScheme.Light,
            ReducedMotion = ReducedMotion.Reduce,
        }).ConfigureAwait(false);
        IPage page = await context.NewPageAsync().ConfigureAwait(false);
        List<string> faults = [];
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning")
            {
                faults.Add($"{message.Type}: {message.Text}");
            }
        };
        page.PageError += (_, fault) => faults.Add($"page error: {fault}");
        page.Request += (_, request) =>
        {
            if (!request.Url.StartsWith(Address, StringComparison.Ordinal) && !request.Url.StartsWith("data:", StringComparison.Ordinal))
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

    /// <summary>Waits until the map is drawn and its links are there.</summary>
    public static async Task Drawn(IPage page)
    {
        ArgumentNullException.ThrowIfNull(page);
        await page.WaitForSelectorAsync(".ground[data-drawn][data-links]", new() { Timeout = (float)Patience.TotalMilliseconds }).ConfigureAwait(false);
    }

    /// <summary>Keeps a picture of the page among the test results.</summary>
    public static async Task Keep(IPage page, string name)
    {
        ArgumentNullException.ThrowIfNull(page);
        string folder = Path.Combine(TestPlaces.Repository, "artifacts", "screenshots");
        Directory.CreateDirectory(folder);
        await page.ScreenshotAsync(new() { Path = Path.Combine(folder, name + ".png") }).ConfigureAwait(false);
    }

    private Process Start(string file, string[] arguments)
    {
        ProcessStartInfo start = new(file, arguments) { WorkingDirectory = program!.Folder, RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        // The keys of cookies go into the test's folder, not the tester's own.
        start.Environment["XDG_CONFIG_HOME"] = Path.Combine(program.Folder, "settings");
        Process process = Process.Start(start) ?? throw new InvalidOperationException($"'{file}' did not start.");
        process.OutputDataReceived += (_, line) => Hear(line.Data);
        process.ErrorDataReceived += (_, line) => Hear(line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        return process;
    }

    private void Hear(string? line)
    {
        lock (said)
        {
            said.Add(line ?? "");
        }
    }

    private async Task<string> Opened()
    {
        long until = Environment.TickCount64 + (long)Patience.TotalMilliseconds;
        while (Environment.TickCount64 < until && !server!.HasExited)
        {
            lock (said)
            {
                if (said.Select(line => Place().Match(line)).FirstOrDefault(match => match.Success) is { } place)
                {
                    return place.Groups["address"].Value;
                }
            }

            await Task.Delay(50).ConfigureAwait(false);
        }

        throw new InvalidOperationException("The server did not open:\n" + string.Join('\n', said));
    }

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

    [GeneratedRegex(@"is open at (?<address>\S+)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Place();

    [GeneratedRegex(@"VmRSS:\s+(?<kib>\d+) kB", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Held();
}
