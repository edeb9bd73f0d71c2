using System.Diagnostics;
using System.Text;

namespace Mastwright.Tests.EndToEnd;

/// <summary>One run of the real program: what it wrote and how it ended.</summary>
internal sealed record ProgramRun(int ExitCode, string Output, string Error)
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    /// <summary>Cache folder of all runs of one test run: the user's own is left alone.</summary>
    private static readonly TemporaryFolder Cache = NewCache();

    /// <summary>
    /// The program and its first arguments: the published one where MASTWRIGHT_PUBLISHED names it, which starts in half the time; else the one that was
    /// built beside the tests.
    /// </summary>
    public static IReadOnlyList<string> Command { get; } = Environment.GetEnvironmentVariable("MASTWRIGHT_PUBLISHED") is { Length: > 0 } published
        ? [Path.Combine(published, OperatingSystem.IsWindows() ? "mastwright.exe" : "mastwright")]
        : ["dotnet", Path.Combine(AppContext.BaseDirectory, "Mastwright.Cli.dll")];

    /// <summary>The same for a shell.</summary>
    public static string ShellCommand => string.Join(' ', Command.Select(part => $"'{part}'"));

    /// <summary>Lines of the ordinary output, without the empty one after the last.</summary>
    public IReadOnlyList<string> Lines => Output.TrimEnd('\n').Split('\n');

    /// <summary>Lines of the error output that hold something.</summary>
    public IReadOnlyList<string> ErrorLines => Error.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    /// <summary>Runs the program.</summary>
    public static ProgramRun Of(string folder, params string[] arguments) => Start(Command[0], folder, null, [.. Command.Skip(1), .. arguments]);

    /// <summary>The same with changes to its environment.</summary>
    public static ProgramRun Of(string folder, IReadOnlyDictionary<string, string> environment, params string[] arguments) =>
        Start(Command[0], folder, environment, [.. Command.Skip(1), .. arguments]);

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
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
        };
        start.Environment["XDG_CACHE_HOME"] = Cache.Path;
        foreach ((string name, string value) in environment ?? new Dictionary<string, string>(StringComparer.Ordinal))
        {
            start.Environment[name] = value;
        }

        using Process process = Process.Start(start) ?? throw new InvalidOperationException($"'{program}' did not start.");
        process.StandardInput.Close();
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> error = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(Patience))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"'{program} {string.Join(' ', arguments)}' did not end within five minutes.");
        }

#pragma warning disable xUnit1031 // The process has ended: both streams are at their end.
        return new(process.ExitCode, output.GetAwaiter().GetResult(), error.GetAwaiter().GetResult());
#pragma warning restore xUnit1031
    }

    /// <summary>Fails, with all that was written, when the exit code is another.</summary>
    public ProgramRun EndsWith(int code)
    {
        Assert.True(code == ExitCode, $"exit code {ExitCode} instead of {code}\n{Error}\n{Output}");
        return this;
    }

    /// <summary>
    /// Fails unless this is how bad input is answered: exit code 2, nothing on the ordinary output, an error that holds the parts given,
    /// and nothing of the program's own inside.
    /// </summary>
    public void IsRefusedWith(params string[] parts)
    {
        EndsWith(2);
        Assert.Equal("", Output);
        Assert.NotEmpty(ErrorLines);
        Assert.All(parts, part => Assert.Contains(part, Error, StringComparison.Ordinal));
        Assert.DoesNotContain("   at ", Error, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", Error, StringComparison.Ordinal);
        Assert.DoesNotContain("System.", Error, StringComparison.Ordinal);
    }

    private static TemporaryFolder NewCache()
    {
        TemporaryFolder folder = new();
        AppDomain.CurrentDomain.ProcessExit += (_, _) => folder.Dispose();
        return folder;
    }
}
