using Mastwright.Quantities;

namespace Mastwright.Station.BoxClimate;

/// <summary>What the examination of a box came to, for whoever compares or goes on with it.</summary>
public sealed record BoxResult
{
    /// <summary>Nothing was examined.</summary>
    public static BoxResult Nothing { get; } = new();

    /// <summary>Ledgers, findings and assumptions.</summary>
    public Examination Examination { get; init; } = Examination.Nothing;

    /// <summary>Air in the box in °C as worked out: coldest with nothing on, on the whole, hottest; null when unknown.</summary>
    public Estimate? InsideCelsius { get; init; }

    /// <summary>Heat of everything inside in W; null when unknown.</summary>
    public Estimate? HeatWatts { get; init; }

    /// <summary>Hours a year in which dew or frost stands in the box; null without a year of weather.</summary>
    public Estimate? DewHours { get; init; }

    /// <summary>Why <see cref="DewHours"/> are not known, as a person reads it; empty where they are.</summary>
    public string DewLacks { get; init; } = "";

    /// <summary>The box with its numbers, warmed by the mean heat of everything inside; null when they are not known.</summary>
    public BoxModel? Model { get; init; }

    /// <summary>Temperature of the air outside in °C, coldest, on the whole, hottest; null when unknown.</summary>
    public Estimate? OutsideCelsius { get; init; }
}
