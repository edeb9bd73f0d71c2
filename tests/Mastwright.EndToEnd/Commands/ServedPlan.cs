using System.Diagnostics;

namespace Mastwright.Tests.EndToEnd.Commands;

/// <summary>The small plan, served by the real program to this machine alone, until the tests that ask it are done.</summary>
public sealed class ServedPlan : IAsyncLifetime
{
    private readonly TemporaryFolder folder = new();
    private Process? server;

    /// <summary>Asks the server.</summary>
    public HttpClient Client { get; } = new() { Timeout = TimeSpan.FromMinutes(5) };

    /// <summary>The plan's file.</summary>
    public string PlanPath { get; private set; } = "";

    public async ValueTask InitializeAsync()
    {
        PlanPath = SmallPlan.Write(folder);
        ProcessStartInfo start = new(ProgramRun.Command[0], [.. ProgramRun.Command.Skip(1), "serve", PlanPath, "--port", "0"])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
            WorkingDirectory = folder.Path,
        };
        start.Environment["XDG_CONFIG_HOME"] = folder.File("settings");
        server = Process.Start(start)!;
        _ = server.StandardError.ReadToEndAsync();
        string line = await server.StandardOutput.ReadLineAsync().ConfigureAwait(false) ?? throw new InvalidOperationException("The server said nothing.");
        Client.BaseAddress = new(line[line.IndexOf("http", StringComparison.Ordinal)..]);
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        if (server is { HasExited: false })
        {
            server.Kill(entireProcessTree: true);
            await server.WaitForExitAsync().ConfigureAwait(false);
        }

        server?.Dispose();
        folder.Dispose();
    }
}
