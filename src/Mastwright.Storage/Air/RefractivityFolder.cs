using System.Collections.Immutable;
using System.Text;
using Mastwright.Propagation;
using Mastwright.Storage.Plans;

namespace Mastwright.Storage.Air;

/// <summary>Reads the folder of digital maps that a plan names: DN50.TXT and N050.TXT of ITU-R P.1812, which the user has to bring.</summary>
public static class RefractivityFolder
{
    /// <summary>The two maps; null when one is missing or cannot be used.</summary>
    /// <param name="planFolder">Folder of the plan.</param>
    /// <param name="folder">The folder as the plan names it, relative to the plan; the case of the two file names does not matter.</param>
    /// <param name="allowOutside">Whether it may lie outside the plan's folder.</param>
    /// <param name="problems">What is wrong, at most one a file; empty when nothing is.</param>
    public static RefractivityMaps? Load(string planFolder, string folder, bool allowOutside, out ImmutableArray<PlanProblem> problems)
    {
        ArgumentException.ThrowIfNullOrEmpty(planFolder);
        ArgumentException.ThrowIfNullOrEmpty(folder);
        PlanFolder inside = new(planFolder, allowOutside);
        if (Folder(inside, folder, out PlanProblem? problem) is not { } full)
        {
            problems = [problem!];
            return null;
        }

        RefractivityMap? gradient = Map(inside, folder, full, RefractivityQuantity.Gradient, out PlanProblem? noGradient);
        RefractivityMap? surface = Map(inside, folder, full, RefractivityQuantity.Surface, out PlanProblem? noSurface);
        problems = [.. new[] { noGradient, noSurface }.OfType<PlanProblem>()];
        return gradient is null || surface is null ? null : new(gradient, surface);
    }

    private static string? Folder(PlanFolder inside, string folder, out PlanProblem? problem)
    {
        // The plan's own folder is not below itself, but the maps may lie beside the plan.
        string refusal = inside.Refusal(folder) ?? "";
        string? full = refusal.Length > 0 ? null : folder is "." or "./" ? inside.Folder : inside.Resolve(folder, out refusal);
        problem = full is null ? Fault(folder, refusal)
            : Directory.Exists(full) ? null
            : Fault(folder, File.Exists(full) ? "This is a file." : "There is no such folder.");
        return problem is null ? full : null;
    }

    private static RefractivityMap? Map(PlanFolder inside, string folder, string full, RefractivityQuantity quantity, out PlanProblem? problem)
    {
        string name = Named(folder, NameIn(full, quantity.FileName));
        if (inside.Resolve(name, out string refusal) is not { } path)
        {
            problem = Fault(name, refusal);
            return null;
        }

        byte[]? bytes = PlanSource.ReadBounded(name, path, out problem);
        if (bytes is null)
        {
            problem = problem! with
            {
                Code = "air-map",
                Path = "air/maps",
                Message = problem.Code == "plan-too-large" ? "The file is larger than 16 MiB; a map takes under one." : problem.Message,
                Wanted = $"the digital map {quantity.FileName} that comes with ITU-R P.1812",
            };
            return null;
        }

        // Every byte is some character: what is no number is told as that, whatever the encoding.
        return RefractivityMapFile.Parse(Encoding.Latin1.GetString(bytes), name, quantity, out problem);
    }

    /// <summary>The file's name as it is written there: some unpack the maps in small letters.</summary>
    private static string NameIn(string full, string name)
    {
        try
        {
            EnumerationOptions anyCase = new() { MatchCasing = MatchCasing.CaseInsensitive, MatchType = MatchType.Simple };
            string[] found = [.. Directory.EnumerateFiles(full, name, anyCase).Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal)];
            return found.Contains(name, StringComparer.Ordinal) ? name : found.FirstOrDefault(name);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return name;
        }
    }

    private static string Named(string folder, string file) => folder.TrimEnd('/') is { Length: > 0 } trimmed and not "." ? $"{trimmed}/{file}" : file;

    private static PlanProblem Fault(string name, string message) => new()
    {
        Code = "air-map",
        File = name,
        Path = "air/maps",
        Message = message,
        Wanted = "a folder with DN50.TXT and N050.TXT, the digital maps that come with ITU-R P.1812, relative to the plan",
    };
}
