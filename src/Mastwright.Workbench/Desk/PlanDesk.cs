using System.Collections.Immutable;
using Mastwright.Reports.Sessions;
using Mastwright.Storage.Plans;
using Mastwright.Workbench.Hosting;
using Mastwright.Workbench.Tiles;

namespace Mastwright.Workbench.Desk;

/// <summary>Holds the plan: read once, kept in memory, read again when one of its files changes on the disk.</summary>
/// <remarks>
/// Files are looked at, not listened to: that works on network folders too and needs no handles. A plan that becomes unreadable shows its
/// problems; the last usable reading is kept beside, for the ground under it.
/// </remarks>
internal sealed class PlanDesk : IDisposable
{
    /// <summary>Most bytes of ground kept between uses; a tile, a path or a sweep in work comes on top.</summary>
    private const long GroundBytes = 128L << 20;
    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(500);

    private readonly WorkbenchOptions options;
    private readonly Lock reading = new();
    private readonly ITimer timer;
    private string seen;
    private PlanSession? usable;

    /// <summary>Reads the plan for the first time.</summary>
    public PlanDesk(WorkbenchOptions options, TimeProvider time)
    {
        this.options = options;
        Current = Read(1);
        seen = Look();
        timer = time.CreateTimer(_ => Reload(), null, LookEvery, LookEvery);
    }

    /// <summary>Told, from any thread, that <see cref="Current"/> is another.</summary>
    public event EventHandler? Changed;

    /// <summary>The reading that holds now.</summary>
    public PlanView Current { get; private set; }

    /// <summary>Name of the plan's file, for showing.</summary>
    public string FileName => Path.GetFileName(options.PlanPath);

    /// <summary>Full path of the plan's file.</summary>
    public string FilePath => Path.GetFullPath(options.PlanPath);

    /// <summary>What is wrong in the files that a plan names, which may be one that is not saved yet: its parts, its air, its ground.</summary>
    internal ImmutableArray<PlanProblem> ProblemsBehind(PlanDocument document)
    {
        List<string> told = [];
        PlanSession? tried = PlanSession.Over(document, options.AllowOutside, told.Add, GroundBytes, usable);
        if (tried is not null && !ReferenceEquals(tried.Ground, usable?.Ground))
        {
            tried.Dispose();
        }

        return [.. told.Where(line => !IsNote(line)).Select(line => ProblemLine.Parse(line, document.Files[0].File))];
    }

    /// <summary>Looks at the files now and reads the plan again if one has changed.</summary>
    public void Reload()
    {
        if (!reading.TryEnter())
        {
            return;
        }

        try
        {
            string now = Look();
            if (now == seen)
            {
                return;
            }

            Current = Read(Current.Number + 1);
            // The files that matter may be others now. A change while it was read shows as another stamp of the plan's own file.
            seen = StampOfPlan == now[..Math.Min(now.Length, StampOfPlan.Length)] ? Look() : now;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // A file that is being replaced just now: the next look will tell.
            return;
        }
        finally
        {
            reading.Exit();
        }

        Changed?.Invoke(this, EventArgs.Empty);
    }

    /// <inheritdoc/>
    public void Dispose() => timer.Dispose();

    private PlanView Read(int number)
    {
        List<string> told = [];
        PlanSession? session = PlanSession.Open(options.PlanPath, options.AllowOutside, told.Add, GroundBytes, usable);
        GroundTiles? tiles = session is null ? null
            : ReferenceEquals(session.Ground, usable?.Ground) ? Current.Tiles ?? new(session.Ground)
            : new(session.Ground);
        usable = session ?? usable;
        ImmutableArray<string> notes = [.. told.Where(IsNote).Select(line => line["Note: ".Length..])];
        PlanRevision? revision = PlanRevision.Read(FilePath, out _);
        string hash = session?.Document.Files[0].Sha256 ?? revision?.Hash ?? "";
        return new(number, session, tiles) { PlanHash = hash, Revision = revision?.Hash == hash ? revision : null, AllowOutside = options.AllowOutside, Problems = session is null ? [.. told.Where(line => !IsNote(line))] : [], Notes = notes };
    }

    private string StampOfPlan => Stamp(FilePath);

    private static bool IsNote(string line) => line.StartsWith("Note: ", StringComparison.Ordinal);

    /// <summary>Size and time of every file that the plan was read from, and of its ground.</summary>
    private string Look()
    {
        string folder = Path.GetDirectoryName(FilePath) ?? "";
        IEnumerable<string> files = usable is { } session
            ? session.Document.Files.Select(file => Path.Combine(folder, file.File)).Concat(session.Plan.CatalogueFiles.Select(file => Path.Combine(folder, file))).Prepend(FilePath)
            : [FilePath];
        return string.Join('\n', files.Select(Stamp)) + "\n" + usable?.Ground.FilesHash();
    }

    private static string Stamp(string path)
    {
        FileInfo file = new(path);
        return file.Exists ? FormattableString.Invariant($"{path} {file.Length} {file.LastWriteTimeUtc.Ticks}") : path;
    }
}
