using System.Security.Cryptography;
using Mastwright.Workbench.Hosting;
using Microsoft.AspNetCore.Http;

namespace Mastwright.Workbench.Access;

/// <summary>The headers that say what a page may do: run this server's own scripts, and nothing that stands in the page itself.</summary>
internal sealed class PageHeaders(RequestDelegate next, WorkbenchOptions options)
{
    private const string NonceItem = "mastwright-nonce";
    private readonly string background = BackgroundOrigin(options.BackgroundTiles) is { Length: > 0 } origin ? " " + origin : "";

    /// <summary>The random word that lets this answer's import map through; empty outside a request.</summary>
    internal static string Nonce(HttpContext? context) => context?.Items[NonceItem] as string ?? "";

    /// <summary>Sets the headers and goes on.</summary>
    public Task InvokeAsync(HttpContext context)
    {
        string nonce = Convert.ToBase64String(RandomNumberGenerator.GetBytes(16));
        context.Items[NonceItem] = nonce;
        IHeaderDictionary headers = context.Response.Headers;
        headers.ContentSecurityPolicy = string.Join("; ",
            "default-src 'none'",
            $"script-src 'self' 'nonce-{nonce}'",
            "worker-src 'self'",
            "style-src 'self' 'unsafe-inline'",
            $"img-src 'self' data:{background}",
            "font-src 'self'",
            $"connect-src 'self'{background}",
            "form-action 'self'",
            "base-uri 'self'",
            "frame-ancestors 'none'",
            "object-src 'none'");
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), geolocation=(self), microphone=(), payment=(), usb=()";
        return next(context);
    }

    /// <summary>The origin of a tile address: the one foreign place that pictures may come from.</summary>
    internal static string BackgroundOrigin(string? tiles) => tiles is not null && Uri.TryCreate(tiles.Replace('{', '_').Replace('}', '_'), UriKind.Absolute, out Uri? uri)
        ? uri.GetLeftPart(UriPartial.Authority)
        : "";
}
