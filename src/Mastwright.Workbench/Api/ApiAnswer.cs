using Mastwright.Reports.Sessions;
using Mastwright.Workbench.Desk;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace Mastwright.Workbench.Api;

/// <summary>How the API answers: a document, or what is wrong as a problem (RFC 9457).</summary>
internal static class ApiAnswer
{
    /// <summary>A document.</summary>
    internal static IResult Json(string document) => Results.Text(document, "application/json");

    /// <summary>The question is wrong.</summary>
    internal static IResult Wrong(string problem) => Results.Problem(problem.TrimStart('-'), statusCode: StatusCodes.Status400BadRequest, title: "The question cannot be answered");

    /// <summary>An answer from the plan as it is now; 409 with its problems when it cannot be used, or when a ground file turns out damaged.</summary>
    internal static IResult Of(PlanDesk desk, Func<PlanView, PlanSession, IResult> answer) => Of(desk, null, answer);

    /// <summary>The same with a station tried elsewhere (see <see cref="Trial"/>); null for the plan as it is.</summary>
    internal static IResult Of(PlanDesk desk, string? trial, Func<PlanView, PlanSession, IResult> answer)
    {
        PlanView view = desk.Current;
        if (view.Session is not { } session)
        {
            return Unusable(view.Problems);
        }

        if (trial is not null)
        {
            if (Trial.Parse(trial, session.Plan, out string problem) is not { } tried)
            {
                return Wrong(problem);
            }

            view = view.Trying(tried);
            session = view.Session!;
        }

        IResult made = answer(view, session);
        List<string> damage = [];
        return session.TellDamage(damage.Add) ? Unusable(damage) : made;
    }

    /// <summary>An answer from the plan with values of fit-outs changed (see <see cref="PlanEdit"/>); none for the plan as it is.</summary>
    internal static IResult Changed(PlanDesk desk, string[]? changes, Func<PlanView, PlanSession, IResult> answer) => Of(desk, (view, session) =>
    {
        PlanEdit?[] edits = [.. (changes ?? []).Select(PlanEdit.Parse)];
        if (Array.IndexOf(edits, null) is >= 0 and var wrong)
        {
            return Wrong(PlanEdit.Refusal(changes![wrong]));
        }

        ChangedPlan tried = view.Changing([.. edits.OfType<PlanEdit>()]);
        return tried.View is { Session: { } changed } ? answer(tried.View, changed) : Wrong(string.Join('\n', tried.Problems));
    });

    /// <summary>Describes an endpoint that answers with one of the JSON documents.</summary>
    internal static void Document(this RouteHandlerBuilder endpoint, string schema, string summary) => endpoint
        .WithSummary(summary).WithMetadata(new ShapeOfAnswer(schema)).Produces(StatusCodes.Status200OK, contentType: "application/json").Problems();

    /// <summary>Describes an endpoint that answers with a picture or a file.</summary>
    internal static RouteHandlerBuilder Picture(this RouteHandlerBuilder endpoint, string type, string summary) => endpoint
        .WithSummary(summary).Produces(StatusCodes.Status200OK, contentType: type).Problems();

    private static RouteHandlerBuilder Problems(this RouteHandlerBuilder endpoint) =>
        endpoint.ProducesProblem(StatusCodes.Status400BadRequest).ProducesProblem(StatusCodes.Status409Conflict);

    private static IResult Unusable(IEnumerable<string> problems) =>
        Results.Problem(string.Join('\n', problems), statusCode: StatusCodes.Status409Conflict, title: "The plan cannot be used as it is");
}

/// <summary>Names the JSON schema of the header that an endpoint's bytes begin with: "drag-1".</summary>
internal sealed record ShapeOfHeader(string Schema);

/// <summary>Names the JSON schema that an endpoint's answer has: "check-1".</summary>
internal sealed record ShapeOfAnswer(string Schema);
