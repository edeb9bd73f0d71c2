using System.Collections.Immutable;

namespace Mastwright.Workbench.Work;

/// <summary>How far work is.</summary>
public enum WorkState
{
    Waiting,
    Running,
    Done,
    Failed,
    Cancelled,
}

/// <summary>A piece of work that was asked for. Read from any thread, changed by <see cref="WorkDesk"/> alone.</summary>
public sealed class WorkItem : IProgress<int>, IDisposable
{
    private readonly CancellationTokenSource stop;
    private readonly Action gaveWay;
    private int done;

    internal WorkItem(string id, IWork work, WorkQuestion question, DateTimeOffset asked, Action gaveWay, CancellationToken end)
    {
        (Id, Work, Question, Asked, this.gaveWay) = (id, work, question, asked, gaveWay);
        stop = CancellationTokenSource.CreateLinkedTokenSource(end);
    }

    /// <summary>Names it in addresses.</summary>
    internal string Id { get; }

    internal IWork Work { get; }

    internal WorkQuestion Question { get; }

    internal DateTimeOffset Asked { get; }

    internal WorkState State { get; set; }

    /// <summary>How many of <see cref="IWork.Unit"/> are done.</summary>
    internal int Done => Volatile.Read(ref done);

    /// <summary>How many there are; null where that is not known beforehand.</summary>
    internal int? Total { get; set; }

    /// <summary>What it is at, where it has several steps; empty where it has one.</summary>
    internal string Step { get; private set; } = "";

    /// <summary>What is wrong, line by line.</summary>
    internal ImmutableArray<string> Problems { get; set; } = [];

    internal WorkAnswer? Answer { get; set; }

    internal bool IsOver => State is WorkState.Done or WorkState.Failed or WorkState.Cancelled;

    internal CancellationToken Cancellation => stop.Token;

    /// <summary>Told by the work how far it is, from any thread. Here it gives way to whoever moves something on a page.</summary>
    public void Report(int value)
    {
        Volatile.Write(ref done, value);
        gaveWay();
    }

    /// <summary>Told which step it is at, and how far that is.</summary>
    internal void Report(string step, int value, int? total)
    {
        (Step, Total) = (step, total);
        Report(value);
    }

    public void Dispose() => stop.Dispose();

    internal void Stop()
    {
        try
        {
            stop.Cancel();
        }
        catch (ObjectDisposedException)
        {
            // It is over.
        }
    }
}
