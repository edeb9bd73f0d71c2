using Mastwright.Quantities;

namespace Mastwright.Storage.Plans;

/// <summary>Keys of a radio.</summary>
internal static class RadioKeys
{
    private static readonly QuantityShape SnrLimit = new(Dimension.Ratio, -40, 40, "-15 dB");

    internal static readonly KeyShape Part = new("part", new KeyNameShape("small-node"), "Takes values from parts/radios/NAME; keys given here win.");
    internal static readonly KeyShape Name = new("name", new TextShape("Small node"), "Name to speak of it by.");
    internal static readonly KeyShape Power = new("power", new QuantityShape(Dimension.Power, -60, 70, "14 dBm", Ranged: true), "Power at the radio's antenna connector.");
    internal static readonly KeyShape NoiseFigure = new("noise-figure", new QuantityShape(Dimension.Ratio, 0, 60, "6 dB", Ranged: true), "Receiver noise figure at the connector.");
    internal static readonly KeyShape NoiseFloor = new("noise-floor", new QuantityShape(Dimension.Power, -180, 0, "-112 dBm", Ranged: true), "Measured noise floor in the modem's bandwidth at the connector: overrides what is computed.");
    internal static readonly KeyShape SnrLimits = new("snr-limits", new KeyedShape("^([5-9]|1[0-2])$", SnrLimit), "Signal-to-noise ratio at which the demodulator stops, by spreading factor.");
    internal static readonly KeyShape FrequencyError = new("frequency-error", new QuantityShape(Dimension.PartsPerMillion, 0, 1000, "10 ppm"), "Frequency error at 25 °C, either way.");
    internal static readonly KeyShape FrequencyDrift = new("frequency-drift", new QuantityShape(Dimension.PartsPerMillion, 0, 1000, "5 ppm"), "Further error over the box's temperatures, either way.");
    internal static readonly KeyShape DriftTemperatures = new("drift-temperatures", new QuantityShape(Dimension.Temperature, -60, 150, "-30…85 °C", Ranged: true), "Temperatures for which the drift is stated, coldest to hottest.");
    internal static readonly KeyShape Blocking = new("blocking", new QuantityShape(Dimension.Power, -150, 40, "-30 dBm"), "Unwanted level at the connector that the receiver still bears.");
    internal static readonly KeyShape BlockingOffset = new("blocking-offset", new QuantityShape(Dimension.Frequency, 1, 10e9, "10 MHz"), "Offset from the carrier for which blocking was given.");

    internal static readonly KeyShape ApprovedGain = new("approved-gain", new QuantityShape(Dimension.Gain, -60, 60, "5 dBi"), "Highest antenna gain that the radio's approval names.");
    internal static readonly KeyShape ApprovedAntenna = new("approved-antenna", new YesNoShape(), "Whether the antenna is of a type that the radio's approval names.");
    internal static readonly KeyShape ApprovedAmplifier = new("approved-amplifier", new YesNoShape(), "Whether the approval covers the amplifier in the feed.");

    internal static readonly MappingShape Shape = new("radio", Part, Name, Power, NoiseFigure, NoiseFloor, SnrLimits, FrequencyError, FrequencyDrift, DriftTemperatures, Blocking, BlockingOffset, ApprovedGain, ApprovedAntenna, ApprovedAmplifier);

    /// <summary>A radio as a part: it refers to no other part.</summary>
    internal static readonly MappingShape PartShape = Shape.AsPart();
}
