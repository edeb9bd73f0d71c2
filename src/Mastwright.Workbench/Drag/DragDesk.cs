using System.Collections.Concurrent;
using Mastwright.Workbench.Desk;
using Microsoft.Extensions.Hosting;

namespace Mastwright.Workbench.Drag;

/// <summary>Takes the steps of drags: one in work at a time, of each asker only the newest.</summary>
internal sealed class DragDesk(PlanDesk desk) : BackgroundService
{
    private const int MostAskers = 64;

    /// <summary>After so long without a step nobody drags any more.</summary>
    private const long StillMilliseconds = 400;

    private readonly SemaphoreSlim oneAtATime = new(1);
    private readonly ConcurrentDictionary<string, CancellationTokenSource> newest = new(StringComparer.Ordinal);
    private int inWork;
    private long lastStep = -StillMilliseconds;

    /// <summary>Whether something is moved on a page now, or was a moment ago.</summary>
    internal bool IsMoving => Volatile.Read(ref inWork) > 0 || Environment.TickCount64 - Volatile.Read(ref lastStep) < StillMilliseconds;

    public override void Dispose()
    {
        oneAtATime.Dispose();
        base.Dispose();
    }

    /// <summary>Works out a step, after those that came before; a newer one of the same asker ends it.</summary>
    /// <returns>The answer, or what is wrong with the question.</returns>
    /// <exception cref="OperationCanceledException">Nobody waits for it any more.</exception>
    internal async Task<(DragAnswer? Answer, string Problem)> Answer(PlanView view, DragQuestion question, CancellationToken cancellation)
    {
        using CancellationTokenSource mine = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        bool isNamed = question.Asker.Length is > 0 and <= 64;
        if (isNamed)
        {
            if (newest.Count >= MostAskers)
            {
                newest.Clear();
            }

            newest.AddOrUpdate(question.Asker, mine, (_, older) =>
            {
                Stop(older);
                return mine;
            });
        }

        Interlocked.Increment(ref inWork);
        try
        {
            await oneAtATime.WaitAsync(mine.Token).ConfigureAwait(false);
            try
            {
                return await Task.Run(
                    () =>
                    {
                        DragAnswer? answer = DragWork.Of(view, question, out string problem, mine.Token);
                        return (answer, problem);
                    },
                    mine.Token).ConfigureAwait(false);
            }
            finally
            {
                oneAtATime.Release();
            }
        }
        finally
        {
            Volatile.Write(ref lastStep, Environment.TickCount64);
            Interlocked.Decrement(ref inWork);
            if (isNamed)
            {
                newest.TryRemove(new(question.Asker, mine));
            }
        }
    }

    /// <summary>Goes through one step before anybody drags, so that the first one need not wait for code to be compiled and ground to be read.</summary>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Yield();
        PlanView view = desk.Current;
        if (view.Session is not { } session || session.Plan.Sites.FirstOrDefault(site => site.InUse.Length > 0) is not { } site)
        {
            return;
        }

        try
        {
            for (int i = 0; i < 3; i++)
            {
                (DragAnswer? answer, _) = await Answer(view, new() { Station = site.Key, Reach = new() { IsQuick = true } }, stoppingToken).ConfigureAwait(false);
                if (answer is not null)
                {
                    DragAnswerWriter.Write(answer);
                }
            }
        }
        catch (OperationCanceledException)
        {
            // The server ends before anybody came.
        }
    }

    private static void Stop(CancellationTokenSource older)
    {
        try
        {
            older.Cancel();
        }
        catch (ObjectDisposedException)
        {
            // It was answered meanwhile.
        }
    }
}
