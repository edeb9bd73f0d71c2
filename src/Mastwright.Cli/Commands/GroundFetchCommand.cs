using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using Mastwright.Ground;
using Mastwright.Plans;
using Mastwright.Storage.Ground;
using Mastwright.Storage.Plans;

namespace Mastwright.Cli.Commands;

/// <summary>ground fetch: downloads the height tiles that a plan's area lacks. The one command that uses the network.</summary>
internal static class GroundFetchCommand
{
    private const string DefaultFolder = "ground";

    internal static Command Create()
    {
        Argument<string> plan = Options.Plan();
        Option<string?> source = new("--source") { Description = "Where from, by its key in the catalogue of tile sources (default: the first; a wrong key lists them)." };
        Option<string?> url = new("--url") { Description = "Your own address pattern instead, with {ns}, {lat}, {ew}, {lon} or {name} for the tile." };
        Option<string?> file = new("--file") { Description = "File name pattern for --url, such as {name}.hgt.gz (default: the last part of the address)." };
        Option<string?> to = new("--to") { Description = "Folder to write into (default: that of the plan's first height source, else 'ground' beside the plan)." };
        Option<bool> list = new("--list") { Description = "Only tell which tiles are missing and where they would come from." };
        Option<bool> outside = Options.AllowOutside();
        Command command = new("fetch", "Download the height tiles that a plan's area lacks; goes on where a broken download stopped.")
        {
            plan, source, url, file, to, list, outside,
        };
        command.SetAction((parsed, cancellation) => RunAsync(
            parsed.GetRequiredValue(plan),
            new(parsed.GetValue(source), parsed.GetValue(url), parsed.GetValue(file), parsed.GetValue(to), parsed.GetValue(list), parsed.GetValue(outside)),
            cancellation));
        return command;
    }

    private static async Task<int> RunAsync(string planPath, FetchOptions options, CancellationToken cancellation)
    {
        if (PlanSession.Read(planPath, options.AllowOutside) is not { } document || SourceOf(options) is not { } source)
        {
            return ExitCode.BadInput;
        }

        if (PlanArea.Of(document.Plan) is not { } area)
        {
            Console.Error.WriteLine($"{planPath}: the plan has no stations, so it has no area to fetch");
            return ExitCode.BadInput;
        }

        ImmutableArray<GroundTile> missing = Missing(document, options.AllowOutside, area);
        string folder = options.To ?? Path.Combine(document.Folder, FolderOf(document.Plan));
        if (missing.IsEmpty)
        {
            Console.Out.WriteLine("Nothing is missing: the plan's ground files cover its stations.");
            return ExitCode.Fine;
        }

        Console.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Missing tiles: {missing.Length}"));
        Console.Out.WriteLine($"Source: {source.Name}");
        Console.Out.WriteLine($"Terms: {source.Licence}");
        if (options.List)
        {
            foreach (GroundTile tile in missing)
            {
                Console.Out.WriteLine($"  {tile.Name}  {source.AddressOf(tile)}");
            }

            return ExitCode.Fine;
        }

        return await FetchAsync(document, source, missing, folder, cancellation).ConfigureAwait(false);
    }

    private static async Task<int> FetchAsync(PlanDocument document, TileSource source, ImmutableArray<GroundTile> missing, string folder, CancellationToken cancellation)
    {
        using HttpClient client = new() { Timeout = Timeout.InfiniteTimeSpan };
        client.DefaultRequestHeaders.UserAgent.ParseAdd("Mastwright/0.1");
        TileFetchSummary summary;
        using (FetchBar bar = new())
        {
            summary = await new TileFetcher(client, TimeProvider.System).FetchAsync(source, missing, folder, bar, cancellation).ConfigureAwait(false);
        }

        foreach (TileFetchResult result in summary.Results)
        {
            Console.Out.WriteLine(result.Outcome switch
            {
                TileFetchOutcome.Fetched => string.Create(CultureInfo.InvariantCulture, $"  {result.Tile.Name}  fetched, {result.Bytes / 1e6:0.0} MB"),
                TileFetchOutcome.Present => $"  {result.Tile.Name}  is there already",
                TileFetchOutcome.Absent => $"  {result.Tile.Name}  is not at the source",
                _ => $"  {result.Tile.Name}  failed: {result.Text}",
            });
        }

        if (summary.Count(TileFetchOutcome.Absent) > 0)
        {
            Console.Out.WriteLine("A tile that is not there may be all sea: if the source has a list of its tiles, name it as tile-index in the plan.");
        }

        Tell(document, source, folder, summary);
        return summary.Count(TileFetchOutcome.Failed) > 0 ? ExitCode.BadInput : ExitCode.Fine;
    }

    /// <summary>Says what to write into the plan when it does not name the fetched files yet.</summary>
    private static void Tell(PlanDocument document, TileSource source, string folder, TileFetchSummary summary)
    {
        TileFetchResult? kept = summary.Results.FirstOrDefault(result => result.Outcome is TileFetchOutcome.Fetched or TileFetchOutcome.Present);
        if (kept is null)
        {
            return;
        }

        using GroundLibrary ground = GroundLibrary.Open(document.Folder, document.Plan.Heights, document.Plan.Covers, new() { AllowOutside = true });
        if (ground.MissingTiles(new(kept.Tile.SouthDegrees + 0.4, kept.Tile.WestDegrees + 0.4, kept.Tile.SouthDegrees + 0.6, kept.Tile.WestDegrees + 0.6)).IsEmpty)
        {
            return;
        }

        string relative = Path.GetRelativePath(document.Folder, folder).Replace('\\', '/');
        string ending = source.File[(source.File.LastIndexOf('}') + 1)..];
        Console.Out.WriteLine();
        Console.Out.WriteLine("The plan does not name these files yet. Its ground/heights should hold (in place of a line that matches no file):");
        Console.Out.WriteLine("  heights:");
        Console.Out.WriteLine($"    - files: {relative}/*{ending}");
        if (source.Kind != HeightKind.Unknown)
        {
            Console.Out.WriteLine($"      kind: {(source.Kind == HeightKind.Surface ? "surface" : "bare-earth")}");
        }

        if (source.Datum.Length > 0)
        {
            Console.Out.WriteLine($"      datum: {source.Datum}");
        }
    }

    private static ImmutableArray<GroundTile> Missing(PlanDocument document, bool allowOutside, Geodesy.GeoBounds area)
    {
        using GroundLibrary ground = GroundLibrary.Open(document.Folder, document.Plan.Heights, document.Plan.Covers, new() { AllowOutside = allowOutside });
        return ground.MissingTiles(area);
    }

    private static TileSource? SourceOf(FetchOptions options)
    {
        if (options.Url is { } url)
        {
            if (!TileSource.IsFetchable(url))
            {
                Console.Error.WriteLine($"--url: '{url}' is no address of the kind http://… or https://…");
                return null;
            }

            return new("given", url, url, options.File ?? url[(url.LastIndexOf('/') + 1)..], HeightKind.Unknown, "", AbsentIsSea: false, "the publisher's own", "given");
        }

        if (options.Source is { } key && TileSource.BuiltIn.All(source => source.Key != key))
        {
            Console.Error.WriteLine($"--source: '{key}' is not known; there are {FitOutChoice.Listed(TileSource.BuiltIn.Select(source => source.Key))}");
            return null;
        }

        return options.Source is null ? TileSource.BuiltIn[0] : TileSource.BuiltIn.First(source => source.Key == options.Source);
    }

    private static string FolderOf(Plan plan)
    {
        string first = plan.Heights.FirstOrDefault()?.Files.FirstOrDefault() ?? "";
        string? folder = first.Contains('/', StringComparison.Ordinal) ? first[..first.LastIndexOf('/')] : null;
        return folder is null || folder.Contains('*', StringComparison.Ordinal) ? DefaultFolder : folder;
    }

    private sealed record FetchOptions(string? Source, string? Url, string? File, string? To, bool List, bool AllowOutside);

    /// <summary>A bar on the terminal's error output; silent elsewhere.</summary>
    private sealed class FetchBar : IProgress<TileFetchProgress>, IDisposable
    {
        private readonly bool isTerminal = !Console.IsErrorRedirected;
        private readonly Lock gate = new();

        public void Report(TileFetchProgress value)
        {
            if (!isTerminal)
            {
                return;
            }

            lock (gate)
            {
                int filled = value.Tiles == 0 ? 0 : 30 * value.TilesDone / value.Tiles;
                Console.Error.Write($"\r[{new string('#', filled)}{new string('.', 30 - filled)}] {value}   ");
            }
        }

        public void Dispose()
        {
            if (isTerminal)
            {
                Console.Error.Write("\r" + new string(' ', 78) + "\r");
            }
        }
    }
}
