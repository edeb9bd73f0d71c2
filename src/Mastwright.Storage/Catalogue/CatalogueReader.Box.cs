using Mastwright.Quantities;
using Mastwright.Station.BoxClimate;
using Mastwright.Storage.Plans;

namespace Mastwright.Storage.Catalogue;

/// <summary>Binds the rows of the box.</summary>
internal sealed partial class CatalogueReader
{
    private static string[] BoxSections => ["box-materials", "box-colours", "box-seals", "box-places", "metals"];

    private static readonly string[] BoxMaterialKeys = ["key", "w-per-m2-k", "emissivity", "source"];
    private static readonly string[] BoxColourKeys = ["key", "absorptivity", "source"];
    private static readonly string[] BoxSealKeys = ["key", "air-changes-per-hour", "breathes", "source"];
    private static readonly string[] BoxPlaceKeys = ["key", "meaning", "needed", "galvanic-v", "source"];
    private static readonly string[] MetalKeys = ["key", "volts", "source"];

    private BoxCatalogue Box(PlanNode root) => new()
    {
        Materials = new(Rows(root, "box-materials", BoxMaterial), row => row.Key),
        Colours = new(Rows(root, "box-colours", BoxColour), row => row.Key),
        Seals = new(Rows(root, "box-seals", BoxSeal), row => row.Key),
        Places = new(Rows(root, "box-places", BoxPlace), row => row.Key),
        Metals = new(Rows(root, "metals", Metal), row => row.Key),
    };

    private BoxMaterialRow? BoxMaterial(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, BoxMaterialKeys);
        double? through = Number(row, place, "w-per-m2-k", 0.1, 20, required: true);
        double? emissivity = Number(row, place, "emissivity", 0.01, 1, required: true);
        if (through is { } given && emissivity is { } outside && !BoxBalance.IsPossible(given, outside))
        {
            Fault(row, place + "/w-per-m2-k", "lets more heat through than its outside film alone gives off in still air, 4 + 5.7 · emissivity");
            return null;
        }

        return Text(row, place, "source", required: true) is { } source && through is { } heat && emissivity is { } share ? new(key, heat, share, source) : null;
    }

    private BoxColourRow? BoxColour(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, BoxColourKeys);
        double? absorptivity = Number(row, place, "absorptivity", 0, 1, required: true);
        return Text(row, place, "source", required: true) is { } source && absorptivity is { } share ? new(key, share, source) : null;
    }

    private BoxSealRow? BoxSeal(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, BoxSealKeys);
        Estimate? changes = Rising(row, place, "air-changes-per-hour", 0, 1000, "give the air changes in an hour as [least, middle, most]");
        string? breathes = Text(row, place, "breathes", required: true);
        if (breathes is not (null or "yes" or "no"))
        {
            Fault(row, place + "/breathes", "must be yes or no");
            return null;
        }

        return Text(row, place, "source", required: true) is { } source && changes is { } range && breathes is not null ? new(key, range, breathes == "yes", source) : null;
    }

    private BoxPlaceRow? BoxPlace(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, BoxPlaceKeys);
        string? needed = Text(row, place, "needed", required: true);
        double? volts = Number(row, place, "galvanic-v", 0, 2, required: true);
        string meaning = Text(row, place, "meaning", required: false) ?? key;
        if (!IngressCode.TryParse(needed, out IngressCode? code) && needed is not null)
        {
            Fault(row, place + "/needed", $"'{needed}' is no IP code, such as IP65");
        }

        return Text(row, place, "source", required: true) is { } source && code is not null && volts is { } apart ? new(key, meaning, code, apart, source) : null;
    }

    private MetalRow? Metal(PlanNode row, string place, string key)
    {
        KnownKeys(row, place, MetalKeys);
        double? volts = Number(row, place, "volts", -1, 3, required: true);
        return Text(row, place, "source", required: true) is { } source && volts is { } index ? new(key, index, source) : null;
    }
}
