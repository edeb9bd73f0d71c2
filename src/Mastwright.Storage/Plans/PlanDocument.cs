using System.Collections.Immutable;
using Mastwright.Plans;

namespace Mastwright.Storage.Plans;

/// <summary>A plan that read without a problem, with the place of every value.</summary>
public sealed class PlanDocument
{
    internal PlanDocument(Plan plan, PlanSources sources, ImmutableArray<PlanFileHash> files, ImmutableArray<PlanProblem> notes, string folder)
    {
        Plan = plan;
        Sources = sources;
        Files = files;
        Notes = notes;
        Folder = folder;
    }

    /// <summary>The plan.</summary>
    public Plan Plan { get; }

    /// <summary>The place of every value.</summary>
    public PlanSources Sources { get; }

    /// <summary>The plan file, then the files it includes, each with the hash of its bytes.</summary>
    public ImmutableArray<PlanFileHash> Files { get; }

    /// <summary>What is no error but worth a look, such as two stations at one place.</summary>
    public ImmutableArray<PlanProblem> Notes { get; }

    /// <summary>Full path of the plan's folder, to which the names of its files are relative.</summary>
    public string Folder { get; }
}

/// <summary>A file of a plan and the hash of its bytes when it was read.</summary>
/// <param name="File">Its name as problems use it.</param>
/// <param name="Sha256">SHA-256 in lower-case hexadecimal.</param>
public sealed record PlanFileHash(string File, string Sha256);

/// <summary>What came of reading a plan: a document, or problems.</summary>
/// <param name="Document">The plan; null when there is a problem.</param>
/// <param name="Problems">The problems in the order of the files; empty when there is a document.</param>
public sealed record PlanReading(PlanDocument? Document, ImmutableArray<PlanProblem> Problems);

/// <summary>How a plan is read.</summary>
public sealed record PlanReadOptions
{
    /// <summary>Whether files that the plan names may lie outside its folder.</summary>
    public bool AllowOutside { get; init; }
}
