using Mastwright.Quantities;

namespace Mastwright.Storage.Plans;

/// <summary>Keys of earth and lightning.</summary>
internal static class EarthingKeys
{
    internal static readonly KeyShape LightningClass = new("class", new ChoiceShape("I", "II", "III", "IV"), "Class of lightning protection of IEC 62305-3 to hold the numbers against: I, II, III or IV.");
    internal static readonly KeyShape AirTermination = new("air-termination", new ChoiceShape("none", "rod"), "Whether something higher stands by that takes the strike.");
    internal static readonly KeyShape RodHeight = new("rod-height", new QuantityShape(Dimension.Length, 0.1, 200, "14 m"), "Height of its tip above the ground.");
    internal static readonly KeyShape RodDistance = new("rod-distance", new QuantityShape(Dimension.Length, 0, 200, "3 m"), "Level distance from it to the antenna.");

    internal static readonly KeyShape Conductor = new("conductor", new QuantityShape(Dimension.Area, 1e-7, 0.01, "16 mm²"), "Cross-section of the conductor from mast to earth.");
    internal static readonly KeyShape Material = new("material", new TextShape("copper"), "Its material: copper, aluminium or steel.");
    internal static readonly KeyShape BelowRoofEdge = new("below-roof-edge", new QuantityShape(Dimension.Length, 0, 100, "2.5 m"), "How far the antenna is below the edge of the roof.");
    internal static readonly KeyShape FromWall = new("from-wall", new QuantityShape(Dimension.Length, 0, 100, "0.4 m"), "How far it is from the wall.");

    internal static readonly KeyShape SoilResistivity = new("soil-resistivity", new QuantityShape(Dimension.Resistivity, 0.1, 1e6, "100…400 Ω·m", Ranged: true), "Resistivity of the soil.");
    internal static readonly KeyShape Soil = new("soil", new TextShape("humus"), "Soil of the catalogue, in place of its resistivity.");
    internal static readonly KeyShape RodCount = new("count", new WholeShape(1, Station.Earthing.EarthRod.MostRods), "How many in a line; without it one.");
    internal static readonly KeyShape RodLength = new("length", new QuantityShape(Dimension.Length, 0.2, 50, "1.5 m"), "Driven length of one.", Required: true);
    internal static readonly KeyShape RodDiameter = new("diameter", new QuantityShape(Dimension.Length, 0.004, 0.15, "16 mm"), "Its diameter.", Required: true);
    internal static readonly KeyShape RodSpacing = new("spacing", new QuantityShape(Dimension.Length, 0.1, 200, "3 m"), "Distance between neighbours: at least the length of a rod.");
    internal static readonly MappingShape RodShape = new("earth rods", RodCount, RodLength, RodDiameter, RodSpacing);
    internal static readonly KeyShape Rods = new("rods", RodShape, "Earth rods driven upright.");

    internal static readonly KeyShape HasProtection = new("lightning-protection", new YesNoShape(), "Whether the building has a lightning protection system.");
    internal static readonly KeyShape Separation = new("separation", new QuantityShape(Dimension.Length, 0, 200, "0.5 m"), "Distance from antenna and cables to that system.");
    internal static readonly KeyShape SeparationLength = new("separation-length", new QuantityShape(Dimension.Length, 0, 500, "9 m"), "Length along its conductor to the nearest bond.");
    internal static readonly KeyShape DownConductors = new("down-conductors", new WholeShape(1, 100), "Number of its down-conductors.");
    internal static readonly KeyShape ThroughSolid = new("through-solid", new YesNoShape(), "Whether brick, concrete or wood lies between, and not air; without it air, and listed as assumed.");

    internal static readonly KeyShape DataCable = new("data-cable", new ChoiceShape("none", "arrester", "bare"), "Whether a data or power cable runs outside, and has a surge arrester.");

    internal static readonly MappingShape Shape = new(
        "earthing", LightningClass, AirTermination, RodHeight, RodDistance, Conductor, Material, BelowRoofEdge, FromWall, SoilResistivity, Soil, Rods, HasProtection, Separation, SeparationLength,
        DownConductors, ThroughSolid, DataCable);
}
