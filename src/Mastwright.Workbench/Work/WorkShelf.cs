using System.Text.Json;
using System.Text.Json.Serialization;
using Mastwright.Workbench.Desk;
using Mastwright.Workbench.Hosting;

namespace Mastwright.Workbench.Work;

/// <summary>Keeps what was asked for and goes on after the server's end, in the workbench's own folder, a file for each.</summary>
internal sealed class WorkShelf
{
    /// <summary>Opens the shelf of the plan.</summary>
    public WorkShelf(WorkbenchOptions options, PlanDesk desk)
    {
        Folder = Path.Combine(KeptFolder.OfPlan(KeptFolder.Of(options), desk.FilePath), "work");
        KeptFolder.Make(Folder);
    }

    /// <summary>Where it is; what work keeps beside stands there too.</summary>
    internal string Folder { get; }

    /// <summary>What is kept, the oldest first.</summary>
    internal IReadOnlyList<KeptWork> Read() =>
        [.. Directory.EnumerateFiles(Folder, "*.work.json").Select(One).OfType<KeptWork>().OrderBy(kept => kept.Asked)];

    internal void Keep(KeptWork work) => KeptFolder.Write(File(work.Id), JsonSerializer.SerializeToUtf8Bytes(work, WorkForms.Default.KeptWork));

    internal void Drop(string id) => System.IO.File.Delete(File(id));

    private static KeptWork? One(string path)
    {
        try
        {
            return JsonSerializer.Deserialize(System.IO.File.ReadAllBytes(path), WorkForms.Default.KeptWork);
        }
        catch (Exception fault) when (fault is JsonException or IOException or UnauthorizedAccessException)
        {
            // Damaged, or of another version: it can be asked for again.
            return null;
        }
    }

    private string File(string id) => Path.Combine(Folder, id + ".work.json");
}

/// <summary>Work as it is kept.</summary>
internal sealed record KeptWork(string Id, string Kind, DateTimeOffset Asked, string? Trial, Dictionary<string, string> Settings);

[JsonSerializable(typeof(KeptWork))]
internal sealed partial class WorkForms : JsonSerializerContext;
