using System.Collections.Concurrent;
using Mastwright.Propagation.Area;

namespace Mastwright.Network.Reach;

/// <summary>Memory that the pieces of a field are worked out in, one after another: as many rooms as there are threads.</summary>
/// <remarks>Safe from many threads.</remarks>
public sealed class ReachRooms
{
    private readonly ConcurrentBag<WeakReference<SweepRoom>> free = [];

    /// <summary>A room that is free, else a new one.</summary>
    internal SweepRoom Take()
    {
        while (free.TryTake(out WeakReference<SweepRoom>? reference))
        {
            if (reference.TryGetTarget(out SweepRoom? room))
            {
                return room;
            }
        }

        return new();
    }

    /// <summary>Gives a room back. It is held weakly: the next piece takes it at once, and after the last one nobody keeps its memory.</summary>
    internal void Return(SweepRoom room) => free.Add(new(room));
}
