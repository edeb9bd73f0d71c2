using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Mastwright.Tests.Workbench.Browser;

/// <summary>A server that was started: where it is open, and how it ends.</summary>
internal sealed partial class ServerRun : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    private readonly Process process;
    private readonly List<string> said = [];

    private ServerRun(Process process) => this.process = process;

    /// <summary>Its number among the system's processes.</summary>
    internal int Id => process.Id;

    /// <summary>Where the pages are: "http://localhost:43123/".</summary>
    internal string Address { get; private set; } = "";

    /// <summary>Everything it said so far.</summary>
    internal string Said
    {
        get
        {
            lock (said)
            {
                return string.Join('\n', said);
            }
        }
    }

    /// <summary>Memory that it holds now, in MiB, as the kernel counts it.</summary>
    internal double Mebibytes => double.Parse(Held().Match(File.ReadAllText($"/proc/{process.Id}/status")).Groups["kib"].Value, CultureInfo.InvariantCulture) / 1024;

    public async ValueTask DisposeAsync()
    {
        await Kill().ConfigureAwait(false);
        process.Dispose();
    }

    /// <summary>Starts it and waits until it is open.</summary>
    /// <param name="folder">Where it is started; what it keeps for itself goes below it, not among the tester's own settings.</param>
    /// <param name="file">The program.</param>
    /// <param name="arguments">Its arguments.</param>
    internal static async Task<ServerRun> Start(string folder, string file, params string[] arguments)
    {
        ProcessStartInfo start = new(file, arguments) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        start.Environment["XDG_CONFIG_HOME"] = Path.Combine(folder, "settings");
        ServerRun run = new(Process.Start(start) ?? throw new InvalidOperationException($"'{file}' did not start."));
        run.process.OutputDataReceived += (_, line) => run.Hear(line.Data);
        run.process.ErrorDataReceived += (_, line) => run.Hear(line.Data);
        run.process.BeginOutputReadLine();
        run.process.BeginErrorReadLine();
        await run.Open().ConfigureAwait(false);
        return run;
    }

    /// <summary>Ends it at once, as a lost machine would.</summary>
    internal async Task Kill()
    {
        if (!process.HasExited)
        {
            process.Kill(entireProcessTree: true);
            await process.WaitForExitAsync().ConfigureAwait(false);
        }
    }

    private void Hear(string? line)
    {
        lock (said)
        {
            said.Add(line ?? "");
        }
    }

    private async Task Open()
    {
        long until = Environment.TickCount64 + (long)Patience.TotalMilliseconds;
        while (Environment.TickCount64 < until && !process.HasExited)
        {
            if (Place().Match(Said) is { Success: true } place)
            {
                Address = place.Groups["address"].Value;
                return;
            }

            await Task.Delay(50).ConfigureAwait(false);
        }

        throw new InvalidOperationException("The server did not open:\n" + Said);
    }

    [GeneratedRegex(@"is open at (?<address>\S+)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Place();

    [GeneratedRegex(@"VmRSS:\s+(?<kib>\d+) kB", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Held();
}
