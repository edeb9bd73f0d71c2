namespace Mastwright.Cli;

/// <summary>Tells on a terminal's error output how far long work is, from one second on; silent elsewhere.</summary>
internal sealed class Progress : IProgress<int>, IDisposable
{
    private readonly string what;
    private readonly long start = Environment.TickCount64;
    private readonly bool isTerminal = !Console.IsErrorRedirected;
    private readonly Lock gate = new();
    private long told;
    private bool shown;

    private Progress(string what) => this.what = what;

    internal static Progress Start(string what) => new(what);

    public void Report(int value)
    {
        if (!isTerminal)
        {
            return;
        }

        lock (gate)
        {
            long now = Environment.TickCount64;
            if (now - start < 1000 || now - told < 200)
            {
                return;
            }

            told = now;
            shown = true;
            Console.Error.Write($"\r{value} {what} done");
        }
    }

    internal void Stop()
    {
        lock (gate)
        {
            if (shown)
            {
                Console.Error.Write("\r" + new string(' ', what.Length + 20) + "\r");
                shown = false;
            }
        }
    }

    public void Dispose() => Stop();
}
