using System.Net;
using Mastwright.Workbench.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Net.Http.Headers;

namespace Mastwright.Workbench.Access;

/// <summary>
/// Who may speak to the server at all: requests that call it by one of its own names, and of those that a page sends, only its own pages'.
/// Checked on loopback too: there it keeps out a foreign page that has its own name lead to this machine, and scripts of other pages.
/// </summary>
internal sealed class Door(RequestDelegate next, WorkbenchOptions options)
{
    private readonly bool isAny = options.Address.Equals(IPAddress.Any) || options.Address.Equals(IPAddress.IPv6Any);
    private readonly HashSet<string> names = new(
        options.IsLoopback ? [.. Own, Named(options.Address), .. options.HostNames] : [.. Own, Named(options.Address), .. options.HostNames, Dns.GetHostName()],
        StringComparer.OrdinalIgnoreCase);

    /// <summary>What a browser on this machine calls it by.</summary>
    private static string[] Own => ["localhost", "127.0.0.1", "[::1]"];

    /// <summary>Lets a request through, or answers it with 421 or 403.</summary>
    public Task InvokeAsync(HttpContext context)
    {
        HttpRequest request = context.Request;
        if (!IsOwnName(request.Host.Host, context) || !IsOwnPort(request.Host.Port, context))
        {
            return Refuse(context, StatusCodes.Status421MisdirectedRequest, "This server does not go by that name.");
        }

        string origin = request.Headers[HeaderNames.Origin].ToString();
        bool isOwnOrigin = origin.Length == 0 || string.Equals(origin, $"{request.Scheme}://{request.Host}", StringComparison.OrdinalIgnoreCase);
        // A browser says where a request comes from; a program without a page behind it does not, and is no danger to a page's reader.
        bool isForeign = request.Headers["Sec-Fetch-Site"].ToString() is "cross-site" or "same-site"
            && !(HttpMethods.IsGet(request.Method) && request.Headers["Sec-Fetch-Mode"] == "navigate");
        bool needsOrigin = context.WebSockets.IsWebSocketRequest || request.Headers.Upgrade.Count > 0;
        return !isOwnOrigin || isForeign || (needsOrigin && origin.Length == 0)
            ? Refuse(context, StatusCodes.Status403Forbidden, "Only this server's own pages may ask for that.")
            : next(context);
    }

    private bool IsOwnName(string host, HttpContext context) =>
        names.Contains(host) || (isAny && IPAddress.TryParse(host.Trim('[', ']'), out IPAddress? address) && address.Equals(Plain(context.Connection.LocalIpAddress)));

    private static bool IsOwnPort(int? port, HttpContext context) => (port ?? (context.Request.IsHttps ? 443 : 80)) == context.Connection.LocalPort;

    private static IPAddress? Plain(IPAddress? address) => address is { IsIPv4MappedToIPv6: true } ? address.MapToIPv4() : address;

    private static string Named(IPAddress address) => address.AddressFamily == System.Net.Sockets.AddressFamily.InterNetworkV6 ? $"[{address}]" : address.ToString();

    private static Task Refuse(HttpContext context, int status, string text)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(text + "\n", context.RequestAborted);
    }
}
