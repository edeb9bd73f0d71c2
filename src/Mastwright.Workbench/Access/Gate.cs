using System.Globalization;
using System.Security.Claims;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.AspNetCore.Routing;

namespace Mastwright.Workbench.Access;

/// <summary>The page that asks for the access key, and the cookie that remembers that it was given.</summary>
internal static class Gate
{
    internal const string Path = "/enter";
    internal const string Limiter = "enter";
    private const string StampClaim = "key-stamp";

    /// <summary>Maps the page and its answer.</summary>
    internal static void Map(IEndpointRouteBuilder routes, AccessKey key)
    {
        routes.MapGet(Path, (HttpContext context, IAntiforgery antiforgery) => Page(context, antiforgery, "")).AllowAnonymous().ExcludeFromDescription();
        routes.MapPost(Path, async (HttpContext context, IAntiforgery antiforgery, [FromForm(Name = "key")] string? given, [FromQuery(Name = "to")] string? target) =>
        {
            if (given is not { Length: > 0 and < 200 } || !key.IsOpenedBy(given))
            {
                context.Response.StatusCode = StatusCodes.Status401Unauthorized;
                return Page(context, antiforgery, "That is not the key. It was shown where the server was started; --new-key makes another.");
            }

            ClaimsIdentity identity = new([new Claim(StampClaim, key.Stamp)], CookieAuthenticationDefaults.AuthenticationScheme);
            await context.SignInAsync(CookieAuthenticationDefaults.AuthenticationScheme, new(identity), new() { IsPersistent = true }).ConfigureAwait(false);
            return Results.LocalRedirect(IsLocal(target) ? target! : "/");
        }).AllowAnonymous().RequireRateLimiting(Limiter).ExcludeFromDescription();
    }

    /// <summary>Whether a cookie was given for this key.</summary>
    internal static bool Holds(ClaimsPrincipal? user, AccessKey key) => user?.FindFirst(StampClaim)?.Value == key.Stamp;

    private static bool IsLocal(string? target) => target is ['/', ..] && !target.StartsWith("//", StringComparison.Ordinal) && !target.Contains('\\', StringComparison.Ordinal);

    private static IResult Page(HttpContext context, IAntiforgery antiforgery, string problem)
    {
        AntiforgeryTokenSet tokens = antiforgery.GetAndStoreTokens(context);
        HtmlEncoder html = HtmlEncoder.Default;
        string alert = problem.Length == 0 ? "" : $"<p class=\"problem\" role=\"alert\">{html.Encode(problem)}</p>";
        return Results.Content(
            string.Create(CultureInfo.InvariantCulture, $"""
            <!DOCTYPE html>
            <html lang="en">
            <head>
              <meta charset="utf-8">
              <meta name="viewport" content="width=device-width, initial-scale=1">
              <title>Access key · Mastwright</title>
              <link rel="icon" href="data:,">
              <link rel="stylesheet" href="/workbench/pages.css">
            </head>
            <body class="gate">
              <main>
                <h1>Mastwright</h1>
                <p>This plan is open to whoever has its access key. The key was shown where the server was started.</p>
                {alert}
                <form method="post">
                  <input type="hidden" name="{html.Encode(tokens.FormFieldName)}" value="{html.Encode(tokens.RequestToken ?? "")}">
                  <label for="key">Access key</label>
                  <input id="key" name="key" type="password" autocomplete="current-password" required autofocus maxlength="199">
                  <button type="submit">Enter</button>
                </form>
              </main>
            </body>
            </html>
            """),
            "text/html; charset=utf-8",
            statusCode: context.Response.StatusCode);
    }
}
