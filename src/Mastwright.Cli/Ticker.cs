using System.Globalization;

namespace Mastwright.Cli;

/// <summary>Tells on a terminal's error output that long work goes on, from one second on, and for how long; silent elsewhere.</summary>
internal sealed class Ticker : IDisposable
{
    private readonly long start = Environment.TickCount64;
    private readonly string what;
    private readonly Lock gate = new();
    private readonly Timer? timer;
    private bool shown;
    private bool ended;

    private Ticker(string what)
    {
        this.what = what;
        timer = Console.IsErrorRedirected ? null : new(_ => Tell(), null, 1000, 500);
    }

    internal static Ticker Start(string what) => new(what);

    public void Dispose()
    {
        timer?.Dispose();
        lock (gate)
        {
            ended = true;
            if (shown)
            {
                Console.Error.Write("\r" + new string(' ', 78) + "\r");
            }
        }
    }

    private void Tell()
    {
        lock (gate)
        {
            if (!ended)
            {
                shown = true;
                Console.Error.Write(string.Create(CultureInfo.InvariantCulture, $"\r{what}: {(Environment.TickCount64 - start) / 1000} s"));
            }
        }
    }
}
