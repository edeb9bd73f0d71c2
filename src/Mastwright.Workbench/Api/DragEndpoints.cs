using Mastwright.Workbench.Drag;
using Mastwright.Workbench.Desk;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Mastwright.Workbench.Api;

/// <summary>What follows the pointer: links, path and reach of a station at a place of trial, in one answer.</summary>
internal static class DragEndpoints
{
    /// <summary>Nobody waits for the answer: the status that servers log for that.</summary>
    private const int NobodyWaits = 499;

    internal static void Map(IEndpointRouteBuilder api) => api.MapPost("/drag", Answer).Picture(
        DragAnswerWriter.ContentType,
        "One step of a drag: the links, one path and the reach of a station that may stand at a place of trial. The answer is the length of a JSON header (four bytes, little endian), the header, and the values of the reach as 32-bit floats row by row from the north, NaN where there is none.")
        .WithMetadata(new ShapeOfHeader("drag-1"));

    private static async Task<IResult> Answer(PlanDesk desk, DragDesk drags, HttpContext context, DragQuestion question)
    {
        PlanView view = desk.Current;
        if (view.Session is null)
        {
            return ApiAnswer.Of(desk, (_, _) => Results.NoContent());
        }

        try
        {
            (DragAnswer? answer, string problem) = await drags.Answer(view, question, context.RequestAborted).ConfigureAwait(false);
            if (answer is null)
            {
                return ApiAnswer.Wrong(problem);
            }

            context.Response.Headers["Server-Timing"] = answer.Timing;
            context.Response.Headers.CacheControl = "no-store";
            byte[] bytes = DragAnswerWriter.Write(answer);
            return ApiAnswer.Of(desk, (_, _) => Results.Bytes(bytes, DragAnswerWriter.ContentType));
        }
        catch (OperationCanceledException)
        {
            return Results.StatusCode(NobodyWaits);
        }
    }
}
