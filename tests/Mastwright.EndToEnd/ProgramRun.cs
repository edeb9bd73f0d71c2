using System.Diagnostics;

namespace Mastwright.Tests.EndToEnd;

/// <summary>One run of the real program: what it wrote and how it ended.</summary>
internal sealed record ProgramRun(int ExitCode, string Output, string Error)
{
    /// <summary>Runs the program as it was built beside the tests.</summary>
    public static ProgramRun Of(string folder, params string[] arguments) =>
        Start("dotnet", folder, null, [Path.Combine(AppContext.BaseDirectory, "Mastwright.Cli.dll"), .. arguments]);

    /// <summary>Runs any program, with changes to its environment, and waits for its end (at most five minutes).</summary>
    public static ProgramRun Start(string program, string folder, IReadOnlyDictionary<string, string>? environment, params string[] arguments)
    {
        ProcessStartInfo start = new(program, arguments)
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
            UseShellExecute = false,
            StandardOutputEncoding = System.Text.Encoding.UTF8,
            StandardErrorEncoding = System.Text.Encoding.UTF8,
        };
        foreach ((string name, string value) in environment ?? new Dictionary<string, string>(StringComparer.Ordinal))
        {
            start.Environment[name] = value;
        }

        using Process process = Process.Start(start) ?? throw new InvalidOperationException($"'{program}' did not start.");
        process.StandardInput.Close();
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> error = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(TimeSpan.FromMinutes(5)))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"'{program} {string.Join(' ', arguments)}' did not end within five minutes.");
        }

#pragma warning disable xUnit1031 // The process has ended: both streams are at their end.
        return new(process.ExitCode, output.GetAwaiter().GetResult(), error.GetAwaiter().GetResult());
#pragma warning restore xUnit1031
    }
}
