using System.Globalization;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.WebUtilities;

namespace Mastwright.Workbench.Hosting;

/// <summary>What is answered where there is nothing to answer with: a sentence for a reader, a problem for a program (RFC 9457).</summary>
internal static class StatusPages
{
    internal static Task Answer(StatusCodeContext context)
    {
        HttpContext http = context.HttpContext;
        int status = http.Response.StatusCode;
        bool isReader = http.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.Ordinal) && !http.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal);
        return (isReader ? Results.Content(Page(status), "text/html; charset=utf-8", statusCode: status) : Results.Problem(statusCode: status)).ExecuteAsync(http);
    }

    private static string Page(int status)
    {
        string text = status switch
        {
            StatusCodes.Status404NotFound => "There is no page at this address.",
            StatusCodes.Status429TooManyRequests => "That was tried too often. In a minute it may be tried again.",
            _ => ReasonPhrases.GetReasonPhrase(status) + ".",
        };
        return string.Create(CultureInfo.InvariantCulture, $"""
            <!DOCTYPE html>
            <html lang="en">
            <head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>{status} · Mastwright</title><link rel="icon" href="data:,"><link rel="stylesheet" href="/workbench/pages.css"></head>
            <body class="gate"><main><h1>{text}</h1><p><a href="/">The ground of the plan</a> is where the work is.</p></main></body>
            </html>
            """);
    }
}
