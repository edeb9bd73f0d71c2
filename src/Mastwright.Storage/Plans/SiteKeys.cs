using Mastwright.Quantities;

namespace Mastwright.Storage.Plans;

/// <summary>Keys of a site and of what stands close around it.</summary>
internal static class SiteKeys
{
    internal static readonly KeyShape Clutter = new("clutter", new ChoiceShape("water", "open", "suburban", "urban", "woodland", "dense-urban"), "Kind of clutter around the antenna.");
    internal static readonly KeyShape ClutterHeight = new("clutter-height", new QuantityShape(Dimension.Length, 0, 100, "8 ± 2 m", Ranged: true), "Height of the clutter: asks for terminal clutter loss (ITU-R P.2108 clause 3.1) in place of the cover in the profile at this end.");
    internal static readonly KeyShape StreetWidth = new("street-width", new QuantityShape(Dimension.Length, 1, 500, "27 m"), "Width of the street or gap.");
    internal static readonly KeyShape WoodlandDepth = new("woodland-depth", new QuantityShape(Dimension.Length, 0, 10_000, "120 m"), "Woodland that the path runs through at this end (ITU-R P.833).");
    internal static readonly KeyShape Building = new("building", new ChoiceShape("traditional", "thermally-efficient"), "Kind of building around an indoor antenna (ITU-R P.2109).");
    internal static readonly MappingShape SurroundingsShape = new("surroundings", Clutter, ClutterHeight, StreetWidth, WoodlandDepth, Building);

    internal static readonly KeyShape Name = new("name", new TextShape("Ferry House"), "Name to speak of it by; the key when left out.");
    internal static readonly KeyShape Formerly = new("formerly", new OneOrManyShape(new KeyNameShape("old-ferry-house")), "Earlier keys.");
    internal static readonly KeyShape Addresses = new("addresses", new OneOrManyShape(new FormShape(AddressBinder.Pattern, "an address as records write it, or one with days, such as a1b2c3 2026-06-01..2026-07-15")), "What records call the station, beside its key; with days where a radio was changed.");
    internal static readonly KeyShape Position = new("position", new PositionShape(), "Where it is.", Required: true);
    internal static readonly KeyShape GroundHeight = new("ground-height", new QuantityShape(Dimension.Length, -500, 9000, "12 m", Ranged: true), "Height of the bare ground above sea level.");
    internal static readonly KeyShape InUse = new("in-use", new KeyNameShape("net-loft"), "The fit-out that stands; leave out for a trial site.");
    internal static readonly KeyShape Surroundings = new("surroundings", SurroundingsShape, "What stands close around.");
    internal static readonly KeyShape Traffic = new("traffic", TrafficKeys.Shape, "What the station sends; takes the place of the plan's own traffic.");
    internal static readonly KeyShape FitOuts = new("fit-outs", new KeyedShape(KeyNameShape.Pattern, FitOutKeys.Shape), "Complete alternatives of what stands at the site.");

    internal static readonly KeyShape Wind = new("wind", WindKeys.Shape, "The wind at this site; keys that are not given are the plan's.");
    internal static readonly KeyShape Hazards = new("hazards", HazardKeys.Shape, "What can hurt someone at this site, and the consents to stand there.");

    internal static readonly KeyShape Weather = new("weather", new FileShape("weather/year.epw"), "A year of weather, hour by hour: an EPW file, or rows under the names global, temperature and, where known, direct, diffuse, humidity, wind.");
    internal static readonly KeyShape Climate = new("climate", ClimateKeys.Shape, "In place of a weather file: each month's mean light and temperature, from which a year is made.");

    internal static readonly MappingShape Shape = new("site", Name, Formerly, Addresses, Position, GroundHeight, InUse, Surroundings, Traffic, FitOuts, Wind, Weather, Climate, Hazards);
}

/// <summary>Keys of the months' means.</summary>
internal static class ClimateKeys
{
    internal static readonly KeyShape Light = new("light", new ListShape(new NumberShape(0, 12)), "Mean light on level ground in kWh a square metre and day: twelve numbers, January first; 0 where the sun does not rise.", Required: true);
    internal static readonly KeyShape Temperature = new("temperature", new ListShape(new NumberShape(-80, 50)), "Mean temperature of the air in °C: twelve numbers, January first.", Required: true);

    internal static readonly MappingShape Shape = new("climate", Light, Temperature);
}
