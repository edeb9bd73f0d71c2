using System.Diagnostics;
using System.Net;
using System.Net.Http.Headers;
using System.Text.RegularExpressions;
using Mastwright.Tests.EndToEnd;
using Mastwright.Tests.EndToEnd.Published;

namespace Mastwright.Tests.Workbench.Access;

/// <summary>What the served pages refuse, asked of the published program by its own wire.</summary>
[Trait("needs", "system")]
public sealed partial class RefusalTests(MovedProgram program) : IClassFixture<MovedProgram>
{
    private const string Plan = "mastwright: 1\nname: Refused\nmodem: {frequency: 868 MHz, bandwidth: 125 kHz, spreading-factor: 10, payload: 40 B}\n";

    [Fact]
    public async Task On_loopback_only_its_own_pages_may_ask()
    {
        using Served served = await Serve("--port", "0");
        using HttpClient client = new() { BaseAddress = served.Address };
        Assert.Equal(HttpStatusCode.OK, await Status(client, "/api/v1/plan"));
        Assert.Equal(HttpStatusCode.MisdirectedRequest, await Status(client, "/", headers => headers.Host = $"evil.example:{served.Address.Port}"));
        Assert.Equal(HttpStatusCode.MisdirectedRequest, await Status(client, "/", headers => headers.Host = "localhost:1"));
        Assert.Equal(HttpStatusCode.Forbidden, await Status(client, "/api/v1/plan", headers => headers.Add("Origin", "http://evil.example")));
        Assert.Equal(HttpStatusCode.Forbidden, await Status(client, "/api/v1/plan", headers => headers.Add("Sec-Fetch-Site", "cross-site")));
        foreach (string? origin in (string?[])[null, "http://evil.example", $"http://localhost:1"])
        {
            Assert.Equal(HttpStatusCode.Forbidden, await Status(client, "/_blazor", headers =>
            {
                headers.Connection.Add("Upgrade");
                headers.Upgrade.Add(new ProductHeaderValue("websocket"));
                headers.Add("Sec-WebSocket-Version", "13");
                headers.Add("Sec-WebSocket-Key", "AAAAAAAAAAAAAAAAAAAAAA==");
                if (origin is not null)
                {
                    headers.Add("Origin", origin);
                }
            }));
        }
    }

    [Theory]
    [InlineData("/workbench/..%2f..%2fMastwright.Cli.dll", 404)]
    [InlineData("/%2e%2e/%2e%2e/etc/passwd", 404)]
    [InlineData("/fonts/..%2fregular.ttf", 404)]
    [InlineData("/api/v1/schemas/..%2fcheck-1.json", 404)]
    [InlineData("/api/v1/check?fit-out=%3Cscript%3E", 400)]
    [InlineData("/api/v1/path?from=a", 400)]
    [InlineData("/api/v1/path.svg?from=a&to=b&width=wide", 400)]
    [InlineData("/api/v1/profile?from=here&to=there", 400)]
    [InlineData("/api/v1/reach?station=nobody", 400)]
    [InlineData("/api/v1/tiles/heights/23/0/0.png", 400)]
    [InlineData("/api/v1/tiles/heights/3/8/0.png", 400)]
    [InlineData("/api/v1/tiles/land/red/3/0/0.jpg", 400)]
    [InlineData("/api/v1/tiles/clouds/light/3/0/0.jpg", 404)]
    public async Task A_wrong_question_is_answered_in_words(string question, int status)
    {
        using Served served = await Serve("--port", "0");
        using HttpClient client = new() { BaseAddress = served.Address };
        using HttpResponseMessage answer = await client.GetAsync(new Uri(question, UriKind.Relative), TestContext.Current.CancellationToken);
        string text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.True(status == (int)answer.StatusCode, $"{(int)answer.StatusCode}: {text}");
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        Assert.DoesNotContain("   at ", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", text, StringComparison.Ordinal);
        Assert.DoesNotContain("--", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task From_elsewhere_nothing_is_open_without_the_key()
    {
        using Served served = await Serve("--port", "0", "--listen", "0.0.0.0", "--host-name", "localhost");
#pragma warning disable MA0039, CA5399, CA5400 // The certificate is made here: the test trusts it as a reader does who has compared its fingerprint.
        using HttpClientHandler handler = new() { ServerCertificateCustomValidationCallback = HttpClientHandler.DangerousAcceptAnyServerCertificateValidator, AllowAutoRedirect = false };
        using HttpClient client = new(handler) { BaseAddress = served.Address };
#pragma warning restore MA0039, CA5399, CA5400
        Assert.Equal("https", served.Address.Scheme);
        Assert.Equal(HttpStatusCode.Unauthorized, await Status(client, "/api/v1/plan"));
        Assert.Equal(HttpStatusCode.Unauthorized, await Status(client, "/api/v1/tiles/heights/3/0/0.png"));
        Assert.Equal(HttpStatusCode.Redirect, await Status(client, "/?site=a"));
        Assert.Equal(HttpStatusCode.Unauthorized, await Enter(client, "not-the-key", "/"));
        Assert.Equal(HttpStatusCode.BadRequest, await Post(client, new() { ["key"] = served.Key }, "/"));
        Assert.Equal(HttpStatusCode.Redirect, await Enter(client, served.Key, "//evil.example"));
        Assert.Equal(HttpStatusCode.OK, await Status(client, "/api/v1/plan"));
        Assert.Equal(HttpStatusCode.OK, await Status(client, "/"));
    }

    [Fact]
    public void A_key_in_clear_is_refused_unless_insisted_on()
    {
        File.WriteAllText(Path.Combine(program.Folder, "plan.yaml"), Plan);
        ProgramRun.Start(program.File, program.Folder, null, "serve", "plan.yaml", "--listen", "0.0.0.0", "--no-tls").IsRefusedWith("--no-tls", "in clear", "--insist-on-key-in-clear");
    }

    private static async Task<HttpStatusCode> Enter(HttpClient client, string key, string to)
    {
        string page = await client.GetStringAsync(new Uri("/enter", UriKind.Relative), TestContext.Current.CancellationToken);
        Match token = HiddenField().Match(page);
        return await Post(client, new() { [token.Groups["name"].Value] = WebUtility.HtmlDecode(token.Groups["value"].Value), ["key"] = key }, to);
    }

    private static async Task<HttpStatusCode> Post(HttpClient client, Dictionary<string, string> fields, string to)
    {
        using FormUrlEncodedContent form = new(fields);
        using HttpResponseMessage answer = await client.PostAsync(new Uri("/enter?to=" + Uri.EscapeDataString(to), UriKind.Relative), form, TestContext.Current.CancellationToken);
        Assert.Equal(answer.StatusCode == HttpStatusCode.Redirect ? "/" : null, answer.Headers.Location?.OriginalString);
        return answer.StatusCode;
    }

    private static async Task<HttpStatusCode> Status(HttpClient client, string path, Action<HttpRequestHeaders>? change = null)
    {
        using HttpRequestMessage request = new(HttpMethod.Get, new Uri(path, UriKind.Relative));
        change?.Invoke(request.Headers);
        using HttpResponseMessage answer = await client.SendAsync(request, TestContext.Current.CancellationToken);
        Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
        return answer.StatusCode;
    }

    private async Task<Served> Serve(params string[] options)
    {
        await File.WriteAllTextAsync(Path.Combine(program.Folder, "plan.yaml"), Plan, TestContext.Current.CancellationToken);
        ProcessStartInfo start = new(program.File, ["serve", "plan.yaml", .. options]) { WorkingDirectory = program.Folder, RedirectStandardOutput = true, UseShellExecute = false };
        start.Environment["XDG_CONFIG_HOME"] = Path.Combine(program.Folder, Guid.NewGuid().ToString("N"));
        Process process = Process.Start(start)!;
        string key = "";
        while (await process.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken) is { } line)
        {
            key = line.StartsWith("Access key", StringComparison.Ordinal) ? line[(line.LastIndexOf(' ') + 1)..] : key;
            if (line.Contains(" is open at ", StringComparison.Ordinal))
            {
                return new(process, new(line[(line.LastIndexOf(' ') + 1)..]), key);
            }
        }

        process.Dispose();
        throw new InvalidOperationException("The server did not open.");
    }

    [GeneratedRegex("type=\"hidden\" name=\"(?<name>[^\"]+)\" value=\"(?<value>[^\"]+)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex HiddenField();

    private sealed record Served(Process Process, Uri Address, string Key) : IDisposable
    {
        public void Dispose()
        {
            Process.Kill(entireProcessTree: true);
            Process.WaitForExit();
            Process.Dispose();
        }
    }
}
