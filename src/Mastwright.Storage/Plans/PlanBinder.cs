using System.Collections.Immutable;
using Mastwright.Ground;
using Mastwright.Plans;
using Mastwright.Station.Radio;

namespace Mastwright.Storage.Plans;

/// <summary>Binds the top of a plan.</summary>
internal static class PlanBinder
{
    /// <summary>The plan; complete only when no problem was added.</summary>
    internal static Plan? Bind(PlanBinding binding, PlanNode root, PartCollector parts)
    {
        if (MappingReader.Open(binding, root, "", PlanKeys.Shape) is not { } reader)
        {
            return null;
        }

        PlanVersion.Check(reader);
        parts.Collect(reader);
        (ImmutableArray<HeightSource> heights, ImmutableArray<CoverSource> covers) = Ground(reader);
        binding.Wind = reader.Find(PlanKeys.Wind);
        ImmutableArray<Site> sites = [.. reader.Keyed(PlanKeys.Sites).Select(site => SiteBinder.Bind(binding, site.Node, site.Path, site.Key)).OfType<Site>()];
        ImmutableArray<Neighbour> neighbours = [.. reader.Keyed(PlanKeys.Neighbours).Select(one => NeighbourBinder.Bind(binding, one.Node, one.Path, one.Key)).OfType<Neighbour>()];
        Plan plan = new()
        {
            Name = reader.Text(PlanKeys.Name),
            Region = reader.Text(PlanKeys.Region),
            CatalogueFiles = Files(reader, PlanKeys.Catalogue),
            Heights = heights,
            Covers = covers,
            Air = Air(reader),
            Modem = ModemBinder.Bind(reader),
            Traffic = TrafficBinder.Bind(reader, PlanKeys.Traffic) ?? new(),
            Relaying = RelayingBinder.Bind(reader),
            Wind = WindBinder.Bind(reader, PlanKeys.Wind),
            Wanted = Wanted(reader),
            Spread = Spread(reader),
            Corrections = CorrectionBinder.Bind(reader),
            CorrectionInUse = CorrectionBinder.InUse(reader),
            Sites = sites,
            Neighbours = neighbours,
            Links = LinkBinder.Bind(reader),
        };
        reader.Done();
        return plan;
    }

    private static (ImmutableArray<HeightSource> Heights, ImmutableArray<CoverSource> Covers) Ground(MappingReader plan)
    {
        if (Open(plan, PlanKeys.Ground, PlanKeys.GroundShape) is not { } ground)
        {
            return ([], []);
        }

        ImmutableArray<HeightSource> heights = [.. ground.List(PlanKeys.Heights).Select(item => Heights(plan.Binding, item.Node, item.Path)).OfType<HeightSource>()];
        ImmutableArray<CoverSource> covers = [.. ground.List(PlanKeys.Cover).Select(item => Cover(plan.Binding, item.Node, item.Path)).OfType<CoverSource>()];
        ground.Done();
        return (heights, covers);
    }

    private static HeightSource? Heights(PlanBinding binding, PlanNode node, string path)
    {
        if (MappingReader.Open(binding, node, path, PlanKeys.HeightSource) is not { } source)
        {
            return null;
        }

        ImmutableArray<string> files = Files(source, PlanKeys.SourceFiles);
        HeightSource heights = new()
        {
            Name = source.Text(PlanKeys.SourceName, string.Join(", ", files)),
            Files = files,
            Kind = source.Choice(PlanKeys.SourceKind) switch { 0 => HeightKind.BareEarth, 1 => HeightKind.Surface, _ => HeightKind.Unknown },
            Datum = source.Text(PlanKeys.SourceDatum),
            TileIndex = FileName(source, PlanKeys.SourceTileIndex),
        };
        source.Done();
        return heights;
    }

    private static CoverSource? Cover(PlanBinding binding, PlanNode node, string path)
    {
        if (MappingReader.Open(binding, node, path, PlanKeys.CoverSource) is not { } source)
        {
            return null;
        }

        ImmutableArray<string> files = Files(source, PlanKeys.SourceFiles);
        CoverSource cover = new() { Name = source.Text(PlanKeys.SourceName, string.Join(", ", files)), Files = files };
        source.Done();
        return cover;
    }

    private static ImmutableArray<string> Files(MappingReader reader, KeyShape key) =>
        [.. reader.Many(key).Select(item => FileName(reader.Binding, item.Node, item.Path, ((OneOrManyShape)key.Value).Item)).Where(name => name.Length > 0)];

    private static string FileName(MappingReader reader, KeyShape key) =>
        reader.Find(key) is { } node ? FileName(reader.Binding, node, reader.PathOf(key), key.Value) : "";

    private static string FileName(PlanBinding binding, PlanNode node, string path, ValueShape shape)
    {
        if (ScalarBinder.Text(binding, node, path, shape)?.Trim() is not { } name)
        {
            return "";
        }

        if (binding.Folder.Refusal(name) is { } refusal)
        {
            binding.Add(node, path, "plan-outside", refusal, shape.Wanted);
            return "";
        }

        return name;
    }

    private static AirPlan Air(MappingReader plan)
    {
        if (Open(plan, PlanKeys.Air, PlanKeys.AirShape) is not { } air)
        {
            return new();
        }

        AirPlan bound = new()
        {
            RefractivityGradient = air.Number(PlanKeys.RefractivityGradient),
            SurfaceRefractivity = air.Number(PlanKeys.SurfaceRefractivity),
            LowKFactor = air.Number(PlanKeys.LowK),
            ExternalNoiseFigureDb = air.Exact(PlanKeys.ExternalNoise),
            NoiseEnvironment = air.Choice(PlanKeys.NoiseEnvironment) switch
            {
                0 => NoiseEnvironment.City,
                1 => NoiseEnvironment.Residential,
                2 => NoiseEnvironment.Rural,
                3 => NoiseEnvironment.QuietRural,
                _ => null,
            },
            MapFolder = FileName(air, PlanKeys.AirMaps),
        };
        air.Done();
        return bound;
    }

    private static WantedPlan Wanted(MappingReader plan)
    {
        if (Open(plan, PlanKeys.Wanted, PlanKeys.WantedShape) is not { } wanted)
        {
            return new();
        }

        WantedPlan bound = new()
        {
            MarginDb = wanted.Exact(PlanKeys.Margin),
            TimePercent = wanted.Exact(PlanKeys.Time),
            LocationPercent = wanted.Exact(PlanKeys.LocationPercent),
        };
        wanted.Done();
        return bound;
    }

    private static SpreadPlan Spread(MappingReader plan)
    {
        if (Open(plan, PlanKeys.Spread, PlanKeys.SpreadShape) is not { } spread)
        {
            return new();
        }

        SpreadPlan bound = new()
        {
            ModelErrorDb = spread.Exact(PlanKeys.ModelError),
            LocationDb = spread.Exact(PlanKeys.LocationSpread),
            FadingDb = spread.Exact(PlanKeys.Fading),
        };
        spread.Done();
        return bound;
    }

    private static MappingReader? Open(MappingReader plan, KeyShape key, MappingShape shape) =>
        plan.Find(key) is { } node ? MappingReader.Open(plan.Binding, node, plan.PathOf(key), shape) : null;
}
