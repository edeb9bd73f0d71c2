using System.Globalization;
using Mastwright.Ground;

namespace Mastwright.Storage.Ground;

/// <summary>Where a GeoTIFF lies, from its own tags (OGC 19-008r4, GeoTIFF 1.1: clauses on raster space, tie points and geokeys).</summary>
internal static class TiffGeoReference
{
    private const int PixelScale = 33550;
    private const int TiePoints = 33922;
    private const int Transformation = 34264;
    private const int GeoKeys = 34735;
    private const int ModelTypeKey = 1024;
    private const int RasterTypeKey = 1025;
    private const int GeographicTypeKey = 2048;
    private const int ProjectedTypeKey = 3072;
    private const int VerticalTypeKey = 4096;
    private const int Projected = 1;
    private const int Geographic = 2;
    private const int PixelIsPoint = 2;
    private const int Wgs84 = 4326;

    /// <summary>ETRS 89, geographic: within a metre of WGS 84 and taken as it, as its UTM zones are.</summary>
    private const int Etrs89 = 4258;
    private const string Wanted = "give it in geographic WGS 84 (EPSG:4326), ETRS 89 (EPSG:4258) or UTM (EPSG:326xx, 327xx, 258xx), for example by gdalwarp -t_srs EPSG:4326";

    internal static GridFrame Frame(string path, TiffHeader header, int columns, int rows)
    {
        Dictionary<int, int> keys = Keys(header);
        bool isPoint = keys.GetValueOrDefault(RasterTypeKey) == PixelIsPoint;
        (double x, double y, double stepX, double stepY) = Corner(path, header);
        if (!isPoint)
        {
            x += stepX / 2;
            y -= stepY / 2;
        }

        try
        {
            switch (keys.GetValueOrDefault(ModelTypeKey))
            {
                case Geographic when keys.GetValueOrDefault(GeographicTypeKey, Wgs84) is Wgs84 or Etrs89:
                    return GridFrame.Geographic(x, y, stepX, stepY, columns, rows, !isPoint);
                case Projected when UtmOf(keys.GetValueOrDefault(ProjectedTypeKey)) is (int zone, bool isNorth):
                    return GridFrame.Utm(zone, isNorth, x, y, stepX, stepY, columns, rows, !isPoint);
                case Geographic:
                    throw new GroundFileException(path, $"its coordinates are EPSG:{keys[GeographicTypeKey]}", Wanted);
                case Projected:
                    throw new GroundFileException(path, $"its coordinates are EPSG:{keys.GetValueOrDefault(ProjectedTypeKey)}", Wanted);
                default:
                    throw new GroundFileException(path, "it does not say where on the earth it lies (no geokeys)", Wanted);
            }
        }
        catch (ArgumentException fault)
        {
            throw new GroundFileException(path, $"it lies nowhere on the earth ({fault.Message})", Wanted, fault);
        }
    }

    /// <summary>The vertical datum by its EPSG code; empty when the file does not say.</summary>
    internal static string Datum(TiffHeader header) => Keys(header).GetValueOrDefault(VerticalTypeKey) switch
    {
        0 or 32767 => "",
        5773 or 5171 => "EGM96",
        3855 => "EGM2008",
        5703 or 5103 => "NAVD88",
        int code => string.Create(CultureInfo.InvariantCulture, $"EPSG:{code}"),
    };

    /// <summary>The zone of a UTM code. ETRS 89 (258xx) is within a metre of WGS 84 and taken as it.</summary>
    internal static (int Zone, bool IsNorth)? UtmOf(int code) => code switch
    {
        >= 32601 and <= 32660 => (code - 32600, true),
        >= 32701 and <= 32760 => (code - 32700, false),
        >= 25828 and <= 25838 => (code - 25800, true),
        _ => null,
    };

    private static Dictionary<int, int> Keys(TiffHeader header)
    {
        long[] raw = header.Integers(GeoKeys);
        Dictionary<int, int> keys = [];
        for (int i = 4; i + 3 < raw.Length; i += 4)
        {
            // A key whose value stands in the directory itself has location 0.
            if (raw[i + 1] == 0)
            {
                keys[(int)raw[i]] = (int)raw[i + 3];
            }
        }

        return keys;
    }

    private static (double X, double Y, double StepX, double StepY) Corner(string path, TiffHeader header)
    {
        double[] scale = header.Doubles(PixelScale);
        double[] tie = header.Doubles(TiePoints);
        double[] matrix = header.Doubles(Transformation);
        double x, y, stepX, stepY;
        if (scale.Length >= 2 && tie.Length >= 6)
        {
            (stepX, stepY) = (scale[0], scale[1]);
            x = tie[3] - (tie[0] * stepX);
            y = tie[4] + (tie[1] * stepY);
        }
        else if (matrix.Length == 16)
        {
            if (matrix[1] != 0 || matrix[4] != 0)
            {
                throw new GroundFileException(path, "its grid is rotated", Wanted);
            }

            (x, y, stepX, stepY) = (matrix[3], matrix[7], matrix[0], -matrix[5]);
        }
        else
        {
            throw new GroundFileException(path, "it does not say where on the earth it lies (no tie point and scale)", Wanted);
        }

        bool isSound = double.IsFinite(x) && double.IsFinite(y) && stepX > 0 && stepY > 0 && double.IsFinite(stepX) && double.IsFinite(stepY);
        return isSound ? (x, y, stepX, stepY) : throw new GroundFileException(path, "its first row is not the northernmost, or its scale is no number", Wanted);
    }
}
