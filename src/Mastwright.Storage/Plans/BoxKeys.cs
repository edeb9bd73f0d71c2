using Mastwright.Quantities;

namespace Mastwright.Storage.Plans;

/// <summary>Keys of a box.</summary>
internal static class BoxKeys
{
    private static readonly QuantityShape Side = new(Dimension.Length, 0.02, 5, "300 mm");
    private static readonly ChoiceShape Facing = new("down", "side", "up");
    private static readonly FormShape Code = new("^\\s*[Ii][Pp][0-6Xx][0-9Xx](\\s*/\\s*[Ii][Pp][0-6Xx][0-9Xx])*\\s*$", "an IP code, such as IP66 or IP66/IP67");

    internal static readonly KeyShape Temperature = new("temperature", new QuantityShape(Dimension.Temperature, -60, 90, "15 (-10…40) °C", Ranged: true), "Temperature inside as you know it: coldest, on the whole, hottest.");
    internal static readonly KeyShape Width = new("width", Side, "Width of the box.");
    internal static readonly KeyShape Height = new("height", Side, "Its height.");
    internal static readonly KeyShape Depth = new("depth", Side, "Its depth.");
    internal static readonly KeyShape Material = new("material", new TextShape("plastic"), "What it is made of: painted-steel, stainless-steel, aluminium or plastic.");
    internal static readonly KeyShape Colour = new("colour", new TextShape("light-grey"), "Its colour: white, light-grey, mid-grey or black.");
    internal static readonly KeyShape Mounting = new("mounting", new ChoiceShape("free", "wall"), "Air on all sides, or its back against a wall; without it against a wall.");
    internal static readonly KeyShape Sun = new("sun", new ChoiceShape("open", "shaded", "none"), "The whole sun and sky, a hood or a shady side, or none of it; without it the whole.");
    internal static readonly KeyShape Seal = new("seal", new TextShape("vent-plug"), "How tight it is: sealed, vent-plug or vented.");
    internal static readonly KeyShape Outside = new("outside", new QuantityShape(Dimension.Temperature, -60, 60, "12 (-8…32) °C", Ranged: true), "Air outside: coldest, on the whole, hottest.");
    internal static readonly KeyShape NightHumidity = new("night-humidity", new QuantityShape(Dimension.Percent, 5, 100, "95 %"), "Relative humidity of damp cold nights; without it 95 %.");
    internal static readonly KeyShape Heat = new("heat", new QuantityShape(Dimension.Wattage, 0, 5000, "1.5…2.5 W", Ranged: true), "Heat of everything inside, in place of the supply's.");
    internal static readonly KeyShape Heater = new("heater", new QuantityShape(Dimension.Wattage, 0, 5000, "2 W"), "A heater that is always on.");
    internal static readonly KeyShape Exposure = new("exposure", new TextShape("rain"), "What the place does to it: indoors, sheltered, rain, sea or flood.");
    internal static readonly KeyShape Ip = new("ip", Code, "IP code of the box.");
    internal static readonly KeyShape Entries = new("entries", Facing, "Side of the box where cables come in.");
    internal static readonly KeyShape DripLoops = new("drip-loops", new YesNoShape(), "Whether cables hang in a loop below where they come in.");
    internal static readonly KeyShape Connectors = new("connectors", Facing, "Which way the connectors on its outside face.");

    internal static readonly KeyShape PartName = new("name", new TextShape("small board"), "Name to speak of it by; the key when left out.");
    internal static readonly KeyShape PartTemperature = new("temperature", new QuantityShape(Dimension.Temperature, -100, 200, "-20…60 °C", Ranged: true), "Temperatures that it bears, from its data sheet.");
    internal static readonly KeyShape PartRise = new("rise", new QuantityShape(Dimension.TemperatureDifference, 0, 100, "8 K"), "By how much it is warmer than the air around it; without it not at all.");
    internal static readonly KeyShape PartIp = new("ip", Code, "IP code of a part in the wall: a gland, a connector, a plug.");
    internal static readonly MappingShape PartShape = new("part of a box", PartName, PartTemperature, PartRise, PartIp);
    internal static readonly KeyShape Parts = new("parts", new KeyedShape(KeyNameShape.Pattern, PartShape), "What is in it, and what is in its wall.");

    internal static readonly MappingShape Shape = new(
        "box", Temperature, Width, Height, Depth, Material, Colour, Mounting, Sun, Seal, Outside, NightHumidity, Heat, Heater, Exposure, Ip, Entries, DripLoops, Connectors, Parts);
}
