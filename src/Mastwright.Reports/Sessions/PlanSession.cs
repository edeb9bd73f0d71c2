using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Plans;
using Mastwright.Propagation;
using Mastwright.Station;
using Mastwright.Storage.Air;
using Mastwright.Storage.Catalogue;
using Mastwright.Storage.Ground;
using Mastwright.Storage.Plans;

namespace Mastwright.Reports.Sessions;

/// <summary>A plan that was read, its ground opened, ready to be examined.</summary>
internal sealed class PlanSession : IDisposable
{
    private const int MostNotes = 20;

    private PlanSession(PlanDocument document, GroundLibrary ground, StationCatalogue catalogue, RefractivityMaps? maps)
    {
        Document = document;
        Ground = ground;
        // The library knows the datum that a file states itself where the plan gives none.
        Assessment = new(document.Plan with { Heights = ground.HeightSources }, catalogue, ground.MosaicFor, maps);
    }

    internal PlanDocument Document { get; }

    internal Plan Plan => Document.Plan;

    internal GroundLibrary Ground { get; }

    internal Assessment Assessment { get; }

    /// <summary>Opens a plan; tells what is wrong, line by line, and gives null when it cannot be used.</summary>
    internal static PlanSession? Open(string path, bool allowOutside, Action<string> tell)
    {
        if (Read(path, allowOutside, tell) is not { } document)
        {
            return null;
        }

        StationCatalogue? catalogue = Catalogue(document, allowOutside, tell);
        bool mapsRead = Maps(document, allowOutside, tell, out RefractivityMaps? maps);
        GroundLibrary ground = GroundLibrary.Open(document.Folder, document.Plan.Heights, document.Plan.Covers, new() { AllowOutside = allowOutside });
        foreach (GroundProblem problem in ground.Problems)
        {
            tell(Place(document, problem) + problem);
        }

        if (ground.Problems.Length == 0 && mapsRead && catalogue is not null)
        {
            return new(document, ground, catalogue, maps);
        }

        ground.Dispose();
        return null;
    }

    /// <summary>The catalogue that ships with the plan's own files over it; tells what is wrong and gives null when one cannot be used.</summary>
    internal static StationCatalogue? Catalogue(PlanDocument document, bool allowOutside, Action<string> tell)
    {
        StationCatalogue? catalogue = PlanCatalogue.Load(document.Folder, document.Plan.CatalogueFiles, allowOutside, out ImmutableArray<PlanProblem> problems);
        TellOfFiles(document, "catalogue", problems, tell);
        return catalogue;
    }

    /// <summary>Reads a plan; tells what is wrong and gives null when it cannot be used.</summary>
    internal static PlanDocument? Read(string path, bool allowOutside, Action<string> tell)
    {
        PlanReading reading = PlanFile.Read(path, new() { AllowOutside = allowOutside });
        foreach (PlanProblem problem in reading.Problems)
        {
            tell(problem.ToString());
        }

        if (reading.Document is { } document)
        {
            foreach (PlanProblem note in document.Notes.Take(MostNotes))
            {
                tell($"Note: {note}");
            }

            if (document.Notes.Length > MostNotes)
            {
                tell(string.Create(CultureInfo.InvariantCulture, $"Note: and {document.Notes.Length - MostNotes} more of this kind"));
            }
        }

        return reading.Document;
    }

    /// <summary>Files that turned out to be damaged while they were read; tells them and says whether there are any.</summary>
    internal bool TellDamage(Action<string> tell)
    {
        foreach (GroundProblem problem in Ground.Problems)
        {
            tell(Place(Document, problem) + problem);
        }

        return Ground.Problems.Length > 0;
    }

    /// <summary>Where in the plan the source of a problem stands: "plan.yaml:11:14: ground/heights/1/files: ".</summary>
    private static string Place(PlanDocument document, GroundProblem problem)
    {
        int height = document.Plan.Heights.IndexOf(document.Plan.Heights.FirstOrDefault(source => source.Name == problem.SourceName)!);
        int cover = document.Plan.Covers.IndexOf(document.Plan.Covers.FirstOrDefault(source => source.Name == problem.SourceName)!);
        string path = height >= 0
            ? string.Create(CultureInfo.InvariantCulture, $"ground/heights/{height + 1}/files")
            : string.Create(CultureInfo.InvariantCulture, $"ground/cover/{cover + 1}/files");
        return $"{document.Sources.FindNearest(path)}: {path}: ";
    }

    public void Dispose() => Ground.Dispose();

    /// <summary>Reads the maps of the air where the plan names some; false, after telling what is wrong, when they cannot be used.</summary>
    private static bool Maps(PlanDocument document, bool allowOutside, Action<string> tell, out RefractivityMaps? maps)
    {
        maps = null;
        if (document.Plan.Air.MapFolder.Length == 0)
        {
            return true;
        }

        maps = RefractivityFolder.Load(document.Folder, document.Plan.Air.MapFolder, allowOutside, out ImmutableArray<PlanProblem> problems);
        TellOfFiles(document, "air/maps", problems, tell);
        return maps is not null;
    }

    /// <summary>Tells problems of files that the plan names; one that has no line of its own is told with the place where the plan names the file.</summary>
    private static void TellOfFiles(PlanDocument document, string path, ImmutableArray<PlanProblem> problems, Action<string> tell)
    {
        foreach (PlanProblem problem in problems)
        {
            tell(problem.Line > 0
                ? problem.ToString()
                : $"{document.Sources.FindNearest(path)}: {path}: {problem with { Path = "" }}");
        }
    }
}
