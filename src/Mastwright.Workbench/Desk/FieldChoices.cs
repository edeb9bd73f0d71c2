using System.Collections.Immutable;
using Mastwright.Station;
using Mastwright.Storage.Plans;

namespace Mastwright.Workbench.Desk;

/// <summary>What may stand in a value of a fit-out: the words of its kind, or the rows of the catalogue that it names.</summary>
internal static class FieldChoices
{
    /// <summary>The keys to choose from; empty where any value of its kind may stand.</summary>
    internal static ImmutableArray<string> Of(PlanField field, StationCatalogue rows)
    {
        if (!field.Choices.IsEmpty)
        {
            return field.Choices;
        }

        string[] steps = field.Path.Split('/');
        IEnumerable<string> keys = (steps[0], field.Key) switch
        {
            ("feed", "line") => rows.LineTypes.Select(row => row.Key),
            ("supply", "data-cable") => rows.Supply.Cables.Where(row => row.IsData).Select(row => row.Key),
            ("supply", "dc-cable") => rows.Supply.Cables.Where(row => !row.IsData).Select(row => row.Key),
            ("supply", "kind") => rows.Supply.Converters.Select(row => row.Key),
            ("supply", "battery") => rows.Supply.Cells.Select(row => row.Key),
            ("supply", "power-over-cable") => rows.Supply.Classes.Select(row => row.Key),
            ("supply", "board") => rows.Supply.Loads.Where(row => !row.IsRadio).Select(row => row.Key),
            ("supply", "radio") => rows.Supply.Loads.Where(row => row.IsRadio).Select(row => row.Key),
            ("mast", "size") => rows.Structure.Tubes.Keys,
            ("mast", "grade") => rows.Structure.Grades.Keys,
            ("mast", "clamp") => rows.Box.Metals.Keys,
            ("box", "material") => rows.Box.Materials.Keys,
            ("box", "colour") => rows.Box.Colours.Keys,
            ("box", "seal") => rows.Box.Seals.Keys,
            ("box", "exposure") => rows.Box.Places.Keys,
            ("earthing", "soil") => rows.Earthing.Soils.Keys,
            ("earthing", "class") => rows.Earthing.Classes.Keys,
            _ => [],
        };
        return [.. keys];
    }
}
