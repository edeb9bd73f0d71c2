using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Mastwright.Geodesy;
using Mastwright.Ground;

namespace Mastwright.Storage.Ground;

/// <summary>The ground files of a plan: what is there, and windows of it cut on demand.</summary>
/// <remarks>
/// Opening reads names and headers only. Samples are read piece by piece when a path or an area needs them, each piece once, and kept
/// up to <see cref="GroundLibraryOptions.CacheBytes"/>. Safe from many threads.
/// </remarks>
public sealed class GroundLibrary : IDisposable
{
    private const double HighestInterestingMetres = SeaMap.CoastalHeightMetres;

    /// <summary>A path has few pieces, most of them read before; only an area is worth more than one thread.</summary>
    private const int FewPieces = 8;

    private readonly ImmutableArray<LibraryFile> _files;
    private readonly ImmutableArray<(string Source, TileIndex Index)> _indexes;
    private readonly ConcurrentDictionary<string, GroundProblem> _problems = new(StringComparer.Ordinal);
    private readonly BoundedCache<PieceKey, GroundWindow> _pieces;
    private readonly BoundedCache<GroundTile, SeaCell[]> _seaCells;
    private readonly BoundedCache<LatticeBounds, SeaMap> _seaMaps;
    private readonly CoverTable _coverTable;

    private GroundLibrary(
        ImmutableArray<LibraryFile> files, ImmutableArray<(string Source, TileIndex Index)> indexes, IEnumerable<GroundProblem> problems, GroundLibraryOptions options)
    {
        _files = files;
        _indexes = indexes;
        foreach (GroundProblem problem in problems)
        {
            _problems.TryAdd(problem.File, problem);
        }

        // The sea takes a sixteenth: a tile of its lattice is 57 kB, a map of a county 1 MB.
        _pieces = new(options.CacheBytes / 16 * 14, window => window.SizeBytes);
        _seaCells = new(options.CacheBytes / 16, cells => cells.Length);
        _seaMaps = new(options.CacheBytes / 16, map => map.SizeBytes);
        _coverTable = options.CoverTable ?? CoverCatalogue.BuiltIn;
    }

    /// <summary>Files and patterns that cannot be used, so far: a damaged file shows itself when it is first read.</summary>
    public ImmutableArray<GroundProblem> Problems => [.. _problems.Values.OrderBy(problem => problem.File, StringComparer.Ordinal)];

    /// <summary>Number of files that can be used, as far as their headers tell.</summary>
    public int FileCount => _files.Length;

    /// <summary>Bytes of samples that are kept in memory now.</summary>
    public long CachedBytes => _pieces.Bytes + _seaCells.Bytes + _seaMaps.Bytes;

    /// <summary>The height sources, each with the datum that its files state where the plan gives none: what <see cref="VerticalDatums"/> reviews.</summary>
    public ImmutableArray<HeightSource> HeightSources { get; private init; } = [];

    /// <summary>The rectangles, in degrees, that the height files may cover; in the order of the files.</summary>
    public IEnumerable<GeoBounds> HeightBounds => _files.Where(file => !file.IsCover).Select(file => file.Bounds);

    /// <summary>Distance of two samples, in metres, of the finest height file; null when there is none.</summary>
    public double? FinestMetres => _files.Where(file => !file.IsCover).Select(file => (double?)file.File.Frame.ResolutionMetres).Min();

    /// <summary>
    /// A hash, in lower-case hexadecimal, over name, size and time of every file: another value says that the ground on the disk is no longer
    /// what was opened. Asks the disk each time.
    /// </summary>
    public string FilesHash()
    {
        StringBuilder text = new();
        foreach (LibraryFile file in _files)
        {
            FileInfo info = new(file.File.FilePath);
            text.Append(CultureInfo.InvariantCulture, $"{file.SourceName}\n{file.File.FilePath}\n{(info.Exists ? info.Length : -1)}\n{(info.Exists ? info.LastWriteTimeUtc.Ticks : 0)}\n");
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }

    /// <summary>Finds the files of a plan's sources and reads their headers.</summary>
    /// <param name="planFolder">Folder that the sources' files count from.</param>
    /// <param name="heights">Height sources in the plan's order.</param>
    /// <param name="covers">Cover sources in the plan's order.</param>
    /// <param name="options">How to keep house; null for the defaults.</param>
    /// <returns>The library. Files that cannot be used are in <see cref="Problems"/>; nothing is thrown for them.</returns>
    public static GroundLibrary Open(
        string planFolder, ImmutableArray<HeightSource> heights, ImmutableArray<CoverSource> covers, GroundLibraryOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(planFolder);
        options ??= new();
        LibraryOpening opening = new(new SourcePatterns(planFolder, options.AllowOutside));
        foreach (HeightSource source in heights)
        {
            opening.Add(source);
        }

        foreach (CoverSource source in covers)
        {
            opening.Add(source);
        }

        return new([.. opening.Files], [.. opening.Indexes], opening.Problems, options)
        {
            HeightSources =
            [
                .. heights.Select(source => source with
                {
                    Datum = source.Datum.Length > 0 ? source.Datum : opening.Files.Find(file => !file.IsCover && file.SourceName == source.Name)?.Datum ?? "",
                }),
            ],
        };
    }

    /// <summary>The ground along the path between two places, with its sea.</summary>
    public GroundMosaic MosaicFor(GeoPoint from, GeoPoint to)
    {
        GroundMosaic ground = Mosaic(PieceFinder.Along(_files, from, to), GeoBounds.Of(from, to).Expanded(1_000));
        return ground.With(ground.SeaTiles, _coverTable, NeedsSea(ground, from, to) ? SeaFor(LatticeBounds.Along(from, to, SeaMap.CoastalReachMetres)) : null);
    }

    /// <summary>The ground of an area, with its sea. All of it is in memory while the mosaic is used.</summary>
    public GroundMosaic MosaicFor(GeoBounds area)
    {
        ArgumentNullException.ThrowIfNull(area);
        GroundMosaic ground = Mosaic(PieceFinder.Within(_files, area), area);
        GeoPoint southWest = new(area.SouthDegrees, area.WestDegrees);
        GeoPoint northEast = new(area.NorthDegrees, area.EastDegrees);
        return ground.With(ground.SeaTiles, _coverTable, SeaFor(LatticeBounds.Along(southWest, northEast, SeaMap.CoastalReachMetres)));
    }

    /// <summary>The ground of an area that need not fit into memory, with the same heights, cover and sea as the mosaic of the whole would have.</summary>
    /// <param name="area">The area.</param>
    /// <param name="hashes">Knows the hashes of pieces that were read before; null to read them all for the content hash.</param>
    /// <remarks>Nothing is read until it is asked for. A file that turns out to be damaged meanwhile ends the cutting.</remarks>
    /// <exception cref="GroundFileException">From the extent's own members: a file is damaged or gone.</exception>
    public GroundExtent ExtentOf(GeoBounds area, PieceHashes? hashes = null)
    {
        ArgumentNullException.ThrowIfNull(area);
        PieceKey[] pieces = InOrder(PieceFinder.Within(_files, area));
        LatticeBounds lattice = LatticeBounds.Along(new(area.SouthDegrees, area.WestDegrees), new(area.NorthDegrees, area.EastDegrees), SeaMap.CoastalReachMetres);
        Lazy<SeaMap> sea = new(() => SeaFor(lattice));

        // The sea is looked up on a lattice that reaches further; its pieces count for the hash as well.
        Lazy<string> hash = new(() => GroundExtent.Hash(
            InOrder(PieceFinder.Within(_files, area.Expanded(2 * SeaMap.CoastalReachMetres))).Select(key => HashOf(key, hashes)),
            TilesOf(area.Expanded(2 * SeaMap.CoastalReachMetres)).Where(IsLeftToSea),
            _coverTable));
        return new()
        {
            Cut = part =>
            {
                GroundMosaic ground = Mosaic(PieceFinder.Within(_files, part), part);
                ThrowIfDamaged();
                return ground.With(ground.SeaTiles, _coverTable, sea.Value);
            },
            FinestStepMetres = pieces.Where(key => !_files[key.File].IsCover).Select(key => _files[key.File].FrameOf(key.Column, key.Row).ResolutionMetres).DefaultIfEmpty(double.PositiveInfinity).Min(),
            ContentHash = hash,
            HasCover = pieces.Any(key => _files[key.File].IsCover),
            HasSurface = pieces.Any(key => !_files[key.File].IsCover && _files[key.File].Kind == HeightKind.Surface),
            HasBareGround = pieces.Any(key => !_files[key.File].IsCover && _files[key.File].Kind != HeightKind.Surface),
            HasSea = new(() => sea.Value.HasSea || TilesOf(area).Any(IsLeftToSea)),
        };
    }

    /// <summary>One-degree tiles of an area that no height file covers and no tile index leaves to the sea.</summary>
    public ImmutableArray<GroundTile> MissingTiles(GeoBounds area) =>
    [
        .. TilesOf(area).Where(tile => !IsLeftToSea(tile) && !_files.Any(file => !file.IsCover && file.Bounds.Contains(MiddleOf(tile)))),
    ];

    /// <summary>Reads every file from end to end, piece by piece: range, voids, hash.</summary>
    /// <remarks>A damaged file keeps what its header says and becomes one of the <see cref="Problems"/>.</remarks>
    /// <exception cref="OperationCanceledException">The reading was cancelled.</exception>
    public ImmutableArray<GroundFileInfo> Info(CancellationToken cancellation = default)
    {
        ImmutableArray<GroundFileInfo>.Builder all = ImmutableArray.CreateBuilder<GroundFileInfo>(_files.Length);
        foreach (LibraryFile file in _files)
        {
            all.Add(GroundFileInfo.Of(file, out GroundProblem? problem, cancellation));
            if (problem is not null)
            {
                _problems.TryAdd(problem.File, problem);
            }
        }

        return all.MoveToImmutable();
    }

    /// <summary>Forgets what is in memory.</summary>
    public void Dispose()
    {
        _pieces.Clear();
        _seaCells.Clear();
        _seaMaps.Clear();
    }

    /// <summary>A piece; null when its file turns out to be damaged, which is then a problem of the library.</summary>
    internal GroundWindow? Load(PieceKey key)
    {
        LibraryFile file = _files[key.File];
        if (_problems.ContainsKey(file.File.FilePath))
        {
            return null;
        }

        try
        {
            return _pieces.Get(key, one => file.ReadPiece(one.Column, one.Row));
        }
        catch (GroundFileException fault)
        {
            _problems.TryAdd(file.File.FilePath, new(file.SourceName, fault.FilePath, fault.Found, fault.Right));
            return null;
        }
    }

    internal static IEnumerable<GroundTile> TilesOf(GeoBounds area)
    {
        ArgumentNullException.ThrowIfNull(area);
        double east = area.WestDegrees + area.WidthDegrees;
        for (int south = (int)Math.Floor(area.SouthDegrees); south <= Math.Min(89, area.NorthDegrees); south++)
        {
            for (int west = (int)Math.Floor(area.WestDegrees); west <= east; west++)
            {
                yield return GroundTile.OneDegree(south, west);
            }
        }
    }

    private static GeoPoint MiddleOf(GroundTile tile) => new(tile.SouthDegrees + 0.5, tile.WestDegrees + 0.5);

    /// <summary>Whether any point of a path is low enough to be sea or coastal land; if not, nobody has to look for the sea.</summary>
    private static bool NeedsSea(GroundMosaic ground, GeoPoint from, GeoPoint to)
    {
        if (Geodesic.Inverse(from, to).DistanceMetres < 1)
        {
            return ground.HeightAt(from).Metres <= HighestInterestingMetres;
        }

        foreach (double height in TerrainProfile.Extract(ground, from, to).HeightsMetres)
        {
            if (height <= HighestInterestingMetres)
            {
                return true;
            }
        }

        return false;
    }

    private GroundMosaic Mosaic(HashSet<PieceKey> keys, GeoBounds area)
    {
        PieceKey[] ordered = InOrder(keys);
        GroundWindow?[] windows = new GroundWindow?[ordered.Length];
        if (ordered.Length > FewPieces)
        {
            Parallel.For(0, ordered.Length, i => windows[i] = Load(ordered[i]));
        }
        else
        {
            for (int i = 0; i < ordered.Length; i++)
            {
                windows[i] = Load(ordered[i]);
            }
        }

        return GroundMosaic.Of(windows.OfType<GroundWindow>()).With([.. TilesOf(area).Where(IsLeftToSea)], _coverTable, sea: null);
    }

    private static PieceKey[] InOrder(HashSet<PieceKey> keys) => [.. keys.OrderBy(key => key.File).ThenBy(key => key.Row).ThenBy(key => key.Column)];

    private string HashOf(PieceKey key, PieceHashes? hashes)
    {
        LibraryFile file = _files[key.File];
        string Read()
        {
            string? hash = Load(key)?.ContentHash;
            ThrowIfDamaged();
            return hash!;
        }

        // Windows say what kind of heights they hold; which source they are of decides which comes first.
        return $"{file.SourceName} {(hashes is null ? Read() : hashes.Of(file.File.FilePath, key.Column, key.Row, file.Kind, Read))}";
    }

    private void ThrowIfDamaged()
    {
        if (!_problems.IsEmpty && Problems is [var first, ..])
        {
            throw new GroundFileException(first.File, first.Found, first.Right);
        }
    }

    private bool IsLeftToSea(GroundTile tile) => _indexes.Any(index => !index.Index.Lists(tile));

    private SeaMap SeaFor(LatticeBounds bounds) => _seaMaps.Get(bounds.Rounded(), rounded =>
    {
        (int Start, GroundTile Tile, int InTile, int Count)[] runs = [.. Runs(rounded)];
        GroundTile[] tiles = [.. runs.Select(run => run.Tile).Distinct()];
        if (tiles.Length > 1)
        {
            Parallel.ForEach(tiles, tile => SeaCellsOf(tile));
        }

        SeaCell[] cells = new SeaCell[rounded.Count];
        foreach ((int start, GroundTile tile, int inTile, int count) in runs)
        {
            SeaCellsOf(tile).AsSpan(inTile, count).CopyTo(cells.AsSpan(start));
        }

        return SeaMap.Build(rounded, cells);
    });

    private SeaCell[] SeaCellsOf(GroundTile tile) =>
        _seaCells.Get(tile, one => SeaCells.Of(one, _files, _indexes.Select(index => index.Index), Load));

    /// <summary>The rows of a lattice cut where tiles end: each stretch of cells is a stretch of one tile's own.</summary>
    private static IEnumerable<(int Start, GroundTile Tile, int InTile, int Count)> Runs(LatticeBounds lattice)
    {
        for (int i = 0; i < lattice.Count;)
        {
            (int south, int west) = lattice.TileCorner(i);
            int inTile = lattice.IndexInTile(i);
            int count = Math.Min(SeaCells.Side - (inTile % SeaCells.Side), lattice.Columns - (i % lattice.Columns));
            yield return (i, GroundTile.OneDegree(south, west), inTile, count);
            i += count;
        }
    }
}
