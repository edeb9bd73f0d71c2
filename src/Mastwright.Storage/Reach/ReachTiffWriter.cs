using BitMiracle.LibTiff.Classic;
using Mastwright.Ground;
using Mastwright.Storage.Ground;

namespace Mastwright.Storage.Reach;

/// <summary>Writes one number a cell as a tiled, deflated GeoTIFF of 32-bit floating-point samples.</summary>
public static class ReachTiffWriter
{
    /// <summary>The sample that stands for "no value".</summary>
    public const float NoData = -9999;

    /// <summary>The whole number that stands for "no value".</summary>
    public const ushort NoNumber = ushort.MaxValue;

    /// <summary>Writes a file beside its final name, then renames it: nothing half written is left behind.</summary>
    /// <param name="path">File to write; its folder exists.</param>
    /// <param name="frame">Where the cells lie.</param>
    /// <param name="values">Values row by row from the north-west; NaN where there is none.</param>
    /// <exception cref="ArgumentException">There is not one value for each cell of the frame.</exception>
    /// <exception cref="IOException">The file cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be written.</exception>
    public static void Write(string path, GridFrame frame, ReadOnlyMemory<float> values) =>
        TiledGrid.Write(path, frame, values, SampleFormat.IEEEFP, absent: float.NaN, stored: NoData, NoData);

    /// <summary>Writes a file in the same way, with the values asked for some rows at a time, from the north.</summary>
    /// <param name="path">File to write; its folder exists.</param>
    /// <param name="frame">Where the cells lie.</param>
    /// <param name="valuesOf">Values of so many rows from a first one on; NaN where there is none.</param>
    /// <exception cref="IOException">The file cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be written.</exception>
    public static void Write(string path, GridFrame frame, Func<int, int, ReadOnlyMemory<float>> valuesOf)
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(valuesOf);
        TiledGrid.Write(path, frame, valuesOf, SampleFormat.IEEEFP, absent: float.NaN, stored: NoData, NoData);
    }

    /// <summary>Writes one whole number a cell, in the same way as 16-bit unsigned samples.</summary>
    /// <param name="path">File to write; its folder exists.</param>
    /// <param name="frame">Where the cells lie.</param>
    /// <param name="values">Values row by row from the north-west; <see cref="NoNumber"/> where there is none.</param>
    /// <exception cref="ArgumentException">There is not one value for each cell of the frame.</exception>
    /// <exception cref="IOException">The file cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be written.</exception>
    public static void WriteNumbers(string path, GridFrame frame, ReadOnlyMemory<ushort> values) =>
        TiledGrid.Write(path, frame, values, SampleFormat.UINT, absent: NoNumber, stored: NoNumber, NoNumber);
}
