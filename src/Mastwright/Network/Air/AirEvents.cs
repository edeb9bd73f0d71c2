namespace Mastwright.Network.Air;

/// <summary>What happens at a moment; at one moment in this order.</summary>
internal enum AirEventKind
{
    /// <summary>A transmission ends.</summary>
    End,

    /// <summary>A station makes a report.</summary>
    Report,

    /// <summary>A station makes a message.</summary>
    Message,

    /// <summary>A station's wait before passing a packet on is over.</summary>
    Relay,

    /// <summary>A station tries to send what it has.</summary>
    Try,
}

/// <summary>An event: what, and of which station, transmission or packet.</summary>
internal readonly record struct AirEvent(AirEventKind Kind, int Station, int Item);

/// <summary>Events in the order of time, then kind, then the order in which they were asked for.</summary>
internal sealed class AirEvents
{
    private readonly PriorityQueue<AirEvent, Order> queue = new(new InOrder());
    private long asked;

    internal void Add(double seconds, AirEvent what) => queue.Enqueue(what, new(seconds, what.Kind, asked++));

    internal bool TryNext(out AirEvent what, out double seconds)
    {
        bool any = queue.TryDequeue(out what, out Order order);
        seconds = order.Seconds;
        return any;
    }

    private readonly record struct Order(double Seconds, AirEventKind Kind, long Asked);

    private sealed class InOrder : IComparer<Order>
    {
        public int Compare(Order x, Order y)
        {
            int byTime = x.Seconds.CompareTo(y.Seconds);
            if (byTime != 0)
            {
                return byTime;
            }

            return x.Kind != y.Kind ? x.Kind - y.Kind : x.Asked.CompareTo(y.Asked);
        }
    }
}
