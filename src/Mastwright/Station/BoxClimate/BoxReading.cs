using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.BoxClimate;

/// <summary>Finds the numbers of a box; what is missing is named.</summary>
internal static class BoxReading
{
    /// <summary>The box; null when something is missing, which a finding then says.</summary>
    internal static BoxModel? Of(BoxInput input, Estimate? heat, Estimate? outside, List<Finding> findings, List<Assumption> assumptions)
    {
        BoxFit box = input.Box;
        BoxCatalogue rows = input.Catalogue.Box;
        int before = findings.Count;
        BoxMaterialRow? material = Row(rows.Materials, "material", box.Material);
        BoxColourRow? colour = Row(rows.Colours, "colour", box.Colour);
        BoxSealRow? seal = Row(rows.Seals, "seal", box.Seal);
        MissingKeys missing = new();
        missing.Need(box.Surface is null, "width, height and depth");
        missing.Need(box.Material.Length == 0, "material");
        missing.Need(box.Colour.Length == 0 && box.Shade != BoxShade.None, "colour");
        missing.Need(box.Seal.Length == 0, "seal");
        missing.Need(outside is null, "outside");
        missing.Need(heat is null, "heat, or the supply with its loads");
        if (missing.Any)
        {
            findings.Add(Finding.Unknown("box-climate-unknown", input.Path, "temperature in the box", ("missing", missing.Listed)));
        }

        if (findings.Count > before)
        {
            return null;
        }

        Assume(input, assumptions);
        return new()
        {
            Surface = box.Surface!.Value,
            Mounting = box.Mounting,
            Material = material!,
            Absorptivity = colour?.Absorptivity ?? 0,
            OpenShare = box.Shade switch { BoxShade.None => 0, BoxShade.Shaded => BoxDefaults.ShadedShare, _ => 1 },
            AirChangesPerHour = seal!.AirChangesPerHour,
            OwnWatts = heat!.Value.Median,
        };

        T? Row<T>(KeyedRows<T> of, string key, string given)
            where T : class
        {
            T? row = given.Length == 0 ? null : of.Find(given);
            if (row is null && given.Length > 0)
            {
                findings.Add(NotListed(input.Path, key, given, of));
            }

            return row;
        }
    }

    internal static Finding NotListed<T>(string path, string kind, string given, KeyedRows<T> rows)
        where T : class => Finding.Unknown(
            "box-row-unknown", StationDefaults.Join(path, kind), kind, ("kind", kind), ("given", given),
            ("near", NearestWord.Of(given, rows.Keys) is { } near ? $" Did you mean '{near}'?" : ""), ("known", rows.Listed()));

    private static void Assume(BoxInput input, List<Assumption> assumptions)
    {
        BoxFit box = input.Box;
        if (box.Shade != BoxShade.None)
        {
            assumptions.Add(BoxDefaults.Sun(input.Path));
            assumptions.Add(BoxDefaults.Night(input.Path));
        }

        if (box.Shade == BoxShade.NotSaid)
        {
            assumptions.Add(BoxDefaults.Open(input.Path));
        }
        else if (box.Shade == BoxShade.Shaded)
        {
            assumptions.Add(BoxDefaults.Shaded(input.Path));
        }

        if (box.Mounting == BoxMounting.NotSaid)
        {
            assumptions.Add(BoxDefaults.Mounting(input.Path));
        }

        assumptions.AddRange(box.Parts.Where(part => part.RatedCelsius is not null && part.RiseKelvin is null).Select(BoxDefaults.Rise));
    }
}
