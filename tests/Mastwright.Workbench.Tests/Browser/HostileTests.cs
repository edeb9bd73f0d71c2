using System.Globalization;
using System.Net.Sockets;
using System.Text;
using Microsoft.Playwright;

namespace Mastwright.Tests.Workbench.Browser;

/// <summary>A steady stream of what nobody with good intent asks, by the bare wire, while somebody works.</summary>
[Trait("needs", "system")]
[Collection(MovedMap.Name)]
public sealed class HostileTests(WrittenDemo demo)
{
    private const int Rounds = 6;
    private const int SilentConnections = 20;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private int Port => new Uri(demo.Address).Port;

    private string Host => string.Create(CultureInfo.InvariantCulture, $"Host: localhost:{Port}\r\n");

    [Fact]
    public async Task They_are_refused_in_words_while_another_browser_goes_on_working()
    {
        (IPage page, List<string> faults) = await demo.Open("?site=ferry-house&to=gannet-stack");
        List<TcpClient> silent = [];
        try
        {
            // Some only open a line and say nothing, or never come to an end.
            for (int i = 0; i < SilentConnections; i++)
            {
                TcpClient client = new();
                silent.Add(client);
                await client.ConnectAsync("127.0.0.1", Port, Stop);
                if (i % 2 == 0)
                {
                    await client.GetStream().WriteAsync("POST /api/v1/drag HTTP/1.1\r\n"u8.ToArray(), Stop);
                }
            }

            Task attack = Task.Run(Attack, Stop);
            LocatorBoundingBoxResult box = (await page.Locator("button.mark[data-key=ferry-house] svg").BoundingBoxAsync())!;
            (float x, float y) = (box.X + (box.Width / 2), box.Y + (box.Height / 2));
            await page.Mouse.MoveAsync(x, y);
            await page.Mouse.DownAsync();
            int moves = 0;
            while (!attack.IsCompleted || moves < 3)
            {
                int steps = await page.EvaluateAsync<int>("() => Number(document.querySelector('.ground').dataset.steps ?? 0)");
                moves++;
                await page.Mouse.MoveAsync(x + 10 + (moves % 50), y + (moves % 30));
                await page.WaitForFunctionAsync("steps => Number(document.querySelector('.ground').dataset.steps ?? 0) > steps", steps);
            }

            await page.Mouse.UpAsync();
            await TestBrowser.AddressHas(page, "trial=");
            await attack;
        }
        finally
        {
            silent.ForEach(client => client.Dispose());
        }

        Assert.Equal(demo.Text, demo.TextNow);
        Assert.Empty(faults);

        // A page that is closed while its address changes is a fault to the framework: of an earlier test, with nobody left to see it.
        string[] unhandled = [.. demo.Server.Said.Split('\n').Where(line => line.Contains("Unhandled exception", StringComparison.Ordinal) && !line.Contains("RemoteNavigationManager", StringComparison.Ordinal))];
        Assert.Empty(unhandled);
    }

    private async Task Attack()
    {
        string own = string.Create(CultureInfo.InvariantCulture, $"http://localhost:{Port}");
        const string script = "<script>alert(1)</script>";
        (string Request, int Least, int Most)[] requests =
        [
            (Get("/../../../../etc/passwd"), 400, 404),
            (Get("/workbench/../../../../etc/passwd"), 400, 404),
            (Get("/workbench/..%2f..%2f..%2f..%2fetc%2fpasswd"), 400, 404),
            (Get("/%2e%2e/%2e%2e/plan.yaml"), 400, 404),
            (Get($"/{Path.GetFileName(Path.GetDirectoryName(demo.PlanPath))}/plan.yaml"), 404, 404),
            (Get("/api/v1/schemas/..%2f..%2fplan.yaml"), 404, 404),
            (Get("/api/v1/tiles/heights/..%2f../0/0.png"), 400, 404),
            (Get("/api/v1/path?from=" + Uri.EscapeDataString(script) + "&to=%00"), 400, 400),
            (Get("/api/v1/reach?station=ferry-house&radius=9e99%20km"), 400, 400),
            (Get("/", "Host: evil.example\r\n"), 421, 421),
            (Get("/api/v1/plan", Host + "Origin: http://evil.example\r\n"), 403, 403),
            (Get("/api/v1/plan", Host + "Sec-Fetch-Site: cross-site\r\n"), 403, 403),
            (Get("/_blazor", Host + "Origin: http://evil.example\r\nConnection: Upgrade\r\nUpgrade: websocket\r\nSec-WebSocket-Version: 13\r\nSec-WebSocket-Key: AAAAAAAAAAAAAAAAAAAAAA==\r\n"), 403, 403),
            (Get("/", Host + "X-Long: " + new string('a', 100_000) + "\r\n"), 431, 431),
            (Post("/api/v1/plan/check", "{}", length: 2_000_000_000), 413, 413),
            (Post("/api/v1/plan/check", "{\"text\":\"" + new string('x', 9_000_000) + "\"}"), 413, 413),
            (Post("/api/v1/drag", new string('[', 20_000)), 400, 400),
            (Post("/api/v1/drag", "{\"station\":\"" + script + "\"}"), 400, 400),
            (Post("/api/v1/drag", "{\"station\":\"ferry-house\",\"reach\":{\"radius-metres\":1e9,\"cell-metres\":1e-9}}"), 200, 400),
            (Post("/api/v1/plan/save", "{\"text\":\"\",\"based-on\":\"\",\"with-problems\":true}", $"Origin: {own}\r\n"), 403, 403),
            (Post("/api/v1/plan/save", "{\"text\":\"\",\"based-on\":\"\",\"with-problems\":true}", $"Origin: {own}\r\nCookie: a=b\r\nRequestVerificationToken: {new string('A', 200)}\r\n"), 403, 403),
            (Post("/api/v1/plan/draft", "{\"id\":\"../../../plan\",\"based-on\":\"\",\"text\":\"x\"}"), 400, 400),
            ("TRACE / HTTP/1.1\r\n" + Host + "Connection: close\r\n\r\n", 400, 405),
            ("\u0016\u0003\u0001\u0002\u0000 nonsense\r\n\r\n", 400, 400),
        ];
        for (int round = 0; round < Rounds; round++)
        {
            foreach ((string request, int least, int most) in requests)
            {
                string answer = await Ask(request);
                string asked = request[..Math.Min(120, request.Length)];
                Assert.True(answer.StartsWith("HTTP/1.1 ", StringComparison.Ordinal), $"{asked}\n{answer}");
                Assert.True(int.Parse(answer.AsSpan(9, 3), CultureInfo.InvariantCulture) is var status && status >= least && status <= most, $"{asked}\n{answer}");
                Assert.DoesNotContain("   at ", answer, StringComparison.Ordinal);
                Assert.DoesNotContain("Exception", answer, StringComparison.Ordinal);
                Assert.DoesNotContain("root:", answer, StringComparison.Ordinal);
                // What is told back is told as data, never as a page.
                Assert.True(!answer.Contains(script, StringComparison.Ordinal) || (answer.Contains("Content-Type: application/problem+json", StringComparison.Ordinal) && answer.Contains("X-Content-Type-Options: nosniff", StringComparison.Ordinal)), answer);
            }
        }
    }

    private string Get(string path, string? headers = null) => $"GET {path} HTTP/1.1\r\n{headers ?? Host}Connection: close\r\n\r\n";

    private string Post(string path, string body, string headers = "", int? length = null) => string.Create(
        CultureInfo.InvariantCulture, $"POST {path} HTTP/1.1\r\n{Host}{headers}Content-Type: application/json\r\nContent-Length: {length ?? body.Length}\r\nConnection: close\r\n\r\n{body}");

    /// <summary>What comes back; empty where the line is closed without a word.</summary>
    private async Task<string> Ask(string request)
    {
        using TcpClient client = new();
        await client.ConnectAsync("127.0.0.1", Port, Stop);
        await using NetworkStream stream = client.GetStream();
        try
        {
            await stream.WriteAsync(Encoding.Latin1.GetBytes(request), Stop);
        }
        catch (IOException)
        {
            // Refused before all of it was sent: the answer is there all the same.
        }

        using MemoryStream answer = new();
        try
        {
            await stream.CopyToAsync(answer, Stop);
        }
        catch (IOException)
        {
            // It closed the line with part of the question unread.
        }

        return Encoding.Latin1.GetString(answer.ToArray());
    }
}
