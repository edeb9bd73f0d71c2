using Mastwright.Reports.Evidence;
using Mastwright.Storage.Plans;

namespace Mastwright.Workbench.Keeping;

/// <summary>A fitted correction that goes into the plan under a name, and into use.</summary>
internal static class CorrectionKeeping
{
    /// <summary>The plan with the correction in it; comments, order and quoting stay.</summary>
    /// <param name="answer">What was fitted.</param>
    /// <param name="name">Its name in the plan.</param>
    /// <param name="state">The plan.</param>
    internal static PlanChange In(CorrectionAnswer answer, string name, PlanRevision state)
    {
        if (state.AsText() is not { Text: { } text } read)
        {
            return new(null, state.AsText().Problem);
        }

        List<string> told = [];
        if (CorrectionRun.Adopt(answer, text, name, told.Add) is not { } changed)
        {
            return new(null, read.Problem ?? new() { Code = "plan-adopt", File = "", Message = string.Join(' ', told) });
        }

        return state.With(changed.Text, out PlanProblem? problem) is { } made ? new(made, null) : new(null, problem);
    }
}
