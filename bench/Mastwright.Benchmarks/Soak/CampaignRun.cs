using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;

namespace Mastwright.Benchmarks.Soak;

/// <summary>Runs the cases of one campaign, one after another, until its time is over or one fails.</summary>
internal sealed class CampaignRun(Campaign campaign, SoakSettings settings)
{
    /// <summary>After this long a case counts as hanging: its input is kept and the program ends.</summary>
    private const double HangSeconds = 120;

    private long startedAt;
    private SoakCase? running;
    private int startNumber;

    internal int Cases { get; private set; }

    internal int FirstStart { get; private set; }

    internal double Seconds { get; private set; }

    internal double SlowestMilliseconds { get; private set; }

    internal double MostMegabytes { get; private set; }

    internal string? Failure { get; private set; }

    internal void Run(double seconds)
    {
        FirstStart = settings.Start ?? Random.Shared.Next(1_000_000_000);
        startNumber = FirstStart;
        Console.Out.Write($"{campaign.Name,-16} from number {FirstStart,9}  ");
        using FileStream current = new(Path.Combine(settings.Scratch, "current"), FileMode.Create, FileAccess.Write, FileShare.Read);
        using Timer watch = new(_ => Watch(), null, TimeSpan.FromSeconds(5), TimeSpan.FromSeconds(5));
        long start = Stopwatch.GetTimestamp();
        do
        {
            // A crash that no handler sees leaves this line behind.
            current.Position = 0;
            current.Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"--campaign {campaign.Name} --start {startNumber}\n")));
            current.Flush();
            Failure = Try();
            Cases++;
            startNumber++;
        }
        while (Failure is null && settings.Start is null && Stopwatch.GetElapsedTime(start).TotalSeconds < seconds);
        Seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        Console.Out.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{Cases,9:N0} cases in {Seconds,5:0} s, slowest {SlowestMilliseconds,6:0} ms, most memory {MostMegabytes,4:0} MB  {(Failure is null ? "ok" : "FAILED")}"));
        if (Failure is not null)
        {
            Keep(startNumber - 1, Failure);
        }
    }

    internal JsonObject ToJson()
    {
        JsonObject written = Written();
        if (campaign.Counted is { } counted)
        {
            written.Insert(written.IndexOf("cases") + 1, counted.Name, counted.Now());
        }

        return written;
    }

    private JsonObject Written() => new()
    {
        ["name"] = campaign.Name,
        ["first_start"] = FirstStart,
        ["cases"] = Cases,
        ["seconds"] = Math.Round(Seconds),
        ["slowest_ms"] = Math.Round(SlowestMilliseconds),
        ["most_mb"] = Math.Round(MostMegabytes),
        ["failure"] = Failure is null ? null : string.Create(CultureInfo.InvariantCulture, $"start number {startNumber - 1}: {Failure.Split('\n')[0]}"),
    };

    private string? Try()
    {
        try
        {
            running = campaign.Make(new Random(startNumber));
            long bytes = GC.GetAllocatedBytesForCurrentThread();
            long began = Stopwatch.GetTimestamp();
            Volatile.Write(ref startedAt, began);
            running.Check();
            double took = Stopwatch.GetElapsedTime(began).TotalMilliseconds;
            bytes = GC.GetAllocatedBytesForCurrentThread() - bytes;
            SlowestMilliseconds = Math.Max(SlowestMilliseconds, took);
            MostMegabytes = Math.Max(MostMegabytes, bytes / 1e6);
            return took > campaign.MostSeconds * 1000 ? string.Create(CultureInfo.InvariantCulture, $"it took {took / 1000:0} s")
                : bytes > campaign.MostBytes ? string.Create(CultureInfo.InvariantCulture, $"it allocated {bytes / 1e6:0} MB")
                : null;
        }
        catch (Exception fault)
        {
            return fault is SoakFailureException ? fault.Message : fault.ToString();
        }
        finally
        {
            Volatile.Write(ref startedAt, 0);
        }
    }

    private void Watch()
    {
        long began = Volatile.Read(ref startedAt);
        if (began != 0 && Stopwatch.GetElapsedTime(began).TotalSeconds > HangSeconds)
        {
            Console.Out.WriteLine();
            Keep(startNumber, "it hangs");
            Environment.Exit(1);
        }
    }

    private void Keep(int of, string why)
    {
        string path = Path.Combine(settings.Scratch, string.Create(CultureInfo.InvariantCulture, $"{campaign.Name}-{of}-{running?.FileName ?? "none"}"));
        File.WriteAllBytes(path, running?.Input ?? []);
        Console.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{campaign.Name}, start number {of}: {why}"));
        Console.Out.WriteLine($"Its input is {path}; again: bench/soak --campaign {campaign.Name} --start {of.ToString(CultureInfo.InvariantCulture)}");
    }
}
