using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Mastwright.Ground;
using Mastwright.Storage.Jobs;

namespace Mastwright.Storage.Ground;

/// <summary>Remembers the content hashes of pieces of ground files, so that results of unchanged ground are found without reading it again.</summary>
/// <remarks>
/// A file counts as unchanged while its full path, its length and its time of writing are the same. One written within the last two seconds is
/// not remembered: it could be written once more within one tick of its clock. Safe from many threads.
/// </remarks>
/// <param name="store">Where the hashes are kept.</param>
/// <param name="time">The clock; null for the machine's.</param>
public sealed class PieceHashes(ResultStore store, TimeProvider? time = null)
{
    private static readonly TimeSpan Settled = TimeSpan.FromSeconds(2);

    private readonly TimeProvider clock = time ?? TimeProvider.System;

    /// <summary>The hash of a piece, remembered or worked out.</summary>
    /// <param name="file">The file.</param>
    /// <param name="column">Column of the piece.</param>
    /// <param name="row">Row of the piece.</param>
    /// <param name="kind">What the plan says that its heights are of.</param>
    /// <param name="read">Works it out.</param>
    public string Of(string file, int column, int row, HeightKind kind, Func<string> read)
    {
        ArgumentNullException.ThrowIfNull(read);
        FileInfo info = new(file);
        if (!info.Exists)
        {
            return read();
        }

        DateTime written = info.LastWriteTimeUtc;
        string key = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(
            string.Create(CultureInfo.InvariantCulture, $"ground piece 1\n{info.FullName}\n{info.Length} {written.Ticks} {column} {row} {kind}"))));
        if (store.Read(key) is { } known)
        {
            return Encoding.ASCII.GetString(known);
        }

        string hash = read();
        if (clock.GetUtcNow().UtcDateTime - written > Settled)
        {
            store.Keep(key, Encoding.ASCII.GetBytes(hash));
        }

        return hash;
    }
}
