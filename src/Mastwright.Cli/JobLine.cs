using System.Globalization;
using Mastwright.Jobs;

namespace Mastwright.Cli;

/// <summary>Tells on a terminal's error output how far a job is, from one second on; silent elsewhere.</summary>
internal sealed class JobLine : IProgress<JobProgress>, IProgress<RelayProgress>, IDisposable
{
    private const int Width = 78;

    private readonly bool isTerminal = !Console.IsErrorRedirected;
    private readonly Lock gate = new();
    private readonly long start = Environment.TickCount64;
    private long told;
    private bool shown;

    public void Report(JobProgress value)
    {
        if (value.Elapsed >= TimeSpan.FromSeconds(1))
        {
            Show(() => Text(value));
        }
    }

    public void Report(RelayProgress value)
    {
        if (Environment.TickCount64 - start >= 1000)
        {
            Show(() => value.Done > 0 ? string.Create(CultureInfo.InvariantCulture, $"{value.Step}: {value.Done}") : value.Step);
        }
    }

    /// <summary>A line between, such as what a stop means: the progress makes room for it.</summary>
    internal void Say(string line)
    {
        lock (gate)
        {
            Clear();
            Console.Error.WriteLine(line);
        }
    }

    public void Dispose()
    {
        lock (gate)
        {
            Clear();
        }
    }

    internal static string Text(JobProgress value)
    {
        string found = value.Found > 0 ? string.Create(CultureInfo.InvariantCulture, $", {value.Found} of them from before") : "";
        string left = value.Remaining is { } remaining && value.Done < value.Total ? string.Create(CultureInfo.InvariantCulture, $", some {Math.Ceiling(remaining.TotalSeconds):0} s to go") : "";
        return string.Create(CultureInfo.InvariantCulture, $"{value.Share:0 %}: {value.Done} of {value.Total} pieces{found}; {value.Elapsed.TotalSeconds:0} s{left}");
    }

    private void Show(Func<string> text)
    {
        lock (gate)
        {
            long now = Environment.TickCount64;
            if (!isTerminal || now - told < 200)
            {
                return;
            }

            told = now;
            shown = true;
            Console.Error.Write("\r" + text().PadRight(Width));
        }
    }

    private void Clear()
    {
        if (shown)
        {
            Console.Error.Write("\r" + new string(' ', Width) + "\r");
            shown = false;
        }
    }
}
