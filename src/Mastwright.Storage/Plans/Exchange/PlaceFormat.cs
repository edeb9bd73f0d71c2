namespace Mastwright.Storage.Plans.Exchange;

/// <summary>A file format that carries places.</summary>
public enum PlaceFormat
{
    /// <summary>GPX 1.1 way points.</summary>
    Gpx,

    /// <summary>GeoJSON (RFC 7946) points.</summary>
    GeoJson,

    /// <summary>KML 2.2 placemarks with a point.</summary>
    Kml,

    /// <summary>Comma-separated values with a heading row.</summary>
    Csv,
}

/// <summary>Finds the format of a file.</summary>
public static class PlaceFormats
{
    /// <summary>The format of a file by its extension; null when it is none of the four.</summary>
    public static PlaceFormat? ByExtension(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return Path.GetExtension(path).ToLowerInvariant() switch
        {
            ".gpx" => PlaceFormat.Gpx,
            ".geojson" or ".json" => PlaceFormat.GeoJson,
            ".kml" => PlaceFormat.Kml,
            ".csv" or ".tsv" or ".txt" => PlaceFormat.Csv,
            _ => null,
        };
    }
}
