using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Geodesy;
using Mastwright.Ground;
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

    private readonly StationCatalogue rows;
    private readonly Lazy<string> groundHash;
    private readonly RefractivityMaps? maps;

    private PlanSession(PlanDocument document, Plan plan, GroundLibrary ground, StationCatalogue catalogue, RefractivityMaps? maps)
    {
        Document = document;
        Plan = plan;
        Ground = ground;
        rows = catalogue;
        this.maps = maps;
        groundHash = new(ground.FilesHash);
        // The library knows the datum that a file states itself where the plan gives none.
        Assessment = new(plan with { Heights = ground.HeightSources }, catalogue, ground.MosaicFor, maps);
    }

    internal PlanDocument Document { get; }

    /// <summary>The plan: the document's, or a trial that stands in no file.</summary>
    internal Plan Plan { get; }

    internal GroundLibrary Ground { get; }

    /// <summary>Name, size and time of every ground file when it was opened, as one hash.</summary>
    internal string GroundHash => groundHash.Value;

    internal Assessment Assessment { get; }

    /// <summary>The catalogue that ships with the program, with the plan's own files over it.</summary>
    internal StationCatalogue Rows => rows;

    /// <summary>Opens a plan; tells what is wrong, line by line, and gives null when it cannot be used.</summary>
    /// <param name="path">The plan file.</param>
    /// <param name="allowOutside">Whether the plan may name files outside its folder.</param>
    /// <param name="tell">Told each line of what is wrong, and each note.</param>
    /// <param name="cacheBytes">Most bytes of ground kept in memory between uses; null for what the library finds usual.</param>
    /// <param name="before">An earlier reading: its ground is kept where the plan still names the same.</param>
    internal static PlanSession? Open(string path, bool allowOutside, Action<string> tell, long? cacheBytes = null, PlanSession? before = null) =>
        Read(path, allowOutside, tell) is { } document ? Over(document, allowOutside, tell, cacheBytes, before) : null;

    /// <summary>Opens what a plan names: its parts, its air and its ground.</summary>
    /// <inheritdoc cref="Open"/>
    internal static PlanSession? Over(PlanDocument document, bool allowOutside, Action<string> tell, long? cacheBytes = null, PlanSession? before = null)
    {
        StationCatalogue? catalogue = Catalogue(document, allowOutside, tell);
        bool mapsRead = Maps(document, allowOutside, tell, out RefractivityMaps? maps);
        bool sameGround = before is not null && before.StandsOnTheGroundOf(document);
        GroundLibraryOptions options = new() { AllowOutside = allowOutside };
#pragma warning disable CA2000 // It goes into the session, or is disposed below.
        GroundLibrary ground = sameGround
            ? before!.Ground
            : GroundLibrary.Open(document.Folder, document.Plan.Heights, document.Plan.Covers, cacheBytes is { } bytes ? options with { CacheBytes = bytes } : options);
#pragma warning restore CA2000
        foreach (GroundProblem problem in ground.Problems)
        {
            tell(Place(document, problem) + problem);
        }

        if (ground.Problems.Length == 0 && mapsRead && catalogue is not null)
        {
            return new(document, document.Plan, ground, catalogue, maps);
        }

        if (!sameGround)
        {
            ground.Dispose();
        }

        return null;
    }

    /// <summary>The examinations of another plan over the same ground, parts and air: a trial that stands in no file.</summary>
    internal Assessment Trial(Plan plan) => new(plan with { Heights = Ground.HeightSources }, rows, Ground.MosaicFor, maps);

    /// <summary>The examinations of this plan over ground that was cut before.</summary>
    internal Assessment Over(Func<GeoPoint, GeoPoint, GroundMosaic> cut) => new(Plan with { Heights = Ground.HeightSources }, rows, cut, maps);

    /// <summary>This session with another plan in place of its own, over the same ground, parts and air.</summary>
    internal PlanSession With(Plan plan) => new(Document, plan, Ground, rows, maps);

    /// <summary>The catalogue that ships with the plan's own files over it; tells what is wrong and gives null when one cannot be used.</summary>
    internal static StationCatalogue? Catalogue(PlanDocument document, bool allowOutside, Action<string> tell)
    {
        StationCatalogue? catalogue = PlanCatalogue.Load(document.Folder, document.Plan.CatalogueFiles, allowOutside, out ImmutableArray<PlanProblem> problems);
        TellOfFiles(document, "catalogue", problems, tell);
        if (catalogue is null)
        {
            return null;
        }

        ImmutableArray<PlanProblem> impossible = SupplyAgainstRows.Check(document, catalogue.Supply);
        TellOfFiles(document, "catalogue", impossible, tell);
        return impossible.IsEmpty ? catalogue : null;
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

    /// <summary>Does work that reads ground as it goes: a file that turns out to be damaged ends it, is told, and gives null.</summary>
    internal T? Guarded<T>(Action<string> tell, Func<T?> work)
        where T : class
    {
        try
        {
            return work();
        }
        catch (GroundFileException fault)
        {
            if (!TellDamage(tell))
            {
                tell(fault.Message);
            }

            return null;
        }
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

    /// <summary>Whether a plan names the ground that this one stands on, and no file of it has changed or is damaged.</summary>
    private bool StandsOnTheGroundOf(PlanDocument other) =>
        Document.Folder == other.Folder
        && Ground.Problems.IsEmpty
        && Ground.FilesHash() == GroundHash
        && Plan.Heights.Length == other.Plan.Heights.Length
        && Plan.Covers.Length == other.Plan.Covers.Length
        && Plan.Heights.Zip(other.Plan.Heights).All(pair => pair.First with { Files = pair.Second.Files } == pair.Second && pair.First.Files.SequenceEqual(pair.Second.Files))
        && Plan.Covers.Zip(other.Plan.Covers).All(pair => pair.First.Name == pair.Second.Name && pair.First.Files.SequenceEqual(pair.Second.Files));

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
