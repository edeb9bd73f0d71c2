using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Jobs;
using Mastwright.Network.Reach;
using Mastwright.Storage.Ground;
using Mastwright.Storage.Jobs;
using Mastwright.Storage.Reach;
using Mastwright.Storage.Tests.Ground;

namespace Mastwright.Storage.Tests.Reach;

/// <summary>A field over files, worked off as a job, against the same field over the mosaic of the whole area.</summary>
public sealed class ReachFieldJobTests
{
    private static readonly ReachFieldInput Large = new()
    {
        Station = new(46.02, -18.97),
        RadiusMetres = 20_000,
        CellMetres = 400,
        StationHeightMetres = 12,
        ReceiverHeightMetres = 2,
        FrequencyHz = 868e6,
        TimePercent = 20,
        SharedZone = (27, true),
    };

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_field_out_of_files_is_the_same_to_the_byte_with_the_ground_in_bits_or_whole_and_any_number_of_threads()
    {
        using ScratchFolder folder = new();
        using GroundLibrary library = Tiles(folder, 45, 46);
        GeoBounds area = AreaOf(Large);
        GroundMosaic mosaic = library.MosaicFor(area);
        GroundExtent cut = library.ExtentOf(area);
        ReachPieces pieces = ReachPieces.Of(Large, cut.FinestStepMetres, 20_000);
        Assert.Equal(17, pieces.Count);
        Assert.Equal(mosaic.Heights.Min(window => window.ResolutionMetres), cut.FinestStepMetres);
        Assert.True(cut.HasSea.Value && mosaic.Sea!.HasSea);
        ResultStore store = new(folder.At("cache"));
        using JobRunner two = new(store, new() { Threads = 2 });
        using JobResult result = await two.RunAsync(new() { Name = "field", Chunks = ReachFieldJob.ChunksOf(pieces, cut) }, null, Token);
        using JobRunner one = new(null, new() { Threads = 1 });
        using JobResult whole = await one.RunAsync(new() { Name = "field", Chunks = ReachFieldJob.ChunksOf(pieces, GroundExtent.Of(mosaic)), IsKept = false }, null, Token);
        for (int chunk = 0; chunk < pieces.Count; chunk++)
        {
            Assert.Equal(whole.Read(chunk, Token), result.Read(chunk, Token));
        }

        ReachField field = ReachFieldJob.Field(pieces, result);
        Assert.Equal(Large, field.Input);
        Assert.True(field.CellCount > 7_000);
        Assert.Empty(field.Gaps);
    }

    [Fact]
    public async Task Only_the_station_that_was_changed_is_worked_out_again()
    {
        using ScratchFolder folder = new();
        using GroundLibrary library = Tiles(folder, 46);
        ReachFieldInput[] inputs = [.. Enumerable.Range(0, 4).Select(number => Small(46.3 + (number * 0.1)))];
        ResultStore store = new(folder.At("cache"));
        using JobRunner runner = new(store, new() { Threads = 2 });
        Assert.Equal((4, 0), await Run(runner, library, store, inputs));
        Assert.Equal((4, 4), await Run(runner, library, store, inputs));
        inputs[2] = inputs[2] with { StationHeightMetres = 13 };
        Assert.Equal((4, 3), await Run(runner, library, store, inputs));
        inputs[1] = inputs[1] with { ReceiverHeightMetres = 3 };
        inputs[3] = inputs[3] with { Station = new(46.61, -18.5) };
        Assert.Equal((4, 2), await Run(runner, library, store, inputs));
    }

    [Fact]
    public async Task Results_are_found_again_without_reading_the_ground_and_not_over_other_ground()
    {
        using ScratchFolder folder = new();
        ResultStore store = new(folder.At("cache"));
        using JobRunner runner = new(store, new() { Threads = 2 });
        ReachFieldInput[] inputs = [Small(46.5)];
        using (GroundLibrary library = Tiles(folder, 46))
        {
            Assert.Equal((1, 0), await Run(runner, library, store, inputs));
        }

        using (GroundLibrary library = Open(folder))
        {
            Assert.Equal((1, 1), await Run(runner, library, store, inputs));
            Assert.Equal(0, library.CachedBytes);
        }

        WriteTile(folder.At("ground", "N46W019.hgt"), 46, -19, 1);
        using (GroundLibrary library = Open(folder))
        {
            Assert.Equal((1, 0), await Run(runner, library, store, inputs));
        }
    }

    [Fact]
    public void A_file_that_turns_out_damaged_ends_the_cutting()
    {
        using ScratchFolder folder = new();
        using GroundLibrary library = Tiles(folder, 46);
        GroundExtent ground = library.ExtentOf(AreaOf(Small(46.5)));
        File.WriteAllBytes(folder.At("ground", "N46W019.hgt"), new byte[1000]);
        Assert.Contains("N46W019", Assert.Throws<GroundFileException>(() => ground.ContentHash.Value).Message, StringComparison.Ordinal);
        Assert.Throws<GroundFileException>(() => ground.Cut(AreaOf(Small(46.5))));
    }

    private static ReachFieldInput Small(double latitude) => Large with { Station = new(latitude, -18.5), RadiusMetres = 3_000, CellMetres = 200 };

    private static GeoBounds AreaOf(ReachFieldInput input) => GeoBounds.Of(input.Station).Expanded(input.RadiusMetres * 1.5);

    /// <summary>Runs the fields of several stations as one job; chunks done, and those of them that were found.</summary>
    private static async Task<(int Done, int Found)> Run(JobRunner runner, GroundLibrary library, ResultStore store, IEnumerable<ReachFieldInput> inputs)
    {
        PieceHashes hashes = new(store);
        ImmutableArray<Chunk> chunks =
        [
            .. inputs.SelectMany(input =>
            {
                GroundExtent ground = library.ExtentOf(AreaOf(input), hashes);
                return ReachFieldJob.ChunksOf(ReachPieces.Of(input, ground.FinestStepMetres), ground);
            }),
        ];
        Last last = new();
        using JobResult result = await runner.RunAsync(new() { Name = "stations", Chunks = chunks }, last, Token);
        return (last.Value.Done, last.Value.Found);
    }

    private static GroundLibrary Tiles(ScratchFolder folder, params int[] souths)
    {
        foreach (int south in souths)
        {
            foreach (int west in souths.Length > 1 ? [-20, -19] : (int[])[-19])
            {
                WriteTile(folder.At("ground", $"N{south}W0{-west}.hgt"), south, west, 0);
            }
        }

        return Open(folder);
    }

    private static GroundLibrary Open(ScratchFolder folder)
    {
        GroundLibrary library = GroundLibrary.Open(
            folder.Root, [new HeightSource { Name = "hills", Files = ["ground"], Kind = HeightKind.BareEarth, Datum = "EGM96" }], []);
        Assert.Empty(library.Problems);
        return library;
    }

    /// <summary>Hills, and sea in the south-west; long settled, so that its hash may be remembered.</summary>
    private static void WriteTile(string path, int south, int west, int lift)
    {
        short[] samples = new short[1201 * 1201];
        for (int i = 0; i < samples.Length; i++)
        {
            double latitude = south + 1 - (i / 1201 / 1200.0);
            double longitude = west + (i % 1201 / 1200.0);
            samples[i] = (short)(latitude + longitude < 27.0 ? 0 : lift + 90 + (50 * Math.Sin(latitude * 300)) + (40 * Math.Cos(longitude * 410)));
        }

        HgtWriter.Write(path, samples, 1201);
        File.SetLastWriteTimeUtc(path, DateTime.UnixEpoch.AddYears(50).AddSeconds(lift));
    }

    private sealed class Last : IProgress<JobProgress>
    {
        public JobProgress Value { get; private set; }

        public void Report(JobProgress value) => Value = value;
    }
}
