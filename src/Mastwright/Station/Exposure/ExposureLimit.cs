using Mastwright.Station.Rules;

namespace Mastwright.Station.Exposure;

/// <summary>Whom a limit of exposure is for.</summary>
public enum Exposed
{
    /// <summary>Anybody: the general public, uncontrolled exposure.</summary>
    Public,

    /// <summary>People at work who know of it: occupational, controlled exposure.</summary>
    Workers,
}

/// <summary>What a limit of exposure is worth in the place whose row it is.</summary>
public enum LimitStanding
{
    /// <summary>The law of the place itself.</summary>
    Law,

    /// <summary>The least that the law of each member state has to ask for: it may ask for more.</summary>
    Minimum,

    /// <summary>A recommendation, which binds nobody.</summary>
    Recommendation,
}

/// <summary>One limit of exposure: a power density that rises with a power of the frequency.</summary>
/// <remarks>These are reference levels for a body in a plane wave; the basic restrictions behind them are in watts per kilogram of body.</remarks>
public sealed record ExposureLimit
{
    /// <summary>Wave impedance of free space in ohms.</summary>
    private const double FreeSpaceOhms = 376.730313668;

    /// <summary>Key of the row.</summary>
    public required string Key { get; init; }

    /// <summary>Key of the region, code of a country, or "ICNIRP" for the guidelines that are shown beside.</summary>
    public required string Region { get; init; }

    /// <summary>Whom it is for.</summary>
    public required Exposed For { get; init; }

    /// <summary>What it is over: "whole body", "part of the body".</summary>
    public required string Over { get; init; }

    /// <summary>Lowest frequency in hertz.</summary>
    public required double LowHz { get; init; }

    /// <summary>Highest frequency in hertz.</summary>
    public required double HighHz { get; init; }

    /// <summary>The limit at 1 MHz by its formula: in W/m², or in V/m.</summary>
    public required double Coefficient { get; init; }

    /// <summary>Power of the frequency in MHz that the coefficient is multiplied by.</summary>
    public required double Exponent { get; init; }

    /// <summary>Whether the formula gives a field strength in V/m rather than a density in W/m².</summary>
    public bool IsField { get; init; }

    /// <summary>Time in seconds over which the exposure may be averaged.</summary>
    public required double AveragingSeconds { get; init; }

    /// <summary>Whether pauses of the transmitter count within that time.</summary>
    public bool AveragesPauses { get; init; }

    /// <summary>What it is worth in its place.</summary>
    public LimitStanding Standing { get; init; }

    /// <summary>Document, edition, clause, and how it was read.</summary>
    public required RuleSource Source { get; init; }

    /// <summary>Whether it holds at a frequency.</summary>
    /// <param name="frequencyHz">Frequency in hertz.</param>
    public bool Holds(double frequencyHz) => frequencyHz >= LowHz && frequencyHz <= HighHz;

    /// <summary>The limit as a power density of a plane wave, in W/m².</summary>
    /// <param name="frequencyHz">Frequency in hertz, one at which it holds.</param>
    public double DensityAt(double frequencyHz)
    {
        double value = Coefficient * Math.Pow(frequencyHz / 1e6, Exponent);
        return IsField ? value * value / FreeSpaceOhms : value;
    }

    /// <summary>The key.</summary>
    public override string ToString() => Key;
}
