using Mastwright.Quantities;

namespace Mastwright.Storage.Plans;

/// <summary>Keys of an antenna; those of its height serve a neighbour too.</summary>
internal static class AntennaKeys
{
    internal static readonly KeyShape Part = new("part", new KeyNameShape("collinear-8"), "Takes values from parts/antennas/NAME; keys given here win.");
    internal static readonly KeyShape Name = new("name", new TextShape("Collinear of the 8 dBi class"), "Name to speak of it by.");
    internal static readonly KeyShape Gain = new("gain", new QuantityShape(Dimension.Gain, -60, 60, "8 dBi", Ranged: true), "Gain along the main beam.");
    internal static readonly KeyShape Height = new("height", new QuantityShape(Dimension.Length, -500, 10_000, "5 m", Ranged: true), "Height of the antenna's centre.", Required: true);
    internal static readonly KeyShape Above = new("above", new ChoiceShape("ground", "roof", "sea-level"), "What height is measured from; without it the ground.");
    internal static readonly KeyShape Roof = new("roof", new QuantityShape(Dimension.Length, 0, 1000, "6 m", Ranged: true), "Height of the roof above the ground; required with above: roof.");
    internal static readonly KeyShape Datum = new("datum", new TextShape("EGM96"), "Vertical datum; required with above: sea-level.");
    internal static readonly KeyShape Polarisation = new("polarisation", new ChoiceShape("vertical", "horizontal"), "Without it vertical.");
    internal static readonly KeyShape Pattern = new("pattern", new ChoiceShape("collinear-array", "yagi", "average-side-lobes", "table"), "Where the elevation pattern comes from.");
    internal static readonly KeyShape PatternFile = new("pattern-file", new FileShape("patterns/collinear.csv"), "CSV of angle,dB rows; required with pattern: table.");
    internal static readonly KeyShape Elements = new("elements", new WholeShape(1, 64), "Elements of a collinear array.");
    internal static readonly KeyShape Spacing = new("spacing", new FormShape("^\\s*[\\d.]+\\s*wavelengths?\\s*$", "a spacing from 0.1 to 4 wavelengths, such as 0.8 wavelengths"), "Spacing of the elements of a collinear array.");
    internal static readonly KeyShape NullFill = new("null-fill", new QuantityShape(Dimension.Ratio, 0, 60, "20 dB"), "Depth to which the nulls of a collinear array are filled, below the main beam.");
    internal static readonly KeyShape ElevationBeamwidth = new("elevation-beamwidth", new QuantityShape(Dimension.Angle, 0.1, 360, "16°"), "Half-power beamwidth, upright.");
    internal static readonly KeyShape AzimuthBeamwidth = new("azimuth-beamwidth", new QuantityShape(Dimension.Angle, 0.1, 360, "60°"), "Half-power beamwidth, level; leave out for an omnidirectional antenna.");
    internal static readonly KeyShape Bearing = new("bearing", new QuantityShape(Dimension.Angle, 0, 360, "240°"), "Direction of the main beam from true north.");
    internal static readonly KeyShape Tilt = new("tilt", new QuantityShape(Dimension.Angle, -90, 90, "-2°"), "Elevation of the main beam, up positive.");
    internal static readonly KeyShape Length = new("length", new QuantityShape(Dimension.Length, 0.001, 100, "1.6 m"), "Length of the radiating part.");
    internal static readonly KeyShape MastDistance = new("mast-distance", new QuantityShape(Dimension.Length, 0, 100, "0.4 m"), "Distance from a mast that runs up beside the antenna; leave out when it stands free on top.");
    internal static readonly KeyShape TotalLength = new("total-length", new QuantityShape(Dimension.Length, 0.001, 100, "1.7 m"), "Length over all, for the wind; without it that of the radiating part.");
    internal static readonly KeyShape Diameter = new("diameter", new QuantityShape(Dimension.Length, 0.001, 2, "25 mm"), "Outer diameter of a rod-shaped antenna, for the wind.");
    internal static readonly KeyShape WindArea = new("wind-area", new QuantityShape(Dimension.Area, 0, 20, "0.05 m²"), "Area that it turns to the wind, without any force coefficient.");
    internal static readonly KeyShape DragCoefficient = new("drag-coefficient", new NumberShape(0.1, 3), "Its force coefficient; without it that of a cylinder, or 2 for a given area.");
    internal static readonly KeyShape Mass = new("mass", new QuantityShape(Dimension.Mass, 0, 500, "1.2 kg"), "Its mass.");
    internal static readonly KeyShape Indoors = new("indoors", new YesNoShape(), "Whether it is inside a building.");

    internal static readonly MappingShape Shape = new(
        "antenna", Part, Name, Gain, Height, Above, Roof, Datum, Polarisation, Pattern, PatternFile, Elements, Spacing, NullFill, ElevationBeamwidth, AzimuthBeamwidth, Bearing, Tilt, Length, MastDistance, Indoors, TotalLength, Diameter, WindArea, DragCoefficient, Mass);

    /// <summary>An antenna as a part: it refers to no other part, and how it is mounted may be left open.</summary>
    internal static readonly MappingShape PartShape = Shape.AsPart();
}
