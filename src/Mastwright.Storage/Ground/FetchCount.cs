namespace Mastwright.Storage.Ground;

/// <summary>Counts tiles and bytes of a fetch and tells of them now and then.</summary>
internal sealed class FetchCount(int tiles, IProgress<TileFetchProgress>? progress)
{
    private const long TellEveryBytes = 1 << 20;

    private readonly Lock _lock = new();
    private int _done;
    private long _bytes;
    private long _told;

    internal void Add(long bytes)
    {
        TileFetchProgress? tell = null;
        lock (_lock)
        {
            _bytes += bytes;
            if (_bytes - _told >= TellEveryBytes)
            {
                _told = _bytes;
                tell = new(_done, tiles, _bytes, null);
            }
        }

        if (tell is not null)
        {
            progress?.Report(tell);
        }
    }

    internal void Settle(TileFetchResult result)
    {
        TileFetchProgress tell;
        lock (_lock)
        {
            _done++;
            tell = new(_done, tiles, _bytes, result);
        }

        progress?.Report(tell);
    }
}
