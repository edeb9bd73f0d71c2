using System.Globalization;
using System.Text.RegularExpressions;
using Mastwright.Ground;

namespace Mastwright.Storage.Ground;

/// <summary>The tiles that a source has, by its own list: one tile a line, each line with the tile's south-western corner in it.</summary>
internal sealed partial class TileIndex
{
    private const long LargestFileBytes = 16 * 1024 * 1024;

    private readonly HashSet<string> _names;

    private TileIndex(HashSet<string> names) => _names = names;

    /// <summary>Reads a list such as "N46W019" or "…_N46_00_W019_00_…" a line; empty lines and lines that start with # are skipped.</summary>
    /// <exception cref="GroundFileException">It is too large, or a line names no tile.</exception>
    internal static TileIndex Read(string path) => GroundFileFormat.Guard(path, "tile index", () =>
    {
        if (new FileInfo(path).Length > LargestFileBytes)
        {
            throw new GroundFileException(path, "it is larger than 16 MiB", "give a tile index with one tile name a line");
        }

        HashSet<string> names = new(StringComparer.Ordinal);
        int number = 0;
        foreach (string line in File.ReadLines(path))
        {
            number++;
            string text = line.Trim();
            if (text.Length == 0 || text[0] == '#')
            {
                continue;
            }

            Match match = Corner().Match(text);
            if (!match.Success)
            {
                string shown = text.Length > 40 ? text[..40] + "…" : text;
                throw new GroundFileException(path, string.Create(CultureInfo.InvariantCulture, $"line {number}, '{shown}', names no tile"), "one tile name a line, such as N46W019");
            }

            names.Add(string.Concat(match.Groups["ns"].Value, match.Groups["lat"].Value, match.Groups["ew"].Value, match.Groups["lon"].Value).ToUpperInvariant());
        }

        return new TileIndex(names);
    });

    /// <summary>Whether the source has a tile.</summary>
    internal bool Lists(GroundTile tile) => _names.Contains(tile.Name);

    [GeneratedRegex(@"(?<![A-Za-z])(?<ns>[NSns])(?<lat>\d\d)(_00)?_?(?<ew>[EWew])(?<lon>\d{3})(?!\d)", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Corner();
}
