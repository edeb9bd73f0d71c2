using System.Collections.Concurrent;
using System.Text.Json;
using System.Text.Json.Serialization;
using Mastwright.Storage.Plans;
using Mastwright.Workbench.Hosting;

namespace Mastwright.Workbench.Keeping;

/// <summary>
/// What is kept of a plan beside the plan itself, in the workbench's own folder: earlier states for undoing, and drafts. Never in the plan's
/// folder, so that nothing of it gets into what the keeper hands on. Not safe from many threads; <see cref="PlanKeeper"/> holds a lock.
/// </summary>
internal sealed class VersionShelf
{
    /// <summary>Most saved states that can be undone.</summary>
    internal const int MostSteps = 50;

    /// <summary>Most bytes of earlier states; the oldest go first.</summary>
    internal const long MostBytes = 32L << 20;

    private const int MostDrafts = 20;
    private const int MostRemembered = 16;

    private readonly string planPath;
    private readonly string folder;
    private readonly ConcurrentQueue<string> order = new();
    private readonly ConcurrentDictionary<string, PlanRevision> remembered = new(StringComparer.Ordinal);
    private List<HistoryStep> steps;

    internal VersionShelf(string keptFolder, string planPath)
    {
        this.planPath = planPath;
        folder = KeptFolder.OfPlan(keptFolder, planPath);
        KeptFolder.Make(Path.Combine(folder, "states"));
        KeptFolder.Make(Path.Combine(folder, "drafts"));
        // Whose these are, for a person who looks into the folder.
        KeptFolder.Write(Path.Combine(folder, "plan.txt"), System.Text.Encoding.UTF8.GetBytes(planPath + "\n"));
        steps = ReadJson(StepsFile, KeptForms.Default.ListHistoryStep) ?? [];
    }

    /// <summary>The saved steps, oldest first.</summary>
    internal IReadOnlyList<HistoryStep> Steps => steps;

    private string StepsFile => Path.Combine(folder, "history.json");

    /// <summary>Keeps a state in memory: what a page was given may come back as what an edit is based on.</summary>
    internal void Remember(PlanRevision state)
    {
        if (!remembered.TryAdd(state.Hash, state))
        {
            return;
        }

        order.Enqueue(state.Hash);
        while (order.Count > MostRemembered && order.TryDequeue(out string? oldest))
        {
            remembered.TryRemove(oldest, out _);
        }
    }

    /// <summary>A state by its hash; null when it is known no more.</summary>
    internal PlanRevision? Find(string hash)
    {
        if (remembered.TryGetValue(hash, out PlanRevision? state))
        {
            return state;
        }

        if (hash.Length != 64 || !hash.All(char.IsAsciiHexDigitLower))
        {
            return null;
        }

        try
        {
            return PlanRevision.FromBytes(planPath, File.ReadAllBytes(StateFile(hash)), out _) is { } kept && kept.Hash == hash ? kept : null;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>Keeps a state on the disk.</summary>
    internal void Keep(PlanRevision state)
    {
        string file = StateFile(state.Hash);
        if (!File.Exists(file))
        {
            KeptFolder.Write(file, state.ToBytes());
        }
    }

    /// <summary>Adds a step and lets the oldest go where there are too many.</summary>
    internal void Add(HistoryStep step)
    {
        steps.Add(step);
        while (steps.Count > MostSteps || (steps.Count > 1 && Bytes() > MostBytes))
        {
            steps.RemoveAt(0);
        }

        WriteSteps();
    }

    /// <summary>Takes the last step away: it was undone.</summary>
    internal void TakeLast()
    {
        steps.RemoveAt(steps.Count - 1);
        WriteSteps();
    }

    /// <summary>A draft; null when there is none of that name.</summary>
    internal Draft? ReadDraft(string id) => ReadJson(DraftFile(id), KeptForms.Default.Draft);

    /// <summary>All drafts, the newest first.</summary>
    internal Draft[] Drafts() =>
    [
        .. new DirectoryInfo(Path.Combine(folder, "drafts")).EnumerateFiles("*.json").Select(file => ReadJson(file.FullName, KeptForms.Default.Draft)).OfType<Draft>()
            .OrderByDescending(draft => draft.Time),
    ];

    /// <summary>Writes a draft, whole or not at all.</summary>
    internal void Write(Draft draft)
    {
        string file = DraftFile(draft.Id);
        bool isNew = !File.Exists(file);
        KeptFolder.Write(file, JsonSerializer.SerializeToUtf8Bytes(draft, KeptForms.Default.Draft));
        if (isNew)
        {
            foreach (Draft old in Drafts().Skip(MostDrafts))
            {
                File.Delete(DraftFile(old.Id));
            }
        }
    }

    /// <summary>Drops a draft.</summary>
    internal void DropDraft(string id) => File.Delete(DraftFile(id));

    private string StateFile(string hash) => Path.Combine(folder, "states", hash + ".yaml");

    private string DraftFile(string id) => Draft.IsId(id) ? Path.Combine(folder, "drafts", id + ".json") : throw new ArgumentException("That is no name of a draft.", nameof(id));

    private long Bytes() => steps.SelectMany(step => (string[])[step.Before, step.After]).Distinct(StringComparer.Ordinal)
        .Select(hash => new FileInfo(StateFile(hash))).Sum(file => file.Exists ? file.Length : 0);

    private void WriteSteps()
    {
        KeptFolder.Write(StepsFile, JsonSerializer.SerializeToUtf8Bytes(steps, KeptForms.Default.ListHistoryStep));
        HashSet<string> wanted = [.. steps.SelectMany(step => (string[])[step.Before, step.After]), .. Drafts().Select(draft => draft.BasedOn)];
        foreach (FileInfo file in new DirectoryInfo(Path.Combine(folder, "states")).EnumerateFiles())
        {
            if (!wanted.Contains(Path.GetFileNameWithoutExtension(file.Name)))
            {
                file.Delete();
            }
        }
    }

    private static T? ReadJson<T>(string file, System.Text.Json.Serialization.Metadata.JsonTypeInfo<T> form)
        where T : class
    {
        try
        {
            return JsonSerializer.Deserialize(File.ReadAllBytes(file), form);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or JsonException)
        {
            // Not there, or not ours: what is kept here is a convenience, and the plan itself is whole.
            return null;
        }
    }
}

/// <summary>One saved change of the plan.</summary>
/// <param name="Time">When.</param>
/// <param name="What">What was done, for a reader: "Ferry House moved".</param>
/// <param name="Before">Hash of the state before.</param>
/// <param name="After">Hash of the state after.</param>
internal sealed record HistoryStep(DateTimeOffset Time, string What, string Before, string After);

/// <summary>A text that a page has not saved yet.</summary>
/// <param name="Id">Name that the page gave it: letters, digits and dashes.</param>
/// <param name="Time">When it was last written.</param>
/// <param name="BasedOn">Hash of the state that it was made from.</param>
/// <param name="Text">The text.</param>
internal sealed record Draft(string Id, DateTimeOffset Time, string BasedOn, string Text)
{
    /// <summary>Whether a text can name a draft: 8 to 40 letters, digits and dashes.</summary>
    internal static bool IsId(string? id) => id is { Length: >= 8 and <= 40 } && id.All(one => char.IsAsciiLetterOrDigit(one) || one == '-');
}

[JsonSerializable(typeof(List<HistoryStep>))]
[JsonSerializable(typeof(Draft))]
internal sealed partial class KeptForms : JsonSerializerContext;
