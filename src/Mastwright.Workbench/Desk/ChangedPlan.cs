using System.Collections.Immutable;

namespace Mastwright.Workbench.Desk;

/// <summary>What came of trying changes: the plan with them in it, or what is wrong with them.</summary>
/// <param name="View">The plan with the changes; null when it cannot be used.</param>
/// <param name="Problems">What keeps it from being used, line by line.</param>
public sealed record ChangedPlan(PlanView? View, ImmutableArray<string> Problems);
