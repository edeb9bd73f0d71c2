using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.IO.Compression;
using System.Text;
using Mastwright.Ground;
using Mastwright.Storage.Catalogue;
using Mastwright.Storage.Ground;

namespace Mastwright.Storage.Tests.Ground;

public sealed class TileFetcherTests
{
    private static readonly GroundTile Here = GroundTile.OneDegree(46, -19);
    private static readonly byte[] Sound = PackedTile();

    [Fact]
    public async Task Tiles_come_down_and_read_and_are_left_alone_afterwards()
    {
        using ScratchFolder folder = new();
        await using TileServer server = new();
        ImmutableArray<GroundTile> tiles = [.. Enumerable.Range(-19, 8).Select(west => GroundTile.OneDegree(46, west))];
        foreach (GroundTile tile in tiles)
        {
            server.Files[$"/{tile.Name}.hgt.gz"] = Sound;
        }

        ConcurrentQueue<TileFetchProgress> told = new();
        TileFetchSummary first = await FetchAsync(server, folder, tiles, new Collect(told));
        Assert.Equal(8, first.Count(TileFetchOutcome.Fetched));
        Assert.Equal(8, Directory.GetFileSystemEntries(folder.Root).Length);
        Assert.Equal(8, told.Max(progress => progress.TilesDone));
        Assert.InRange(server.MostAtOnce, 1, 3);
        using GroundLibrary library = GroundLibrary.Open(folder.Root, [new HeightSource { Name = "fetched", Files = ["."] }], []);
        Assert.Equal((8, 0), (library.FileCount, library.Problems.Length));

        Assert.Equal(8, (await FetchAsync(server, folder, tiles)).Count(TileFetchOutcome.Present));
        Assert.Equal(8, server.Requests.Count);
    }

    [Fact]
    public async Task A_broken_line_is_gone_on_with_where_it_broke()
    {
        using ScratchFolder folder = new();
        await using TileServer server = new();
        server.Files["/N46W019.hgt.gz"] = Sound;
        server.Breaks["/N46W019.hgt.gz"] = (2, 1_000);
        TileFetchResult result = Assert.Single((await FetchAsync(server, folder, [Here])).Results);

        Assert.Equal((TileFetchOutcome.Fetched, Sound.Length), (result.Outcome, result.Bytes));
        Assert.Equal(["/N46W019.hgt.gz 0", "/N46W019.hgt.gz 1000", "/N46W019.hgt.gz 2000"], server.Requests);
        Assert.Equal(Sound, await File.ReadAllBytesAsync(folder.At("N46W019.hgt.gz"), TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_later_run_goes_on_with_what_an_earlier_one_left()
    {
        using ScratchFolder folder = new();
        await using TileServer server = new();
        server.Files["/N46W019.hgt.gz"] = Sound;
        server.Breaks["/N46W019.hgt.gz"] = (3, 700);
        TileFetchResult given = Assert.Single((await FetchAsync(server, folder, [Here])).Results);
        Assert.Equal(TileFetchOutcome.Failed, given.Outcome);
        Assert.False(File.Exists(folder.At("N46W019.hgt.gz")));

        Assert.Equal(TileFetchOutcome.Fetched, Assert.Single((await FetchAsync(server, folder, [Here])).Results).Outcome);
        Assert.Equal("/N46W019.hgt.gz 2100", server.Requests.Last());
        Assert.Equal(Sound, await File.ReadAllBytesAsync(folder.At("N46W019.hgt.gz"), TestContext.Current.CancellationToken));
        Assert.Single(Directory.GetFileSystemEntries(folder.Root));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_tile_that_changed_meanwhile_or_a_server_without_ranges_starts_anew(bool changes)
    {
        using ScratchFolder folder = new();
        await using TileServer server = new();
        server.Files["/N46W019.hgt.gz"] = Sound;
        server.Breaks["/N46W019.hgt.gz"] = (3, 700);
        server.DoesRanges = changes;
        await FetchAsync(server, folder, [Here]);
        server.Tag = changes ? "\"two\"" : server.Tag;

        Assert.Equal(TileFetchOutcome.Fetched, Assert.Single((await FetchAsync(server, folder, [Here])).Results).Outcome);
        Assert.Equal(Sound, await File.ReadAllBytesAsync(folder.At("N46W019.hgt.gz"), TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task An_absent_tile_is_absent_and_asked_for_once()
    {
        using ScratchFolder folder = new();
        await using TileServer server = new();
        Assert.Equal(TileFetchOutcome.Absent, Assert.Single((await FetchAsync(server, folder, [Here])).Results).Outcome);
        Assert.Single(server.Requests);
        Assert.Empty(Directory.GetFileSystemEntries(folder.Root));
    }

    [Theory]
    [InlineData("503 Service Unavailable", TileFetchOutcome.Fetched, 3)]
    [InlineData("429 Too Many Requests", TileFetchOutcome.Fetched, 3)]
    [InlineData("401 Unauthorized", TileFetchOutcome.Failed, 1)]
    public async Task A_busy_server_is_asked_again_and_a_refusal_is_not(string status, TileFetchOutcome outcome, int requests)
    {
        using ScratchFolder folder = new();
        await using TileServer server = new();
        server.Files["/N46W019.hgt.gz"] = Sound;
        server.Refusals["/N46W019.hgt.gz"] = (2, status);

        Assert.Equal(outcome, Assert.Single((await FetchAsync(server, folder, [Here])).Results).Outcome);
        Assert.Equal(requests, server.Requests.Count);
    }

    [Fact]
    public async Task A_page_of_text_is_no_tile_and_nothing_stays_behind()
    {
        using ScratchFolder folder = new();
        await using TileServer server = new();
        server.Files["/N46W019.hgt.gz"] = Encoding.ASCII.GetBytes("<html>Please log in to this network</html>");
        TileFetchResult result = Assert.Single((await FetchAsync(server, folder, [Here])).Results);

        Assert.Equal(TileFetchOutcome.Failed, result.Outcome);
        Assert.Contains("no tile", result.Text, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(folder.Root));
    }

    [Fact]
    public async Task A_tile_larger_than_allowed_is_refused()
    {
        using ScratchFolder folder = new();
        await using TileServer server = new();
        server.Files["/N46W019.hgt.gz"] = Sound;
        TileFetchSummary summary = await FetchAsync(server, folder, [Here], options: new() { LargestTileBytes = 1_000 });

        Assert.Contains("too many", Assert.Single(summary.Results).Text, StringComparison.Ordinal);
        Assert.Single(server.Requests);
    }

    [Fact]
    public async Task A_stopped_fetch_leaves_no_tile_under_its_name()
    {
        using ScratchFolder folder = new();
        await using TileServer server = new();
        server.Files["/N46W019.hgt.gz"] = Sound;
        server.Breaks["/N46W019.hgt.gz"] = (1, 900);
        using CancellationTokenSource stop = new();
        TileFetchOptions slow = new() { FirstWait = TimeSpan.FromMinutes(5) };

        // The fetch is waited for below, before the server and the source of the stop go.
#pragma warning disable CA2025
        Task<TileFetchSummary> fetch = FetchAsync(server, folder, [Here], options: slow, stop: stop);
#pragma warning restore CA2025
        while (!File.Exists(folder.At("N46W019.hgt.gz.part")) || new FileInfo(folder.At("N46W019.hgt.gz.part")).Length < 900)
        {
            await Task.Delay(10, TestContext.Current.CancellationToken);
        }

        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(async () => await fetch);
        Assert.False(File.Exists(folder.At("N46W019.hgt.gz")));
        Assert.Equal(TileFetchOutcome.Fetched, Assert.Single((await FetchAsync(server, folder, [Here])).Results).Outcome);
        Assert.Equal("/N46W019.hgt.gz 900", server.Requests.Last());
    }

    [Fact]
    public void The_shipped_sources_name_sound_places()
    {
        Assert.NotEmpty(TileSource.BuiltIn);
        Assert.All(TileSource.BuiltIn, source =>
        {
            Assert.Equal("https", source.AddressOf(Here).Scheme);
            Assert.DoesNotContain("{", source.AddressOf(Here).OriginalString + source.FileNameOf(Here), StringComparison.Ordinal);
            Assert.Contains("N46", source.AddressOf(Here).OriginalString, StringComparison.Ordinal);
            Assert.NotEmpty(source.Licence);
        });
    }

    [Theory]
    [InlineData("../{name}.hgt", "https://x/{name}", "plain file name")]
    [InlineData("{name}.txt", "https://x/{name}", "plain file name")]
    [InlineData("{name}.hgt", "file:///etc/{name}", "http or https")]
    public void A_row_that_writes_elsewhere_or_fetches_from_a_file_is_refused(string file, string url, string fault)
    {
        string text = $"format: 1\ntile-sources:\n  - {{ key: a, name: a, url: '{url}', file: '{file}', kind: surface, datum: EGM96, absent-is-sea: false, licence: a, source: a }}\n";
        Assert.False(TileSource.TryParse(text, "own.yaml", out _, out ImmutableArray<CatalogueFault> faults));
        Assert.Contains(faults, one => one.Text.Contains(fault, StringComparison.Ordinal));
    }

    private static async Task<TileFetchSummary> FetchAsync(
        TileServer server, ScratchFolder folder, ImmutableArray<GroundTile> tiles, IProgress<TileFetchProgress>? progress = null, TileFetchOptions? options = null, CancellationTokenSource? stop = null)
    {
        using HttpClient client = new();
        TileSource source = new("test", "test", server.Root + "/{name}.hgt.gz", "{name}.hgt.gz", HeightKind.Surface, "EGM96", AbsentIsSea: false, "", "");
        TileFetchOptions quick = options ?? new() { FirstWait = TimeSpan.FromMilliseconds(5), Attempts = 3 };
        return await new TileFetcher(client, TimeProvider.System, quick).FetchAsync(source, tiles, folder.Root, progress, stop?.Token ?? TestContext.Current.CancellationToken);
    }

    private static byte[] PackedTile()
    {
        using MemoryStream memory = new();
        using (GZipStream packed = new(memory, CompressionLevel.Fastest))
        {
            packed.Write(new byte[1201 * 1201 * 2]);
        }

        return memory.ToArray();
    }

    private sealed class Collect(ConcurrentQueue<TileFetchProgress> told) : IProgress<TileFetchProgress>
    {
        public void Report(TileFetchProgress value) => told.Enqueue(value);
    }
}
