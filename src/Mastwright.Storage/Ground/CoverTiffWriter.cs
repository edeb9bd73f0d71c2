using BitMiracle.LibTiff.Classic;
using Mastwright.Ground;

namespace Mastwright.Storage.Ground;

/// <summary>Writes cover codes as a tiled, deflated GeoTIFF.</summary>
public static class CoverTiffWriter
{
    /// <summary>Writes a file beside its final name, then renames it: nothing half written is left behind.</summary>
    /// <param name="path">File to write; its folder exists.</param>
    /// <param name="frame">Where the codes lie.</param>
    /// <param name="codes">Codes row by row from the north-west; 0 where nothing is known.</param>
    /// <exception cref="ArgumentException">There is not one code for each sample of the frame.</exception>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public static void Write(string path, GridFrame frame, ReadOnlyMemory<byte> codes) =>
        TiledGrid.Write(path, frame, codes, SampleFormat.UINT, absent: (byte)0, stored: (byte)0);
}
