using System.Collections.Immutable;
using System.Text.Json;
using System.Xml;

namespace Mastwright.Storage.Plans.Exchange;

/// <summary>Reads a file of places in one of the four formats.</summary>
public static class PlaceFile
{
    /// <summary>Most places that are taken from one file.</summary>
    internal const int MostPlaces = 100_000;

    /// <summary>Reads a file. Never throws for a bad one: the problem says what and where.</summary>
    /// <param name="path">The file, at most 16 MiB.</param>
    /// <param name="format">Its format; null to go by its extension.</param>
    public static PlaceReading Read(string path, PlaceFormat? format = null)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        if ((format ?? PlaceFormats.ByExtension(path)) is not { } known)
        {
            return Refused(path, 0, "The extension tells no format of places.", "", ".gpx, .geojson, .kml or .csv, or the format by option");
        }

        byte[]? bytes = PlanSource.ReadBounded(path, Path.GetFullPath(path), out PlanProblem? problem);
        return bytes is null ? new([], [problem!], []) : Read(path, bytes, known);
    }

    /// <summary>Reads places from bytes.</summary>
    internal static PlaceReading Read(string name, byte[] bytes, PlaceFormat format)
    {
        List<ExchangedPlace> places = [];
        List<string> left = [];
        try
        {
            switch (format)
            {
                case PlaceFormat.Gpx:
                    GpxPlaces.Read(bytes, places, left);
                    break;
                case PlaceFormat.Kml:
                    KmlPlaces.Read(bytes, places, left);
                    break;
                case PlaceFormat.GeoJson:
                    GeoJsonPlaces.Read(bytes, places, left);
                    break;
                default:
                    CsvPlaces.Read(bytes, places);
                    break;
            }
        }
        catch (PlaceFaultException fault)
        {
            return Refused(name, fault.Line, fault.Message, fault.Found, fault.Wanted);
        }
        catch (XmlException fault)
        {
            return Refused(name, fault.LineNumber, "This is not well-formed XML, or it holds a document type, which is refused.", "", "a plain XML document");
        }
        catch (JsonException fault)
        {
            return Refused(name, (int)(fault.LineNumber ?? -1) + 1, "This is not well-formed JSON.", "", "GeoJSON text");
        }
        catch (InvalidOperationException)
        {
            // A JSON string that is no well-formed text.
            return Refused(name, 0, "A text in the file holds half of a character.", "", "well-formed text");
        }

        return places.Count > MostPlaces
            ? Refused(name, 0, "The file holds more places than any plan.", "", $"at most {MostPlaces}")
            : new([.. places], [], [.. left.Select(note => new PlanProblem { Code = "places-left", File = name, Message = note })]);
    }

    /// <summary>Whether a word says neighbour or site; null when it says neither.</summary>
    internal static bool? Kind(string word) => word switch { "neighbour" => true, "site" => false, _ => null };

    private static PlaceReading Refused(string name, int line, string message, string found, string wanted) =>
        new([], [new() { Code = "places-file", File = name, Line = Math.Max(line, 0), Column = line > 0 ? 1 : 0, Message = message, Found = found, Wanted = wanted }], []);
}
