using Mastwright.Quantities;

namespace Mastwright.Storage.Plans;

/// <summary>Keys of the items of a feed. The first key of each says what the item is.</summary>
internal static class FeedKeys
{
    private static readonly QuantityShape Loss = new(Dimension.Ratio, 0, 100, "0.3 dB", Ranged: true);

    internal static readonly KeyShape Name = new("name", new TextShape("at the bulkhead"), "Name to speak of it by.");
    internal static readonly KeyShape LossOfOne = new("loss", Loss, "Loss of one; without it the catalogue's figure.");

    internal static readonly KeyShape LineType = new("line", new KeyNameShape("rg-213"), "Coaxial line: its catalogue type.", Required: true);
    internal static readonly KeyShape LineLength = new("length", new QuantityShape(Dimension.Length, 0, 1000, "14 m", Ranged: true), "Length of the line.", Required: true);
    internal static readonly KeyShape LineTemperature = new("temperature", new QuantityShape(Dimension.Temperature, -80, 150, "40 °C"), "Temperature of the line; without it the catalogue's reference.");
    internal static readonly MappingShape Line = new("line", LineType, LineLength, LineTemperature);

    internal static readonly KeyShape ConnectorCount = new("connectors", new WholeShape(1, 100), "Mated pairs of connectors: how many.", Required: true);
    internal static readonly MappingShape Connectors = new("connectors", ConnectorCount, LossOfOne, Name);

    internal static readonly KeyShape AdapterCount = new("adapters", new WholeShape(1, 100), "Adapters between connector families: how many.", Required: true);
    internal static readonly MappingShape Adapters = new("adapters", AdapterCount, LossOfOne, Name);

    internal static readonly KeyShape ArresterLoss = new("surge-arrester", Loss, "Surge arrester: its loss; empty for the catalogue's figure.", Required: true, MayBeEmpty: true);
    internal static readonly MappingShape Arrester = new("surge arrester", ArresterLoss, Name);

    internal static readonly KeyShape FilterLoss = new("filter", Loss, "Filter: its loss; empty for the catalogue's figure.", Required: true, MayBeEmpty: true);
    internal static readonly MappingShape Filter = new("filter", FilterLoss, Name);

    internal static readonly KeyShape SplitterLoss = new("splitter", Loss, "Power splitter or coupler: its loss; empty for the catalogue's figure.", Required: true, MayBeEmpty: true);
    internal static readonly MappingShape Splitter = new("splitter", SplitterLoss, Name);

    internal static readonly KeyShape ReceiveGain = new("receive-gain", new QuantityShape(Dimension.Ratio, -30, 80, "15 dB", Ranged: true), "Gain towards the radio; leave out when it does not amplify reception.");
    internal static readonly KeyShape NoiseFigure = new("noise-figure", new QuantityShape(Dimension.Ratio, 0, 60, "1 dB"), "Noise figure of the receive amplifier.");
    internal static readonly KeyShape TransmitGain = new("transmit-gain", new QuantityShape(Dimension.Ratio, -30, 80, "10 dB", Ranged: true), "Gain towards the antenna; leave out when it does not amplify transmission.");
    internal static readonly KeyShape TransmitMaximum = new("transmit-maximum", new QuantityShape(Dimension.Power, -60, 70, "27 dBm", Ranged: true), "The most it puts out.");
    internal static readonly KeyShape BypassLoss = new("bypass-loss", new QuantityShape(Dimension.Ratio, 0, 60, "0.8 dB"), "Loss in the direction that it does not amplify.");
    internal static readonly MappingShape AmplifierShape = new("amplifier", Name, ReceiveGain, NoiseFigure, TransmitGain, TransmitMaximum, BypassLoss);
    internal static readonly KeyShape AmplifierKey = new("amplifier", AmplifierShape, "Amplifier.", Required: true);
    internal static readonly MappingShape Amplifier = new("amplifier item", AmplifierKey);

    internal static readonly KeyShape PartName = new("part", new KeyNameShape("loft-run"), "A part described under parts/feed.", Required: true);
    internal static readonly MappingShape Part = new("part", PartName);

    /// <summary>What may stand in a feed.</summary>
    internal static readonly AlternativesShape Item = new([Line, Connectors, Adapters, Arrester, Filter, Splitter, Amplifier, Part]);

    /// <summary>What may stand under parts/feed: a part is no reference to another part.</summary>
    internal static readonly AlternativesShape PartItem = new([Line, Connectors, Adapters, Arrester, Filter, Splitter, Amplifier]);
}
