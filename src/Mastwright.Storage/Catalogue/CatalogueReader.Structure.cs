using Mastwright.Quantities;
using Mastwright.Station.Earthing;
using Mastwright.Station.Mast;
using Mastwright.Station.Wind;
using Mastwright.Storage.Plans;

namespace Mastwright.Storage.Catalogue;

/// <summary>Binds the rows of mast, wind and earth.</summary>
internal sealed partial class CatalogueReader
{
    private static string[] StructureSections =>
        ["terrain-categories", "wind-exposures", "ice-classes", "tubes", "tube-grades", "lightning-classes", "earth-conductors", "soils"];

    private static readonly string[] TerrainKeys = ["key", "meaning", "roughness-m", "least-height-m", "source"];
    private static readonly string[] WindExposureKeys = ["key", "meaning", "exponent", "gradient-height-m", "source"];
    private static readonly string[] IceKeys = ["key", "thickness-mm", "kg-per-m", "density", "source"];
    private static readonly string[] TubeKeys = ["key", "outer-diameter-mm", "wall-mm", "material", "source"];
    private static readonly string[] GradeKeys = ["key", "name", "material", "yield-mpa", "modulus-gpa", "density", "weld-share", "material-factor", "source"];
    private static readonly string[] LightningKeys = ["key", "sphere-m", "separation-factor", "source"];
    private static readonly string[] ConductorKeys = ["key", "mm2", "source"];
    private static readonly string[] SoilKeys = ["key", "ohm-m", "source"];

    private StructureCatalogue Structure(PlanNode root) => new()
    {
        Terrains = new(Rows(root, "terrain-categories", Terrain), row => row.Key),
        Exposures = new(Rows(root, "wind-exposures", WindExposure), row => row.Key),
        Ice = new(Rows(root, "ice-classes", Ice), row => row.Key),
        Tubes = new(Rows(root, "tubes", Tube), row => row.Key),
        Grades = new(Rows(root, "tube-grades", Grade), row => row.Key),
    };

    private EarthingCatalogue Earthing(PlanNode root) => new()
    {
        Classes = new(Rows(root, "lightning-classes", Lightning), row => row.Key),
        Conductors = new(Rows(root, "earth-conductors", EarthConductor), row => row.Key),
        Soils = new(Rows(root, "soils", Soil), row => row.Key),
    };

    private TerrainRow? Terrain(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, TerrainKeys);
        double? roughness = Number(row, place, "roughness-m", 0.0001, 10, required: true);
        double? least = Number(row, place, "least-height-m", 0.1, 50, required: true);
        string meaning = Text(row, place, "meaning", required: false) ?? "";
        return Text(row, place, "source", required: true) is { } source && roughness is { } length && least is { } height && height > length
            ? new(key, meaning, length, height, source)
            : null;
    }

    private ExposureRow? WindExposure(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, WindExposureKeys);
        double? exponent = Number(row, place, "exponent", 2, 20, required: true);
        double? gradient = Number(row, place, "gradient-height-m", 50, 1000, required: true);
        string meaning = Text(row, place, "meaning", required: false) ?? "";
        return Text(row, place, "source", required: true) is { } source && exponent is { } power && gradient is { } height
            ? new(key, meaning, power, height, source)
            : null;
    }

    private IceRow? Ice(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, IceKeys);
        double? thickness = Number(row, place, "thickness-mm", 0, 500, required: false);
        double? mass = Number(row, place, "kg-per-m", 0, 500, required: false);
        double? density = Number(row, place, "density", 50, 1000, required: true);
        if (thickness is null == mass is null)
        {
            Fault(row, place, "give thickness-mm (glaze) or kg-per-m (rime), one of the two");
            return null;
        }

        return Text(row, place, "source", required: true) is { } source && density is { } cubic ? new(key, thickness / 1000, mass, cubic, source) : null;
    }

    private TubeRow? Tube(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, TubeKeys);
        double? diameter = Number(row, place, "outer-diameter-mm", 1, 2000, required: true);
        double? wall = Number(row, place, "wall-mm", 0.1, 1000, required: true);
        TubeMaterial? material = Material(row, place);
        string? source = Text(row, place, "source", required: true);
        if (diameter is not { } outer || wall is not { } thick || material is null || source is null)
        {
            return null;
        }

        if (TubeSection.Problem(outer / 1000, thick / 1000) is { } problem)
        {
            Fault(row, place + "/wall-mm", problem);
            return null;
        }

        return new(key, outer / 1000, thick / 1000, material.Value, source);
    }

    private TubeGradeRow? Grade(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, GradeKeys);
        string? name = Text(row, place, "name", required: true);
        TubeMaterial? material = Material(row, place);
        double? yield = Number(row, place, "yield-mpa", 10, 2000, required: true);
        double? modulus = Number(row, place, "modulus-gpa", 1, 400, required: true);
        double? density = Number(row, place, "density", 500, 20_000, required: true);
        double? weld = Number(row, place, "weld-share", 0.05, 1, required: true);
        double? factor = Number(row, place, "material-factor", 1, 3, required: true);
        return Text(row, place, "source", required: true) is { } source && name is not null && material is { } of
            && yield is { } strength && modulus is { } stiffness && density is { } mass && weld is { } share && factor is { } partial
            ? new(key, name, of, strength * 1e6, stiffness * 1e9, mass, share, partial, source)
            : null;
    }

    private LightningClassRow? Lightning(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, LightningKeys);
        double? sphere = Number(row, place, "sphere-m", 1, 200, required: true);
        double? separation = Number(row, place, "separation-factor", 0.001, 1, required: true);
        return Text(row, place, "source", required: true) is { } source && sphere is { } radius && separation is { } factor ? new(key, radius, factor, source) : null;
    }

    private EarthConductorRow? EarthConductor(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, ConductorKeys);
        double? area = Number(row, place, "mm2", 0.5, 1000, required: true);
        return Text(row, place, "source", required: true) is { } source && area is { } least ? new(key, least, source) : null;
    }

    private SoilRow? Soil(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, SoilKeys);
        Estimate? resistivity = Rising(row, place, "ohm-m", 0.1, 1e6, "give the resistivity in Ω·m as [lowest, middle, highest]");
        return Text(row, place, "source", required: true) is { } source && resistivity is { } range ? new(key, range, source) : null;
    }

    private TubeMaterial? Material(PlanNode row, string place)
    {
        switch (Text(row, place, "material", required: true))
        {
            case "steel":
                return TubeMaterial.Steel;
            case "aluminium":
                return TubeMaterial.Aluminium;
            case null:
                return null;
            case { } other:
                Fault(row, place + "/material", $"'{other}' is not a material of tubes; steel or aluminium is");
                return null;
        }
    }
}
