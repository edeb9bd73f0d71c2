using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Threading.Channels;
using Mastwright.Records.Import;
using Mastwright.Records.Store;
using Mastwright.Workbench.Desk;
using Mastwright.Workbench.Drag;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace Mastwright.Workbench.Work;

/// <summary>
/// Does what takes long, one after the other, while pages come and go; what is asked twice is done once. It gives way while something is
/// moved on a page, and what can go on after the server's end is taken up again.
/// </summary>
internal sealed partial class WorkDesk : BackgroundService
{
    private const int MostKept = 32;
    private static readonly TimeSpan LongestWay = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan TellEvery = TimeSpan.FromMilliseconds(200);

    private readonly Lock gate = new();
    private readonly List<WorkItem> items = [];
    private readonly Channel<WorkItem> waiting = Channel.CreateUnbounded<WorkItem>();
    private readonly Dictionary<string, IWork> kinds;
    private readonly PlanDesk desk;
    private readonly DragDesk drags;
    private readonly WorkShelf shelf;
    private readonly TimeProvider time;
    private readonly ILogger<WorkDesk> log;
    private readonly CancellationTokenSource end = new();
    private long told;

    /// <summary>Opens what was asked for before and did not come to its end.</summary>
    public WorkDesk(IEnumerable<IWork> kinds, PlanDesk desk, DragDesk drags, WorkShelf shelf, TimeProvider time, ILogger<WorkDesk> log)
    {
        this.kinds = kinds.ToDictionary(work => work.Kind, StringComparer.Ordinal);
        (this.desk, this.drags, this.shelf, this.time, this.log) = (desk, drags, shelf, time, log);
        foreach (KeptWork kept in shelf.Read())
        {
            if (this.kinds.GetValueOrDefault(kept.Kind) is { } work)
            {
                Add(kept.Id, work, new(Tried(desk.Current, kept.Trial), kept.Settings.ToImmutableSortedDictionary(StringComparer.Ordinal)), kept.Asked);
            }
        }
    }

    /// <summary>Told, from any thread and a few times a second at most while it works, that something is another.</summary>
    public event EventHandler? Changed;

    /// <summary>Everything that was asked for and is still known, the newest first.</summary>
    internal ImmutableArray<WorkItem> All
    {
        get
        {
            lock (gate)
            {
                return [.. items.AsEnumerable().Reverse()];
            }
        }
    }

    public override void Dispose()
    {
        end.Dispose();
        base.Dispose();
    }

    /// <summary>Whether there is work of a kind.</summary>
    internal bool Has(string kind) => kinds.ContainsKey(kind);

    /// <summary>Work that was asked for, by its id.</summary>
    internal WorkItem? Find(string id)
    {
        lock (gate)
        {
            return items.Find(item => item.Id == id);
        }
    }

    /// <summary>The newest work of a kind for a question; null where nobody asked.</summary>
    internal WorkItem? Find(string kind, WorkQuestion question)
    {
        lock (gate)
        {
            return items.FindLast(item => item.Work.Kind == kind && item.Question.Key == question.Key);
        }
    }

    /// <summary>Asks for work. What waits, works or is done already is not begun again.</summary>
    /// <exception cref="KeyNotFoundException">There is no such kind.</exception>
    internal WorkItem Ask(string kind, WorkQuestion question, bool anew = false)
    {
        lock (gate)
        {
            WorkItem? there = Find(kind, question);
            if (there is { IsOver: false } || (there is not null && !anew && kinds[kind].HangsOnPlan))
            {
                return there;
            }

            WorkItem item = Add(Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(8)), kinds[kind], question, time.GetUtcNow());
            if (item.Work.GoesOn)
            {
                shelf.Keep(new(item.Id, kind, item.Asked, question.View.Trial?.What.ToString(), question.Settings.ToDictionary()));
            }

            return item;
        }
    }

    /// <summary>Stops work that waits or runs.</summary>
    internal void Cancel(WorkItem item)
    {
        item.Stop();
        lock (gate)
        {
            if (item.State == WorkState.Waiting)
            {
                Over(item, WorkState.Cancelled);
            }
        }

        Tell();
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using CancellationTokenRegistration ended = stoppingToken.Register(end.Cancel);
        await foreach (WorkItem item in waiting.Reader.ReadAllAsync(stoppingToken).ConfigureAwait(false))
        {
            // On a thread of its own: the pool answers pages meanwhile.
            await Task.Factory.StartNew(() => Do(item), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default).ConfigureAwait(false);
        }
    }

    private static PlanView Tried(PlanView view, string? trial) =>
        trial is not null && view.Session is { } session && Trial.Parse(trial, session.Plan, out _) is { } tried ? view.Trying(tried) : view;

    private WorkItem Add(string id, IWork work, WorkQuestion question, DateTimeOffset asked)
    {
        WorkItem item = new(id, work, question, asked, GiveWay, end.Token);
        items.Add(item);
        while (items.Count > MostKept && items.FindIndex(one => one.IsOver) is var oldest and >= 0)
        {
            items.RemoveAt(oldest);
        }

        waiting.Writer.TryWrite(item);
        Tell();
        return item;
    }

    private void Do(WorkItem item)
    {
        lock (gate)
        {
            if (item.IsOver)
            {
                return;
            }

            item.State = WorkState.Running;
        }

        Tell();
        List<string> problems = [];
        WorkState state = WorkState.Failed;
        try
        {
            item.Answer = item.Work.Run(item, problems.Add);
            state = item.Answer is null ? WorkState.Failed : WorkState.Done;
        }
        catch (OperationCanceledException)
        {
            state = WorkState.Cancelled;
        }
        catch (Exception fault) when (fault is RecordStoreException or MappingException or IOException or UnauthorizedAccessException)
        {
            problems.Add(fault.Message);
        }
#pragma warning disable CA1031 // One piece of work must not end the server: the page says that it failed, the log says why.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            Failed(log, fault, item.Work.Kind);
            problems.Add("This is a fault of the program, not of your input. Its log says more.");
        }

        item.Problems = [.. problems];
        lock (gate)
        {
            // The server's end is no end of work that goes on.
            Over(item, state, isKept: end.IsCancellationRequested && item.Work.GoesOn);
        }

        Tell();
    }

    private void Over(WorkItem item, WorkState state, bool isKept = false)
    {
        item.State = state;
        item.Dispose();
        if (item.Work.GoesOn && !isKept)
        {
            shelf.Drop(item.Id);
        }
    }

    /// <summary>Stands still while something is moved on a page, though not for ever.</summary>
    private void GiveWay()
    {
        long until = Environment.TickCount64 + (long)LongestWay.TotalMilliseconds;
        while (drags.IsMoving && Environment.TickCount64 < until && !end.IsCancellationRequested)
        {
            Thread.Sleep(20);
        }

        long now = Environment.TickCount64;
        long last = Volatile.Read(ref told);
        if (now - last >= TellEvery.TotalMilliseconds && Interlocked.CompareExchange(ref told, now, last) == last)
        {
            Tell();
        }
    }

    private void Tell() => _ = Task.Run(() => Changed?.Invoke(this, EventArgs.Empty));

    [LoggerMessage(Level = LogLevel.Error, Message = "Work of kind {Kind} failed")]
    private static partial void Failed(ILogger log, Exception fault, string kind);
}
