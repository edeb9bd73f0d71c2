using System.Globalization;
using Mastwright.Plans;
using Mastwright.Storage.Catalogue;
using Mastwright.Storage.Ground;
using Mastwright.Storage.Plans;

namespace Mastwright.Cli;

/// <summary>A plan that was read, its ground opened, ready to be examined.</summary>
internal sealed class PlanSession : IDisposable
{
    private PlanSession(PlanDocument document, GroundLibrary ground)
    {
        Document = document;
        Ground = ground;
        Assessment = new(document.Plan, StationCatalogueFile.LoadBuiltIn(), ground.MosaicFor);
    }

    internal PlanDocument Document { get; }

    internal Plan Plan => Document.Plan;

    internal GroundLibrary Ground { get; }

    internal Assessment Assessment { get; }

    /// <summary>Opens a plan; tells what is wrong on the error output and gives null when it cannot be used.</summary>
    internal static PlanSession? Open(string path, bool allowOutside)
    {
        if (Read(path, allowOutside) is not { } document)
        {
            return null;
        }

        GroundLibrary ground = GroundLibrary.Open(document.Folder, document.Plan.Heights, document.Plan.Covers, new() { AllowOutside = allowOutside });
        if (ground.Problems.Length > 0)
        {
            foreach (GroundProblem problem in ground.Problems)
            {
                Console.Error.WriteLine(Place(document, problem) + problem);
            }

            ground.Dispose();
            return null;
        }

        return new(document, ground);
    }

    /// <summary>Reads a plan; tells what is wrong on the error output and gives null when it cannot be used.</summary>
    internal static PlanDocument? Read(string path, bool allowOutside)
    {
        PlanReading reading = PlanFile.Read(path, new() { AllowOutside = allowOutside });
        foreach (PlanProblem problem in reading.Problems)
        {
            Console.Error.WriteLine(problem.ToString());
        }

        if (reading.Document is { } document)
        {
            foreach (PlanProblem note in document.Notes)
            {
                Console.Error.WriteLine($"Note: {note}");
            }
        }

        return reading.Document;
    }

    /// <summary>Files that turned out to be damaged while they were read; tells them and says whether there are any.</summary>
    internal bool TellDamage()
    {
        foreach (GroundProblem problem in Ground.Problems)
        {
            Console.Error.WriteLine(Place(Document, problem) + problem);
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
        return document.Sources.FindNearest(path) is { } place
            ? string.Create(CultureInfo.InvariantCulture, $"{place.File}:{place.Line}:{place.Column}: {path}: ")
            : "";
    }

    public void Dispose() => Ground.Dispose();
}
