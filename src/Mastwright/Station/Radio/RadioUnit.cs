using System.Collections.Immutable;
using Mastwright.Quantities;

namespace Mastwright.Station.Radio;

/// <summary>A radio as the parts file or the plan describes it. A null is "nobody said": the budget then lists what it assumed.</summary>
public sealed record RadioUnit
{
    /// <summary>Name to speak of it by.</summary>
    public string Name { get; init; } = "";

    /// <summary>Power at the radio's antenna connector, in dBm.</summary>
    public Estimate? ConductedPowerDbm { get; init; }

    /// <summary>Receiver noise figure at its connector, in dB.</summary>
    public Estimate? NoiseFigureDb { get; init; }

    /// <summary>Measured noise floor in the modem's bandwidth at the radio's connector, in dBm: overrides everything computed.</summary>
    public Estimate? MeasuredNoiseFloorDbm { get; init; }

    /// <summary>Signal-to-noise ratio in dB at which the demodulator stops, by spreading factor; overrides the catalogue's.</summary>
    public ImmutableSortedDictionary<int, double> SnrLimitDb { get; init; } = ImmutableSortedDictionary<int, double>.Empty;

    /// <summary>Frequency error at 25 °C, in parts per million either way.</summary>
    public double? FrequencyErrorPartsPerMillion { get; init; }

    /// <summary>Further frequency error over the box's temperatures, in parts per million either way.</summary>
    public double? FrequencyDriftPartsPerMillion { get; init; }

    /// <summary>Temperatures in °C, from coldest to hottest, for which the drift was stated.</summary>
    public Estimate? DriftCelsius { get; init; }

    /// <summary>Level of an unwanted signal at the connector, in dBm, that the receiver still bears (blocking).</summary>
    public double? BlockingDbm { get; init; }

    /// <summary>Frequency offset in hertz from the carrier for which the blocking figure was given.</summary>
    public double? BlockingOffsetHz { get; init; }

    /// <summary>Highest antenna gain in dBi that the radio's approval names.</summary>
    public double? ApprovedGainDbi { get; init; }

    /// <summary>Whether the antenna is of a type that the radio's approval names.</summary>
    public bool? ApprovedAntenna { get; init; }

    /// <summary>Whether the approval covers the amplifier behind the radio.</summary>
    public bool? ApprovedAmplifier { get; init; }
}
