using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http;
using Microsoft.Net.Http.Headers;

namespace Mastwright.Workbench.Api;

/// <summary>
/// Who may change something: a page of this server, which shows the word it was given with the page, or a program without a page behind it.
/// The door has turned away foreign pages by then; this holds where a browser says nothing of where it comes from but does send cookies.
/// </summary>
internal sealed class OwnPages(IAntiforgery antiforgery) : IEndpointFilter
{
    /// <summary>The header that carries the word.</summary>
    internal const string Header = "RequestVerificationToken";

    /// <inheritdoc/>
    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        HttpRequest request = context.HttpContext.Request;
        bool isBrowser = request.Headers.ContainsKey(HeaderNames.Origin) || request.Headers.ContainsKey("Sec-Fetch-Site") || request.Headers.ContainsKey(HeaderNames.Cookie);
        return isBrowser && !await antiforgery.IsRequestValidAsync(context.HttpContext).ConfigureAwait(false)
            ? Results.Problem("The page is out of date: load it again.", statusCode: StatusCodes.Status403Forbidden, title: "Only this server's own pages may change the plan")
            : await next(context).ConfigureAwait(false);
    }
}
