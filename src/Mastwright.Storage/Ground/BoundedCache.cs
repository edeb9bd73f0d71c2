namespace Mastwright.Storage.Ground;

/// <summary>Values kept in memory up to a number of bytes; the one not used for longest goes first.</summary>
/// <remarks>Safe from many threads: each value is made once, and whoever else wants it meanwhile waits for it.</remarks>
internal sealed class BoundedCache<TKey, TValue>(long capacityBytes, Func<TValue, long> size)
    where TKey : notnull
{
    private readonly Lock _lock = new();
    private readonly Dictionary<TKey, LinkedListNode<Entry>> _entries = [];
    private readonly LinkedList<Entry> _byUse = new();
    private long _bytes;

    /// <summary>Bytes that are kept now.</summary>
    internal long Bytes
    {
        get
        {
            lock (_lock)
            {
                return _bytes;
            }
        }
    }

    /// <summary>The value of a key, made when it is not there. A failure is not kept: the next caller tries again.</summary>
    internal TValue Get(TKey key, Func<TKey, TValue> make)
    {
        LinkedListNode<Entry>? node;
        lock (_lock)
        {
            if (_entries.TryGetValue(key, out node))
            {
                _byUse.Remove(node);
                _byUse.AddFirst(node);
            }
            else
            {
                node = _byUse.AddFirst(new Entry(key, new Lazy<TValue>(() => make(key))));
                _entries.Add(key, node);
            }
        }

        try
        {
            TValue value = node.Value.Made.Value;
            Count(node, value);
            return value;
        }
        catch
        {
            Drop(node);
            throw;
        }
    }

    internal void Clear()
    {
        lock (_lock)
        {
            _entries.Clear();
            _byUse.Clear();
            _bytes = 0;
        }
    }

    private void Count(LinkedListNode<Entry> node, TValue value)
    {
        lock (_lock)
        {
            if (node.Value.IsCounted || node.List is null)
            {
                return;
            }

            node.Value.IsCounted = true;
            node.Value.Bytes = size(value);
            _bytes += node.Value.Bytes;
            for (LinkedListNode<Entry>? oldest = _byUse.Last; _bytes > capacityBytes && oldest is not null;)
            {
                LinkedListNode<Entry>? before = oldest.Previous;
                if (oldest.Value.IsCounted)
                {
                    Remove(oldest);
                }

                oldest = before;
            }
        }
    }

    private void Drop(LinkedListNode<Entry> node)
    {
        lock (_lock)
        {
            if (node.List is not null)
            {
                Remove(node);
            }
        }
    }

    private void Remove(LinkedListNode<Entry> node)
    {
        _byUse.Remove(node);
        _entries.Remove(node.Value.Key);
        _bytes -= node.Value.Bytes;
    }

    private sealed class Entry(TKey key, Lazy<TValue> made)
    {
        internal TKey Key { get; } = key;

        internal Lazy<TValue> Made { get; } = made;

        internal bool IsCounted { get; set; }

        internal long Bytes { get; set; }
    }
}
