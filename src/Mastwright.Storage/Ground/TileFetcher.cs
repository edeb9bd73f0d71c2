using System.Collections.Immutable;
using System.Net;
using System.Net.Http.Headers;
using Mastwright.Ground;

namespace Mastwright.Storage.Ground;

/// <summary>Downloads the tiles of a source into a folder.</summary>
/// <remarks>
/// A tile grows in NAME.part and gets its name only when all of it is there and its header reads: nothing half done stands under a
/// tile's name. What a broken line left in NAME.part is gone on with (HTTP range requests, held to the same version by If-Range); a
/// server that does not do ranges sends it anew. A tile the source does not have (404 or 410) is absent
/// and not asked for again in the same run. Files that are there are left alone.
/// </remarks>
public sealed class TileFetcher(HttpClient client, TimeProvider time, TileFetchOptions? options = null)
{
    private const int BufferBytes = 1 << 16;

    private readonly TileFetchOptions _options = options ?? new();

    /// <summary>Fetches tiles.</summary>
    /// <param name="source">Where from.</param>
    /// <param name="tiles">Which; each at most once.</param>
    /// <param name="folder">Where to; made when it is not there.</param>
    /// <param name="progress">Told after every tile and every megabyte or so.</param>
    /// <param name="cancellation">Stops the fetch; what has come is kept for the next time.</param>
    /// <exception cref="OperationCanceledException">The fetch was stopped.</exception>
    public async Task<TileFetchSummary> FetchAsync(
        TileSource source, ImmutableArray<GroundTile> tiles, string folder, IProgress<TileFetchProgress>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(source);
        ArgumentNullException.ThrowIfNull(folder);
        Directory.CreateDirectory(folder);
        TileFetchResult[] results = new TileFetchResult[tiles.Length];
        FetchCount count = new(tiles.Length, progress);
        ParallelOptions parallel = new() { MaxDegreeOfParallelism = _options.AtATime, CancellationToken = cancellation };
        await Parallel.ForEachAsync(Enumerable.Range(0, tiles.Length), parallel, async (index, token) =>
        {
            results[index] = await FetchTileAsync(source, tiles[index], folder, count, token);
            count.Settle(results[index]);
        });
        return new([.. results]);
    }

    private async Task<TileFetchResult> FetchTileAsync(TileSource source, GroundTile tile, string folder, FetchCount count, CancellationToken cancellation)
    {
        string path = Path.Combine(folder, source.FileNameOf(tile));
        if (File.Exists(path))
        {
            return new(tile, TileFetchOutcome.Present, path, 0, "");
        }

        PartFile part = new(path);
        long bytes = 0;
        string fault = "";
        TimeSpan wait = _options.FirstWait;
        for (int attempt = 1; attempt <= _options.Attempts; attempt++)
        {
            if (attempt > 1)
            {
                await Task.Delay(wait, time, cancellation);
                wait *= 2;
            }

            try
            {
                Attempt outcome = await TryAsync(source.AddressOf(tile), part, got => { bytes += got; count.Add(got); }, cancellation);
                switch (outcome.State)
                {
                    case AttemptState.Complete when part.Keep() is { Length: > 0 } unsound:
                        // Two halves that do not belong together may be cured by starting anew; a page of text twice over is none.
                        if (fault == unsound || !outcome.IsResumed)
                        {
                            return new(tile, TileFetchOutcome.Failed, "", bytes, unsound);
                        }

                        fault = unsound;
                        break;
                    case AttemptState.Complete:
                        return new(tile, TileFetchOutcome.Fetched, path, bytes, "");
                    case AttemptState.Absent:
                        part.Drop();
                        return new(tile, TileFetchOutcome.Absent, "", bytes, "");
                    case AttemptState.Refused:
                        return new(tile, TileFetchOutcome.Failed, "", bytes, outcome.Fault);
                    default:
                        fault = outcome.Fault;
                        break;
                }
            }
            catch (Exception broken) when (broken is HttpRequestException or IOException || (broken is OperationCanceledException && !cancellation.IsCancellationRequested))
            {
                fault = broken is OperationCanceledException ? "the server fell silent" : broken.Message;
            }
            catch (UnauthorizedAccessException broken)
            {
                return new(tile, TileFetchOutcome.Failed, "", bytes, broken.Message);
            }
        }

        return new(tile, TileFetchOutcome.Failed, "", bytes, fault);
    }

    private async Task<Attempt> TryAsync(Uri address, PartFile part, Action<long> got, CancellationToken cancellation)
    {
        using CancellationTokenSource silence = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        silence.CancelAfter(_options.Silence);
        using HttpRequestMessage request = new(HttpMethod.Get, address);
        (long have, string version) = part.Held();
        if (have > 0)
        {
            request.Headers.Range = new RangeHeaderValue(have, null);
            request.Headers.TryAddWithoutValidation("If-Range", version);
        }

        using HttpResponseMessage response = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, silence.Token);
        switch (response.StatusCode)
        {
            case HttpStatusCode.NotFound or HttpStatusCode.Gone:
                return new(AttemptState.Absent, "");
            case HttpStatusCode.RequestedRangeNotSatisfiable:
                part.Drop();
                return new(AttemptState.Broken, "the server has less than was held; starting anew");
            case HttpStatusCode.OK or HttpStatusCode.PartialContent:
                break;
            case HttpStatusCode.TooManyRequests or HttpStatusCode.RequestTimeout or >= HttpStatusCode.InternalServerError:
                return new(AttemptState.Broken, $"the server answered {(int)response.StatusCode}");
            default:
                return new(AttemptState.Refused, $"the server answered {(int)response.StatusCode}");
        }

        long start = response.StatusCode == HttpStatusCode.PartialContent ? response.Content.Headers.ContentRange?.From ?? -1 : 0;
        if (start != 0 && start != have)
        {
            part.Drop();
            return new(AttemptState.Broken, "the server sent another part than was asked for");
        }

        long? whole = response.Content.Headers.ContentLength is long rest ? start + rest : null;
        if (whole > _options.LargestTileBytes)
        {
            return new(AttemptState.Refused, $"the tile would have {whole} bytes, too many");
        }

        // Only a strong mark of the version makes it safe to go on later.
        EntityTagHeaderValue? tag = response.Headers.ETag;
        string mark = tag is { IsWeak: false } ? tag.Tag : response.Content.Headers.LastModified?.ToString("R", System.Globalization.CultureInfo.InvariantCulture) ?? "";
        return await CopyAsync(response, part, start, mark, whole, got, silence);
    }

    private async Task<Attempt> CopyAsync(
        HttpResponseMessage response, PartFile part, long start, string mark, long? whole, Action<long> got, CancellationTokenSource silence)
    {
        await using FileStream file = part.OpenAt(start, mark);
        await using Stream body = await response.Content.ReadAsStreamAsync(silence.Token);
        byte[] buffer = new byte[BufferBytes];
        while (true)
        {
            silence.CancelAfter(_options.Silence);
            int read = await body.ReadAsync(buffer, silence.Token);
            if (read == 0)
            {
                break;
            }

            await file.WriteAsync(buffer.AsMemory(0, read), silence.Token);
            got(read);
            if (file.Position > _options.LargestTileBytes)
            {
                return new(AttemptState.Refused, "the tile has too many bytes");
            }
        }

        if (whole is long all && file.Position != all)
        {
            return new(AttemptState.Broken, "the line broke");
        }

        await file.FlushAsync(silence.Token);
        RandomAccess.FlushToDisk(file.SafeFileHandle);
        return new(AttemptState.Complete, "", start > 0);
    }

    private enum AttemptState
    {
        Broken,
        Complete,
        Absent,
        Refused,
    }

    private sealed record Attempt(AttemptState State, string Fault, bool IsResumed = false);
}
