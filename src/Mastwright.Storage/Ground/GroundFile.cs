using Mastwright.Ground;

namespace Mastwright.Storage.Ground;

/// <summary>A height or cover file whose header was read: its grid is known, its samples are read piece by piece.</summary>
/// <remarks>Holds no open handle: each read opens the file anew, so any number of threads may read at once.</remarks>
internal abstract class GroundFile(string path, string format, GridFrame frame)
{
    /// <summary>Most samples of one piece: 16 Mi heights are 64 MiB.</summary>
    internal const int MostSamplesAPiece = 16 * 1024 * 1024;

    internal string FilePath { get; } = path;

    /// <summary>Name of the format, for a person.</summary>
    internal string Format { get; } = format;

    internal GridFrame Frame { get; } = frame;

    /// <summary>What the file itself says its vertical datum is; empty when it does not.</summary>
    internal virtual string Datum => "";

    /// <summary>Columns of a piece that is worth reading at once; the last piece of a row may be narrower.</summary>
    internal abstract int PieceColumns { get; }

    /// <summary>Rows of a piece that is worth reading at once.</summary>
    internal abstract int PieceRows { get; }

    /// <summary>Whether the samples can be cover codes (one unsigned byte each).</summary>
    internal virtual bool CanBeCover => false;

    /// <summary>Whether one row costs little more than its own bytes.</summary>
    internal virtual bool HasCheapRows => false;

    /// <summary>Reads the heights of a rectangle, row by row; what cannot be a height comes as it stands.</summary>
    /// <exception cref="GroundFileException">The file is damaged or gone.</exception>
    internal abstract float[] ReadHeights(int column, int row, int columns, int rows);

    /// <summary>Reads the cover codes of a rectangle, row by row.</summary>
    /// <exception cref="GroundFileException">The file is damaged, gone, or holds no codes.</exception>
    internal virtual byte[] ReadCover(int column, int row, int columns, int rows) =>
        throw new GroundFileException(FilePath, $"a {Format} file holds heights, not cover codes", "give a GeoTIFF of one unsigned byte a sample");

    /// <summary>Name of the tile: the file's name without folders.</summary>
    internal string Name => Path.GetFileName(FilePath);
}
