using Mastwright.Quantities;

namespace Mastwright.Storage.Plans;

/// <summary>Keys of a neighbour.</summary>
internal static class NeighbourKeys
{
    internal static readonly KeyShape Own = new("own", new YesNoShape(), "Whether it is yours; without it no.");
    internal static readonly KeyShape Height = AntennaKeys.Height with { Meaning = "Height of its antenna; leave out when unknown.", Required = false };
    internal static readonly KeyShape Gain = AntennaKeys.Gain with { Meaning = "Gain of its antenna after its feed." };
    internal static readonly KeyShape Power = RadioKeys.Power with { Meaning = "Power into its antenna." };
    internal static readonly KeyShape NoiseFigure = RadioKeys.NoiseFigure with { Meaning = "Noise figure of its receiver." };
    internal static readonly KeyShape SendsEvery = new("sends-every", new QuantityShape(Dimension.Time, 1, 31_536_000, "15 min"), "Time from one packet of its own to the next, where it sends at a fixed interval and at no other time: a proof then knows how many were lost.");

    internal static readonly MappingShape Shape = new(
        "neighbour",
        SiteKeys.Name,
        SiteKeys.Formerly,
        SiteKeys.Addresses,
        Own,
        SiteKeys.Position,
        SiteKeys.GroundHeight,
        SiteKeys.Surroundings,
        Height,
        AntennaKeys.Above,
        AntennaKeys.Roof,
        AntennaKeys.Datum,
        Gain,
        Power,
        NoiseFigure,
        AntennaKeys.Polarisation,
        SendsEvery);
}
