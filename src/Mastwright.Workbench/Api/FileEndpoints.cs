using Mastwright.Workbench.Work;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Mastwright.Workbench.Api;

/// <summary>Files that are sent to be imported or attached.</summary>
internal static class FileEndpoints
{
    private const int MostNameCharacters = 200;

    internal static void Map(IEndpointRouteBuilder api) => api.MapGroup("").AddEndpointFilter<OwnPages>().MapPost("/files", Take)
        .WithMetadata(new LargeRequest())
        .WithSummary("Takes a file of at most 4 GiB as it is, to be imported or attached; answers with its id. One that nobody asks for in a week goes.")
        .Produces(StatusCodes.Status200OK, contentType: "application/json").ProducesProblem(StatusCodes.Status400BadRequest);

    private static async Task<IResult> Take(FileShelf files, HttpRequest request, [FromQuery(Name = "name")] string name, CancellationToken cancellation)
    {
        if (name.Length is 0 or > MostNameCharacters || name.Any(char.IsControl))
        {
            return ApiAnswer.Wrong($"name: 1 to {MostNameCharacters} characters");
        }

        string id = await files.Take(name, request.Body, cancellation).ConfigureAwait(false);
        return ApiAnswer.Json($$"""{"id": "{{id}}"}""");
    }

    private sealed class LargeRequest : IRequestSizeLimitMetadata
    {
        public long? MaxRequestBodySize => FileShelf.MostBytes;
    }
}
