using Mastwright.Findings;

namespace Mastwright.Station.Rules;

/// <summary>Whether a station keeps one condition of a row of law, power and time on the air apart.</summary>
/// <param name="Code">Stable name, kebab-case: "hopping-channels".</param>
/// <param name="Verdict">What comes of it.</param>
/// <param name="Text">What the row asks and what the station does, to follow the row's name.</param>
public sealed record RuleCondition(string Code, Verdict Verdict, string Text);
