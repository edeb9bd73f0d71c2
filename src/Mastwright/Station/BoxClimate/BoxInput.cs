using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Station.BoxClimate;

/// <summary>What a box is examined from.</summary>
public sealed record BoxInput
{
    /// <summary>Where in the plan the fit-out stands, such as "sites/ferry-house/fit-outs/net-loft".</summary>
    public required string FitOutPath { get; init; }

    /// <summary>The box.</summary>
    public required BoxFit Box { get; init; }

    /// <summary>Heat of the supply in the box, part by part; null when it was not worked out.</summary>
    public Ledger? SupplyHeat { get; init; }

    /// <summary>A year of weather; empty without one.</summary>
    public ImmutableArray<BoxHour> Year { get; init; } = [];

    /// <summary>Whether the year was made from the months' means: it then tells the hours with dew, and its air stands in where <see cref="BoxFit.OutsideCelsius"/> is not given.</summary>
    public bool IsMadeYear { get; init; }

    /// <summary>What a year of weather lacks, as a person reads it; empty where there is a year.</summary>
    public string YearLacks { get; init; } = "";

    /// <summary>What the year is called: its file, or how it was made.</summary>
    public string YearSource { get; init; } = "";

    /// <summary>Materials, colours, places, metals.</summary>
    public required StationCatalogue Catalogue { get; init; }

    internal string Path => StationDefaults.Join(FitOutPath, "box");
}
