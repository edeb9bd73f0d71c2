using System.Security.Cryptography;
using System.Text;
using Mastwright.Geodesy;

namespace Mastwright.Ground;

/// <summary>The ground of an area that need not fit into memory: windows of it are cut as they are needed.</summary>
/// <remarks>Whatever part is asked for, its heights, cover and sea are those of the whole. Safe from many threads, as <see cref="Cut"/> has to be.</remarks>
public sealed record GroundExtent
{
    /// <summary>The ground of a part of the area, with the sea map of the whole.</summary>
    public required Func<GeoBounds, GroundMosaic> Cut { get; init; }

    /// <summary>Distance in metres of two samples of the finest heights in the area; infinity where there are none.</summary>
    public required double FinestStepMetres { get; init; }

    /// <summary>SHA-256, in lower-case hexadecimal, of all that its heights, cover and sea depend on; worked out when first asked for.</summary>
    public required Lazy<string> ContentHash { get; init; }

    /// <summary>Whether any cover is known.</summary>
    public bool HasCover { get; init; }

    /// <summary>Whether any heights are those of roofs and trees.</summary>
    public bool HasSurface { get; init; }

    /// <summary>Whether any heights are those of bare ground, or of nobody knows what.</summary>
    public bool HasBareGround { get; init; }

    /// <summary>Whether there is any sea; worked out when first asked for.</summary>
    public required Lazy<bool> HasSea { get; init; }

    /// <summary>A mosaic that is in memory as a whole.</summary>
    public static GroundExtent Of(GroundMosaic mosaic)
    {
        ArgumentNullException.ThrowIfNull(mosaic);
        return new()
        {
            Cut = _ => mosaic,
            FinestStepMetres = mosaic.Heights.Select(window => window.ResolutionMetres).DefaultIfEmpty(double.PositiveInfinity).Min(),
            ContentHash = new(() => Hash(mosaic.Heights.Concat(mosaic.Covers).Select(window => window.ContentHash), mosaic.SeaTiles, mosaic.CoverTable)),
            HasCover = !mosaic.Covers.IsEmpty,
            HasSurface = mosaic.Heights.Any(window => window.Kind == HeightKind.Surface),
            HasBareGround = mosaic.Heights.Any(window => window.Kind != HeightKind.Surface),
            HasSea = new(() => mosaic.Sea is { HasSea: true } || !mosaic.SeaTiles.IsEmpty),
        };
    }

    /// <summary>The same ground under cover of one height, where no cover is known (<see cref="GroundMosaic.WithUniformCover"/>).</summary>
    /// <param name="metres">Height of the cover in metres, 0 to 100.</param>
    public GroundExtent WithUniformCover(double metres)
    {
        Func<GeoBounds, GroundMosaic> cut = Cut;
        Lazy<string> hash = ContentHash;
        return HasCover
            ? this
            : this with
            {
                Cut = area => cut(area).WithUniformCover(metres),
                HasCover = true,
                ContentHash = new(() => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(FormattableString.Invariant($"{hash.Value} under {metres:R} m"))))),
            };
    }

    /// <summary>The content hash of ground that is made of windows, in their order, of tiles left to the sea and of a cover table.</summary>
    public static string Hash(IEnumerable<string> windowHashes, IEnumerable<GroundTile> seaTiles, CoverTable coverTable)
    {
        ArgumentNullException.ThrowIfNull(coverTable);
        StringBuilder text = new();
        text.AppendJoin('\n', windowHashes).Append('\n').AppendJoin('\n', seaTiles.Select(tile => tile.Name)).Append('\n');
        for (int code = 0; code < 256; code++)
        {
            CoverRow? row = coverTable.Find((byte)code);
            text.Append(row is null ? "-\n" : FormattableString.Invariant($"{row.CoverClass} {row.HeightMetres:R}\n"));
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }
}
