using System.Globalization;
using BitMiracle.LibTiff.Classic;
using Mastwright.Ground;

namespace Mastwright.Storage.Ground;

/// <summary>Writes the tags that say where a GeoTIFF lies (OGC 19-008r4, GeoTIFF 1.1).</summary>
internal static class TiffGeoTags
{
    private const TiffTag PixelScale = (TiffTag)33550;
    private const TiffTag TiePoints = (TiffTag)33922;
    private const TiffTag GeoKeys = (TiffTag)34735;
    private const TiffTag NoData = (TiffTag)42113;
    private static readonly Lock Once = new();
    private static bool s_registered;

    /// <summary>Tells the library of the tags; once in a process, before a file is opened for writing.</summary>
    internal static void Register()
    {
        lock (Once)
        {
            if (s_registered)
            {
                return;
            }

            s_registered = true;
            Tiff.TiffExtendProc? before = Tiff.SetTagExtender(null);
            Tiff.SetTagExtender(tiff =>
            {
                before?.Invoke(tiff);
                tiff.MergeFieldInfo(
                    [
                        new(PixelScale, -1, -1, TiffType.DOUBLE, FieldBit.Custom, okToChange: true, passCount: true, "ModelPixelScale"),
                        new(TiePoints, -1, -1, TiffType.DOUBLE, FieldBit.Custom, okToChange: true, passCount: true, "ModelTiepoint"),
                        new(GeoKeys, -1, -1, TiffType.SHORT, FieldBit.Custom, okToChange: true, passCount: true, "GeoKeyDirectory"),
                        new(NoData, -1, -1, TiffType.ASCII, FieldBit.Custom, okToChange: true, passCount: false, "NoData"),
                    ],
                    4);
            });
        }
    }

    /// <summary>Sets the tags of an open file.</summary>
    internal static void Write(Tiff tiff, GridFrame frame, double? noData = null)
    {
        double half = frame.SamplesAreAreas ? 0.5 : 0;
        double[] scale = [frame.StepX, frame.StepY, 0];
        double[] tie = [0, 0, 0, frame.OriginX - (half * frame.StepX), frame.OriginY + (half * frame.StepY), 0];
        short rasterType = frame.SamplesAreAreas ? (short)1 : (short)2;
        short[] keys = frame.IsGeographic
            ? [1, 1, 0, 3, 1024, 0, 1, 2, 1025, 0, 1, rasterType, 2048, 0, 1, 4326]
            : [1, 1, 0, 3, 1024, 0, 1, 1, 1025, 0, 1, rasterType, 3072, 0, 1, (short)((frame.IsNorth ? 32600 : 32700) + frame.UtmZone)];
        tiff.SetField(PixelScale, scale.Length, scale);
        tiff.SetField(TiePoints, tie.Length, tie);
        tiff.SetField(GeoKeys, keys.Length, keys);
        if (noData is double value)
        {
            tiff.SetField(NoData, value.ToString("R", CultureInfo.InvariantCulture));
        }
    }
}
