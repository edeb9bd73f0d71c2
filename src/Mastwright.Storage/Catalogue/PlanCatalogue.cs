using System.Collections.Immutable;
using Mastwright.Station;
using Mastwright.Storage.Plans;

namespace Mastwright.Storage.Catalogue;

/// <summary>The catalogue of a plan: the rows that ship, with the plan's own files laid over them in their order.</summary>
public static class PlanCatalogue
{
    /// <summary>Reads the files; null when one cannot be used.</summary>
    /// <param name="planFolder">Folder of the plan.</param>
    /// <param name="files">The files as the plan names them, relative to the plan.</param>
    /// <param name="allowOutside">Whether they may lie outside the plan's folder.</param>
    /// <param name="problems">Everything that is wrong with all of them; empty when nothing is.</param>
    public static StationCatalogue? Load(string planFolder, ImmutableArray<string> files, bool allowOutside, out ImmutableArray<PlanProblem> problems)
    {
        ArgumentException.ThrowIfNullOrEmpty(planFolder);
        PlanFolder inside = new(planFolder, allowOutside);
        StationCatalogue catalogue = StationCatalogueFile.LoadBuiltIn();
        List<PlanProblem> wrong = [];
        foreach (string file in files)
        {
            if (inside.Resolve(file, out string refusal) is not { } full)
            {
                wrong.Add(new() { Code = "catalogue", File = file, Path = "catalogue", Message = refusal, Wanted = "a catalogue file relative to the plan, such as catalogue.yaml" });
            }
            else if (!StationCatalogueFile.TryLoad(full, catalogue, out catalogue, out ImmutableArray<CatalogueFault> faults))
            {
                wrong.AddRange(faults.Select(fault => OfFault(file, fault)));
            }
        }

        problems = [.. wrong];
        return wrong.Count == 0 ? catalogue : null;
    }

    private static PlanProblem OfFault(string file, CatalogueFault fault) => new()
    {
        Code = "catalogue",
        File = file,
        Line = (int)Math.Min(fault.Line, int.MaxValue),
        Column = fault.Line > 0 ? 1 : 0,
        Path = fault.Key,
        Message = ScalarBinder.Sentence(fault.Text),
    };
}
