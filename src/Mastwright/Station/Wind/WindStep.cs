namespace Mastwright.Station.Wind;

/// <summary>One step from a basic wind to a pressure: what it is multiplied by.</summary>
/// <param name="Code">Stable name of its ledger line.</param>
/// <param name="Label">What a person reads.</param>
/// <param name="Factor">Factor on the pressure.</param>
/// <param name="Source">Document and clause, or place in the plan.</param>
/// <param name="Note">How the factor came about.</param>
internal readonly record struct WindStep(string Code, string Label, double Factor, string Source, string Note);
