using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Plans;

namespace Mastwright.Storage.Plans;

/// <summary>Binds a site.</summary>
internal static class SiteBinder
{
    /// <summary>The site; null when it is no mapping or has no position.</summary>
    internal static Site? Bind(PlanBinding binding, PlanNode node, string path, string key)
    {
        if (MappingReader.Open(binding, node, path, SiteKeys.Shape) is not { } reader)
        {
            return null;
        }

        LocatedPoint? position = reader.Position(SiteKeys.Position);
        ImmutableArray<PlanItem> entries = reader.Keyed(SiteKeys.FitOuts);
        Site site = new()
        {
            Key = key,
            Formerly = Formerly(reader),
            Addresses = AddressBinder.Bind(reader),
            Name = reader.Text(SiteKeys.Name, key),
            Position = position ?? default,
            GroundHeightMetres = reader.Quantity(SiteKeys.GroundHeight),
            Surroundings = Surroundings(reader),
            Traffic = TrafficBinder.Bind(reader, SiteKeys.Traffic),
            Wind = WindBinder.Bind(reader, SiteKeys.Wind, binding.Wind),
            Weather = WeatherBinder.Bind(reader, position?.Point),
            Climate = WeatherBinder.Climate(reader, position?.Point),
            Hazards = HazardBinder.Bind(reader, SiteKeys.Hazards),
            InUse = reader.Key(SiteKeys.InUse),
            FitOuts = [.. entries.Select(fitOut => FitOutBinder.Bind(binding, fitOut.Node, fitOut.Path, fitOut.Key, reader.Find(SiteKeys.Hazards))).OfType<FitOut>()],
        };
        if (site.InUse.Length > 0 && !entries.Any(entry => entry.Key == site.InUse))
        {
            binding.Add(
                reader.Find(SiteKeys.InUse)!,
                reader.PathOf(SiteKeys.InUse),
                "plan-unknown-name",
                entries.IsEmpty ? "The site has no fit-out." : "The site has no fit-out of this key." + Near(site.InUse, entries.Select(entry => entry.Key)),
                entries.IsEmpty ? "no in-use for a trial site" : "one of " + string.Join(", ", entries.Take(20).Select(entry => entry.Key)));
        }

        reader.Done();
        return position is null ? null : site;
    }

    /// <summary>Earlier keys of a site or neighbour.</summary>
    internal static ImmutableArray<string> Formerly(MappingReader reader) =>
    [
        .. reader.Many(SiteKeys.Formerly)
            .Select(item => ScalarBinder.Key(reader.Binding, item.Node, item.Path, (KeyNameShape)((OneOrManyShape)SiteKeys.Formerly.Value).Item))
            .OfType<string>(),
    ];

    /// <summary>What stands close around a site or neighbour.</summary>
    internal static Surroundings Surroundings(MappingReader owner)
    {
        if (owner.Find(SiteKeys.Surroundings) is not { } node || MappingReader.Open(owner.Binding, node, owner.PathOf(SiteKeys.Surroundings), SiteKeys.SurroundingsShape) is not { } reader)
        {
            return new();
        }

        Surroundings surroundings = new()
        {
            ClutterKind = reader.Word(SiteKeys.Clutter),
            ClutterHeightMetres = reader.Quantity(SiteKeys.ClutterHeight),
            StreetWidthMetres = reader.Exact(SiteKeys.StreetWidth),
            WoodlandDepthMetres = reader.Exact(SiteKeys.WoodlandDepth),
            BuildingKind = reader.Word(SiteKeys.Building),
        };
        reader.Done();
        return surroundings;
    }

    /// <summary>A question that names the key that was most likely meant; empty when none is near.</summary>
    internal static string Near(string found, IEnumerable<string> keys) =>
        NearestWord.Of(found, keys.Take(10_000)) is { } near ? $" Did you mean '{near}'?" : "";
}
