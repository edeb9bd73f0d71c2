using Mastwright.Quantities;

namespace Mastwright.Storage.Plans;

/// <summary>Keys of a correction of the prediction.</summary>
internal static class CorrectionKeys
{
    internal static readonly KeyShape Source = new("source", new TextShape("42 links of 6 stations, records of 2026-06-01..2026-07-15"), "What it was fitted to.");
    internal static readonly KeyShape Offset = new("offset", new QuantityShape(Dimension.Ratio, -60, 60, "-3.2 ± 1.5 dB", Ranged: true), "Added to the predicted level of every link.", Required: true);
    internal static readonly KeyShape CoverHeight = new("cover-height", new QuantityShape(Dimension.Length, 0, 100, "12 ± 4 m", Ranged: true), "Height of cover along the whole path, where the ground has no cover file.");
    internal static readonly KeyShape StationHeight = new("station-height", new QuantityShape(Dimension.Length, 0.1, 500, "10 ± 5 m", Ranged: true), "Height above ground of each station whose height the plan does not give.");
    internal static readonly KeyShape Spread = new("spread", new QuantityShape(Dimension.Ratio, 0, 40, "7.9 dB"), "Standard deviation of what remains: stands in for spread/model-error and spread/location.", Required: true);
    internal static readonly KeyShape AppliesTo = new("applies-to", new OneOrManyShape(new KeyNameShape("ferry-house")), "Stations whose links it is for, at either end; without it all.");
    internal static readonly KeyShape OwnOffset = new("offset", new QuantityShape(Dimension.Ratio, -60, 60, "1.2 ± 0.6 dB", Ranged: true), "Added to the predicted level of what this station hears, beside the common offset.", Required: true);
    internal static readonly KeyShape OwnSpread = new("spread", new QuantityShape(Dimension.Ratio, 0, 40, "7.1 dB"), "Standard deviation of what then remains; without it that of the correction.");
    internal static readonly MappingShape OwnShape = new("own offset", OwnOffset, OwnSpread);
    internal static readonly KeyShape Stations = new("stations", new KeyedShape(KeyNameShape.Pattern, OwnShape), "What single stations are off by, each for that station alone.");

    internal static readonly MappingShape Shape = new("correction", Source, Offset, CoverHeight, StationHeight, Spread, AppliesTo, Stations);
}
