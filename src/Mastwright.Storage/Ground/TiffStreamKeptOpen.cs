using BitMiracle.LibTiff.Classic;

namespace Mastwright.Storage.Ground;

/// <summary>Leaves the stream open when the library is done, so that it can be flushed and renamed.</summary>
internal sealed class TiffStreamKeptOpen : TiffStream
{
    public override void Close(object clientData)
    {
    }
}
