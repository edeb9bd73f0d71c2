using Mastwright.Quantities;

namespace Mastwright.Storage.Plans;

/// <summary>Keys of a mast and of what it carries.</summary>
internal static class MastKeys
{
    internal static readonly KeyShape Size = new("size", new TextShape("steel-48.3x3.2"), "Catalogue size of the tube; or give outer-diameter and wall.");
    internal static readonly KeyShape OuterDiameter = new("outer-diameter", new QuantityShape(Dimension.Length, 0.005, 1, "48.3 mm"), "Outer diameter of a tube that is not in the catalogue.");
    internal static readonly KeyShape Wall = new("wall", new QuantityShape(Dimension.Length, 0.0001, 0.5, "3.2 mm"), "Its wall: at most half the diameter.");
    internal static readonly KeyShape Grade = new("grade", new TextShape("s235"), "Catalogue grade of the tube, such as s235 or aw-6082-t6.");
    internal static readonly KeyShape TubeLength = new("length", new QuantityShape(Dimension.Length, 0.01, 100, "3 m"), "Length that stands free above the upper bracket, or above the tube below.", Required: true);
    internal static readonly KeyShape Welded = new("welded", new YesNoShape(), "Whether it is welded at its foot, which softens aluminium.");
    internal static readonly MappingShape TubeShape = new("tube", Size, OuterDiameter, Wall, Grade, TubeLength, Welded);

    internal static readonly KeyShape BracketHeight = new("height", new QuantityShape(Dimension.Length, 0, 200, "7 m"), "Height of the upper bracket above the ground; without it from the antenna's height down.");
    internal static readonly KeyShape BracketSpacing = new("spacing", new QuantityShape(Dimension.Length, 0.02, 50, "0.6 m"), "Distance between the upper and the lower bracket.");
    internal static readonly KeyShape BracketCapacity = new("capacity", new QuantityShape(Dimension.Force, 0, 1e7, "2.5 kN"), "What one bracket with its anchors bears across the mast, as a design value; leave out while nobody knows.");
    internal static readonly KeyShape FixedTo = new("fixed-to", new ChoiceShape("masonry", "concrete", "timber", "steel", "chimney", "gable", "anchor", "ground"), "What the brackets are fixed to.");
    internal static readonly MappingShape BracketShape = new("bracket", BracketHeight, BracketSpacing, BracketCapacity, FixedTo);

    internal static readonly KeyShape BoxWidth = new("width", new QuantityShape(Dimension.Length, 0.01, 3, "200 mm"), "Width across the wind.", Required: true);
    internal static readonly KeyShape BoxHeight = new("height", new QuantityShape(Dimension.Length, 0.01, 3, "300 mm"), "Height.", Required: true);
    internal static readonly KeyShape BoxCentre = new("above-bracket", new QuantityShape(Dimension.Length, -50, 100, "0.5 m"), "Its centre above the upper bracket, at most the free length; negative below, where it is not counted.", Required: true);
    internal static readonly KeyShape BoxMass = new("mass", new QuantityShape(Dimension.Mass, 0, 500, "3 kg"), "Its mass.");
    internal static readonly KeyShape BoxDrag = new("drag-coefficient", new NumberShape(0.1, 3), "Force coefficient; without it 2, a flat face.");
    internal static readonly MappingShape BoxShape = new("box on the mast", BoxWidth, BoxHeight, BoxCentre, BoxMass, BoxDrag);

    internal static readonly KeyShape CableDiameter = new("diameter", new QuantityShape(Dimension.Length, 0.001, 0.2, "7 mm"), "Outer diameter.", Required: true);
    internal static readonly KeyShape CableLength = new("length", new QuantityShape(Dimension.Length, 0, 100, "2 m"), "Length up the free part from the upper bracket, at most the free length; without it all of it.");
    internal static readonly KeyShape CableMass = new("mass-per-metre", new QuantityShape(Dimension.MassPerLength, 0, 50, "60 g/m"), "Its mass per metre.");
    internal static readonly MappingShape CableShape = new("cable on the mast", CableDiameter, CableLength, CableMass);

    internal static readonly KeyShape GuyHeight = new("height", new QuantityShape(Dimension.Length, 0.1, 100, "3 m"), "Their level above the upper bracket: at most the free length.", Required: true);
    internal static readonly KeyShape GuyAngle = new("angle", new QuantityShape(Dimension.Angle, 1, 85, "45°"), "Their angle with the level ground.", Required: true);
    internal static readonly KeyShape GuyDiameter = new("diameter", new QuantityShape(Dimension.Length, 0.001, 0.05, "4 mm"), "Diameter of the steel rope.", Required: true);
    internal static readonly KeyShape GuyLength = new("length", new QuantityShape(Dimension.Length, 0.5, 300, "6 m"), "Length of one guy.", Required: true);
    internal static readonly KeyShape GuyBreaking = new("breaking-force", new QuantityShape(Dimension.Force, 0, 1e7, "9 kN"), "Breaking force of one guy.");
    internal static readonly KeyShape GuyAnchor = new("anchor-capacity", new QuantityShape(Dimension.Force, 0, 1e7, "4 kN"), "What one guy's anchor bears along the guy, as a design value; leave out while nobody knows.");
    internal static readonly KeyShape GuyCount = new("count", new WholeShape(3, 12), "How many guys the level has; without it 3.");
    internal static readonly MappingShape GuyShape = new("guys", GuyHeight, GuyAngle, GuyDiameter, GuyLength, GuyBreaking, GuyAnchor, GuyCount);

    internal static readonly KeyShape Tubes = new("tubes", new ListShape(TubeShape), "The tubes from the upper bracket up.", Required: true);
    internal static readonly KeyShape Bracket = new("bracket", BracketShape, "The two brackets that hold it.");
    internal static readonly KeyShape Clamp = new("clamp", new TextShape("stainless-steel"), "Metal of the clamp that holds the antenna: stainless-steel, zinc (galvanised), aluminium, copper, brass, tin or steel.");
    internal static readonly KeyShape Box = new("box", BoxShape, "A box on the mast.");
    internal static readonly KeyShape Cable = new("cable", CableShape, "A cable up the mast.");
    internal static readonly KeyShape Guys = new("guys", GuyShape, "One level of guys.");
    internal static readonly KeyShape MaterialFactor = new("material-factor", new NumberShape(1, 3), "Partial factor on the strength, in place of the grade's.");

    internal static readonly MappingShape Shape = new("mast", Tubes, Bracket, Clamp, Box, Cable, Guys, MaterialFactor);
}
