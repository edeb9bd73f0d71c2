using System.Collections.Immutable;
using Mastwright.Geodesy;

namespace Mastwright.Storage.Plans.Exchange;

/// <summary>A place as another program's file gives it, or as we give it to another program.</summary>
public sealed record ExchangedPlace
{
    /// <summary>Name; empty when the file has none.</summary>
    public string Name { get; init; } = "";

    /// <summary>Key in a plan; empty when the file did not come from one.</summary>
    public string Key { get; init; } = "";

    /// <summary>Whether it is a neighbour (true) or an own site (false); null when the file does not say.</summary>
    public bool? IsNeighbour { get; init; }

    /// <summary>Where it is, and how far off it may be.</summary>
    public required LocatedPoint Position { get; init; }

    /// <summary>Elevation in metres as the file gives it; null when it does not.</summary>
    public double? ElevationMetres { get; init; }

    /// <summary>Whatever else the file says of it, as text; may be empty.</summary>
    public string Remark { get; init; } = "";
}

/// <summary>What came of reading a file of places.</summary>
/// <param name="Places">The places in the file's order; empty when there is a problem.</param>
/// <param name="Problems">What is wrong with the file; then no place is taken.</param>
/// <param name="Notes">What the file holds that is no place and was left, such as tracks.</param>
public sealed record PlaceReading(ImmutableArray<ExchangedPlace> Places, ImmutableArray<PlanProblem> Problems, ImmutableArray<PlanProblem> Notes);
