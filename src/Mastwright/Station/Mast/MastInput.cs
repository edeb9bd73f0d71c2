using Mastwright.Quantities;
using Mastwright.Station.Antenna;
using Mastwright.Station.Wind;

namespace Mastwright.Station.Mast;

/// <summary>What a mast is examined from.</summary>
public sealed record MastInput
{
    /// <summary>Where in the plan the fit-out stands, such as "sites/ferry-house/fit-outs/net-loft".</summary>
    public required string FitOutPath { get; init; }

    /// <summary>The mast; null when the plan says nothing of it.</summary>
    public required MastFit? Mast { get; init; }

    /// <summary>The antenna.</summary>
    public required AntennaFit Antenna { get; init; }

    /// <summary>Height of the antenna's centre above the ground in metres; null when unknown.</summary>
    public Estimate? AntennaHeightMetres { get; init; }

    /// <summary>The basic wind.</summary>
    public BasicWind Wind { get; init; } = new();

    /// <summary>Where in the plan the wind stands.</summary>
    public string WindPath { get; init; } = "wind";

    /// <summary>Tubes, grades, terrain, ice.</summary>
    public required StationCatalogue Catalogue { get; init; }

    internal string MastPath => StationDefaults.Join(FitOutPath, "mast");

    internal string AntennaPath => StationDefaults.Join(FitOutPath, "antenna");
}
