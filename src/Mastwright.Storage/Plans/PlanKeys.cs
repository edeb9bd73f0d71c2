using Mastwright.Propagation;
using Mastwright.Quantities;

namespace Mastwright.Storage.Plans;

/// <summary>Keys at the top of a plan, of ground, air, wanted and spread.</summary>
internal static class PlanKeys
{
    internal static readonly KeyShape Version = new("mastwright", new WholeShape(1, 1), "Version of this format.", Required: true);
    internal static readonly KeyShape Name = new("name", new TextShape("Skerrin"), "Name of the plan.", Required: true);
    internal static readonly KeyShape Region = new("region", new TextShape("EU"), "Region whose rules apply.");
    internal static readonly KeyShape Include = new("include", new OneOrManyShape(new FileShape("parts.yaml")), "Files with parts.");
    internal static readonly KeyShape Catalogue = new("catalogue", new OneOrManyShape(new FileShape("catalogue.yaml")), "Catalogue files of your own: their rows add to the catalogue or replace rows of the same key.");
    internal static readonly KeyShape Links = new(
        "links", new ListShape(new FormShape("^\\s*[a-z0-9][a-z0-9-]{0,63}\\s*~\\s*[a-z0-9][a-z0-9-]{0,63}\\s*$", "two keys with ~ between, such as ferry-house ~ creamery")), "Pairs to judge; without it every pair with at least one own site.");

    internal static readonly KeyShape SourceName = new("name", new TextShape("National terrain model, 1 arc-second"), "Name of the source; its file patterns when left out.");
    internal static readonly KeyShape SourceFiles = new("files", new OneOrManyShape(new FileShape("ground/*.hgt")), "Files, folders or patterns with *.", Required: true);
    internal static readonly KeyShape SourceKind = new("kind", new ChoiceShape("bare-earth", "surface"), "Whether the heights are of the ground alone, or of the top of trees and roofs.");
    internal static readonly KeyShape SourceDatum = new("datum", new TextShape("EGM96"), "Vertical datum of the heights.");
    internal static readonly KeyShape SourceTileIndex = new("tile-index", new FileShape("ground/tiles.txt"), "List of the tiles that the source has, one a line: a tile not listed is sea at 0 m.");
    internal static readonly MappingShape HeightSource = new("height source", SourceName, SourceFiles, SourceKind, SourceDatum, SourceTileIndex);
    internal static readonly MappingShape CoverSource = new("cover source", SourceName, SourceFiles);

    internal static readonly KeyShape Heights = new("heights", new ListShape(HeightSource), "Height sources; the finer one is used where they overlap.");
    internal static readonly KeyShape Cover = new("cover", new ListShape(CoverSource), "Land-cover sources.");
    internal static readonly MappingShape GroundShape = new("ground", Heights, Cover);
    internal static readonly KeyShape Ground = new("ground", GroundShape, "Height and cover files.");

    internal static readonly KeyShape RefractivityGradient = new("refractivity-gradient", new NumberShape(RefractivityMaps.LeastGradient, RefractivityMaps.MostGradient), "Mean fall of refractivity in the lowest kilometre, ΔN in N-units/km.");
    internal static readonly KeyShape SurfaceRefractivity = new("surface-refractivity", new NumberShape(RefractivityMaps.LeastSurface, RefractivityMaps.MostSurface), "Sea-level surface refractivity N0 in N-units.");
    internal static readonly KeyShape LowK = new("low-k", new NumberShape(0.2, 1.5), "Effective-earth factor of the worst air to plan for.");
    internal static readonly KeyShape ExternalNoise = new("external-noise", new QuantityShape(Dimension.Ratio, -10, 100, "3 dB"), "External noise figure above kT0B.");
    internal static readonly KeyShape NoiseEnvironment = new("noise-environment", new ChoiceShape("city", "residential", "rural", "quiet-rural"), "Surroundings whose man-made noise ITU-R P.372 gives, up to 250 MHz (quiet-rural: 30 MHz).");
    internal static readonly KeyShape AirMaps = new("maps", new FileShape("itu"), "Folder with the digital maps DN50.TXT and N050.TXT of ITU-R P.1812.");
    internal static readonly MappingShape AirShape = new("air", RefractivityGradient, SurfaceRefractivity, AirMaps, LowK, ExternalNoise, NoiseEnvironment);
    internal static readonly KeyShape Air = new("air", AirShape, "Refractivity, low k, noise.");

    internal static readonly KeyShape Margin = new("margin", new QuantityShape(Dimension.Ratio, 0, 60, "10 dB"), "Margin below which a link is tight.");
    internal static readonly KeyShape Time = new("time", new QuantityShape(Dimension.Percent, 1, 50, "50 %"), "Time percentage of the prediction.");
    internal static readonly KeyShape LocationPercent = new("location", new QuantityShape(Dimension.Percent, 1, 99, "50 %"), "Location percentage of the prediction.");
    internal static readonly MappingShape WantedShape = new("wanted", Margin, Time, LocationPercent);
    internal static readonly KeyShape Wanted = new("wanted", WantedShape, "What is wanted of a link.");

    internal static readonly KeyShape ModelError = new("model-error", new QuantityShape(Dimension.Ratio, 0, 40, "8 dB"), "Standard deviation of the prediction's own error.");
    internal static readonly KeyShape LocationSpread = new("location", new QuantityShape(Dimension.Ratio, 0, 40, "5 dB"), "Standard deviation of location variability.");
    internal static readonly KeyShape Fading = new("fading", new QuantityShape(Dimension.Ratio, 0, 40, "3 dB"), "Standard deviation of fading from packet to packet.");
    internal static readonly MappingShape SpreadShape = new("spread", ModelError, LocationSpread, Fading);
    internal static readonly KeyShape Spread = new("spread", SpreadShape, "What the prediction may be off by.");

    internal static readonly KeyShape Corrections = new("corrections", new KeyedShape(KeyNameShape.Pattern, CorrectionKeys.Shape), "Corrections of the prediction that were fitted to measured links.");
    internal static readonly KeyShape Correction = new("correction", new KeyNameShape("summer-2026"), "The one of 'corrections' that predictions use; without it none.");

    internal static readonly KeyShape Modem = new("modem", ModemKeys.Shape, "The modem setting of every station.", Required: true);
    internal static readonly KeyShape Traffic = new("traffic", TrafficKeys.Shape, "What each station sends, where its site does not say.");
    internal static readonly KeyShape Relaying = new("relaying", RelayingKeys.Shape, "How stations pass on what they hear.");
    internal static readonly KeyShape Wind = new("wind", WindKeys.Shape, "The basic wind, for every site that does not say otherwise.");
    internal static readonly KeyShape Sites = new("sites", new KeyedShape(KeyNameShape.Pattern, SiteKeys.Shape), "Your own sites.");
    internal static readonly KeyShape Neighbours = new("neighbours", new KeyedShape(KeyNameShape.Pattern, NeighbourKeys.Shape), "Other stations.");
    internal static readonly KeyShape Parts = new("parts", PartKeys.Shape, "Parts that fit-outs refer to by name.");

    internal static readonly MappingShape Shape = new("plan", Version, Name, Region, Include, Catalogue, Ground, Air, Modem, Traffic, Relaying, Wanted, Spread, Corrections, Correction, Sites, Neighbours, Links, Parts, Wind);

    /// <summary>An included file holds parts alone.</summary>
    internal static readonly MappingShape IncludedShape = new("included file", Version, Include, Parts);
}
