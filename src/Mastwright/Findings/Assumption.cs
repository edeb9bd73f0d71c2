namespace Mastwright.Findings;

/// <summary>A value that nobody gave: a named default that was used, and listed because it was.</summary>
/// <param name="Code">Stable name, kebab-case, such as "radio-noise-figure".</param>
/// <param name="Text">What was assumed, with its value and unit.</param>
/// <param name="Source">Document, "common practice" or "from memory".</param>
/// <param name="PlanPath">Where the plan would give it instead; empty when it cannot.</param>
public sealed record Assumption(string Code, string Text, string Source, string PlanPath = "")
{
    /// <summary>The text with its source, where that says more than that it was assumed.</summary>
    public string Words => Source is "" or "assumed" ? Text : $"{Text} ({Source})";

    /// <summary>The text.</summary>
    public override string ToString() => Text;
}
