namespace Mastwright.Storage.Plans;

/// <summary>A value below a list or below keys that the plan chooses.</summary>
/// <param name="Key">Its key; empty for an item of a list.</param>
/// <param name="Node">The value.</param>
/// <param name="Path">Its path in the plan.</param>
/// <remarks>A class, as are all the small things here that go through generic collections: code for those is there before the start,
/// code for a struct of ours would be compiled while the program starts.</remarks>
internal sealed record PlanItem(string Key, PlanNode Node, string Path);
