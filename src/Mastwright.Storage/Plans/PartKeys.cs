namespace Mastwright.Storage.Plans;

/// <summary>Keys of the parts that fit-outs refer to.</summary>
internal static class PartKeys
{
    internal static readonly KeyShape Antennas = new("antennas", new KeyedShape(KeyNameShape.Pattern, AntennaKeys.PartShape), "Antennas by name.");
    internal static readonly KeyShape Radios = new("radios", new KeyedShape(KeyNameShape.Pattern, RadioKeys.PartShape), "Radios by name.");
    internal static readonly KeyShape Feed = new("feed", new KeyedShape(KeyNameShape.Pattern, FeedKeys.PartItem), "Feed items by name.");
    internal static readonly KeyShape Supply = new("supply", new KeyedShape(KeyNameShape.Pattern, SupplyKeys.PartItem), "Supply items by name.");

    internal static readonly MappingShape Shape = new("parts", Antennas, Radios, Feed, Supply);
}
