using Mastwright.Quantities;

namespace Mastwright.Storage.Plans;

/// <summary>Keys of a fit-out.</summary>
internal static class FitOutKeys
{
    internal static readonly KeyShape Name = new("name", new TextShape("Net loft"), "Name to speak of it by; the key when left out.");
    internal static readonly KeyShape Antenna = new("antenna", AntennaKeys.Shape, "The antenna as mounted.", Required: true);
    internal static readonly KeyShape Feed = new("feed", new ListShape(FeedKeys.Item), "Parts from the radio to the antenna, in that order.");
    internal static readonly KeyShape ReturnLoss = new("return-loss", new FormShape("^.*\\d\\s*dB\\s+at\\s+(radio|antenna)\\s*$", "a return loss and where it was measured, such as 18 dB at radio"), "Measured or stated return loss, and where: at radio or at antenna.");
    internal static readonly KeyShape Vswr = new("vswr", new FormShape("^\\s*[\\d.]+\\s+at\\s+(radio|antenna)\\s*$", "a standing-wave ratio above 1 and where it was measured, such as 1.4 at antenna"), "Measured or stated standing-wave ratio, and where; in place of return-loss.");
    internal static readonly KeyShape Radio = new("radio", RadioKeys.Shape, "The radio.");
    internal static readonly KeyShape People = new("people", PeopleKeys.Shape, "How near people come to the antenna.");
    internal static readonly KeyShape NearbyTransmitters = new("nearby-transmitters", new KeyedShape(KeyNameShape.Pattern, NearbyKeys.Shape), "Transmitters of others near the receiver.");
    internal static readonly KeyShape Supply = new("supply", new ListShape(SupplyKeys.Item), "Parts from the source of the power to the loads, in that order.");
    internal static readonly KeyShape Solar = new("solar", SolarKeys.Shape, "The panel that charges the supply's battery.");
    internal static readonly KeyShape Box = new("box", BoxKeys.Shape, "The box that radio or battery stand in.");

    internal static readonly KeyShape Mast = new("mast", MastKeys.Shape, "What the antenna stands on.");
    internal static readonly KeyShape Hazards = new("hazards", HazardKeys.Shape, "What can hurt someone, where it differs from the site's.");
    internal static readonly KeyShape Earthing = new("earthing", EarthingKeys.Shape, "Earth, lightning, surge protection.");

    internal static readonly MappingShape Shape = new("fit-out", Name, Antenna, Feed, ReturnLoss, Vswr, Radio, People, NearbyTransmitters, Supply, Solar, Box, Mast, Hazards, Earthing);
}

/// <summary>Keys of a transmitter nearby.</summary>
internal static class NearbyKeys
{
    internal static readonly KeyShape Frequency = new("frequency", new QuantityShape(Dimension.Frequency, 1e3, 300e9, "791 MHz"), "Its frequency.", Required: true);
    internal static readonly KeyShape Eirp = new("eirp", new QuantityShape(Dimension.Power, -60, 100, "62 dBm", Ranged: true), "Its radiated power, EIRP; of a range the most counts.", Required: true);
    internal static readonly KeyShape Distance = new("distance", new QuantityShape(Dimension.Length, 0.01, 1_000_000, "300 m", Ranged: true), "Its distance from the antenna; of a range the least counts.", Required: true);

    internal static readonly MappingShape Shape = new("nearby transmitter", Frequency, Eirp, Distance);
}

/// <summary>Keys of how near people come to an antenna.</summary>
internal static class PeopleKeys
{
    internal static readonly KeyShape Public = new("public", new QuantityShape(Dimension.Length, 0, 10_000, "4 m"), "The nearest that anybody comes to the antenna.");
    internal static readonly KeyShape Workers = new("workers", new QuantityShape(Dimension.Length, 0, 10_000, "1 m"), "The nearest that somebody at work comes to the antenna while it sends.");

    internal static readonly MappingShape Shape = new("people", Public, Workers);
}
