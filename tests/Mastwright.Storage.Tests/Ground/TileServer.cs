using System.Collections.Concurrent;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace Mastwright.Storage.Tests.Ground;

/// <summary>A small web server of our own that can break the line, so that a fetch meets what it meets outside.</summary>
internal sealed class TileServer : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _stop = new();
    private readonly Task _loop;

    internal TileServer()
    {
        _listener.Start();
        _loop = Task.Run(AcceptAsync);
    }

    internal string Root => string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{((IPEndPoint)_listener.LocalEndpoint).Port}");

    /// <summary>Content by path; a path that is not there is answered with 404.</summary>
    internal ConcurrentDictionary<string, byte[]> Files { get; } = new(StringComparer.Ordinal);

    /// <summary>For how many requests of a path the line breaks, and after how many bytes.</summary>
    internal ConcurrentDictionary<string, (int Times, int AfterBytes)> Breaks { get; } = new(StringComparer.Ordinal);

    /// <summary>Status to answer with first, so many times.</summary>
    internal ConcurrentDictionary<string, (int Times, string Status)> Refusals { get; } = new(StringComparer.Ordinal);

    internal bool DoesRanges { get; set; } = true;

    internal string Tag { get; set; } = "\"one\"";

    /// <summary>The requests, as "path from-byte".</summary>
    internal ConcurrentQueue<string> Requests { get; } = new();

    internal int MostAtOnce { get; private set; }

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        _listener.Dispose();
        await _loop;
        _stop.Dispose();
    }

    private int _now;

    private async Task AcceptAsync()
    {
        List<Task> all = [];
        try
        {
            while (!_stop.IsCancellationRequested)
            {
                TcpClient client = await _listener.AcceptTcpClientAsync(_stop.Token);
                all.Add(Task.Run(() => ServeAsync(client)));
            }
        }
        catch (Exception end) when (end is OperationCanceledException or SocketException or ObjectDisposedException)
        {
        }

        await Task.WhenAll(all);
    }

    private async Task ServeAsync(TcpClient client)
    {
        using (client)
        {
            try
            {
                MostAtOnce = Math.Max(MostAtOnce, Interlocked.Increment(ref _now));
                await AnswerAsync(client.GetStream());
            }
            catch (IOException)
            {
            }
            finally
            {
                Interlocked.Decrement(ref _now);
            }
        }
    }

    private async Task AnswerAsync(NetworkStream stream)
    {
        using StreamReader reader = new(stream, Encoding.ASCII, leaveOpen: true);
        string path = (await reader.ReadLineAsync() ?? "").Split(' ') is [_, string asked, ..] ? asked : "";
        long from = 0;
        string ifRange = "";
        while (await reader.ReadLineAsync() is { Length: > 0 } header)
        {
            if (header.StartsWith("Range: bytes=", StringComparison.OrdinalIgnoreCase))
            {
                from = long.Parse(header.AsSpan(13).TrimEnd('-'), CultureInfo.InvariantCulture);
            }
            else if (header.StartsWith("If-Range: ", StringComparison.OrdinalIgnoreCase))
            {
                ifRange = header[10..];
            }
        }

        Requests.Enqueue(string.Create(CultureInfo.InvariantCulture, $"{path} {from}"));
        if (Refusals.TryGetValue(path, out (int Times, string Status) refusal) && refusal.Times > 0)
        {
            Refusals[path] = refusal with { Times = refusal.Times - 1 };
            await HeadAsync(stream, refusal.Status, 0, "");
            return;
        }

        if (!Files.TryGetValue(path, out byte[]? content))
        {
            await HeadAsync(stream, "404 Not Found", 0, "");
            return;
        }

        bool isPart = from > 0 && DoesRanges && ifRange == Tag;
        int start = isPart ? (int)from : 0;
        string range = isPart ? string.Create(CultureInfo.InvariantCulture, $"Content-Range: bytes {start}-{content.Length - 1}/{content.Length}\r\n") : "";
        await HeadAsync(stream, isPart ? "206 Partial Content" : "200 OK", content.Length - start, range + $"ETag: {Tag}\r\n");
        int end = content.Length;
        if (Breaks.TryGetValue(path, out (int Times, int AfterBytes) broken) && broken.Times > 0)
        {
            Breaks[path] = broken with { Times = broken.Times - 1 };
            end = Math.Min(end, start + broken.AfterBytes);
        }

        await stream.WriteAsync(content.AsMemory(start, end - start));
        await stream.FlushAsync();
    }

    private static async Task HeadAsync(NetworkStream stream, string status, int length, string more) =>
        await stream.WriteAsync(Encoding.ASCII.GetBytes(string.Create(
            CultureInfo.InvariantCulture, $"HTTP/1.1 {status}\r\nContent-Length: {length}\r\nConnection: close\r\n{more}\r\n")));
}
