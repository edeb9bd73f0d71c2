using System.Collections.Immutable;
using System.Globalization;
using System.Xml;
using Mastwright.Geodesy;

namespace Mastwright.Storage.Plans.Exchange;

/// <summary>KML 2.2: a placemark with a point is a place.</summary>
internal static class KmlPlaces
{
    private const string Namespace = "http://www.opengis.net/kml/2.2";

    internal static void Read(byte[] bytes, List<ExchangedPlace> places, List<string> left)
    {
        using XmlReader reader = XmlPlaces.Open(bytes);
        reader.MoveToContent();
        if (reader.LocalName != "kml")
        {
            throw new PlaceFaultException(XmlPlaces.Line(reader), "This is not a KML file.", reader.LocalName, "a document whose outermost element is kml");
        }

        int without = 0;
        while (XmlPlaces.Read(reader))
        {
            if (reader.NodeType == XmlNodeType.Element && reader.LocalName == "Placemark")
            {
                if (Placemark(reader) is { } place)
                {
                    places.Add(place);
                }
                else
                {
                    without++;
                }
            }
        }

        if (without > 0)
        {
            left.Add(string.Create(CultureInfo.InvariantCulture, $"{without} placemarks hold no point (lines, areas) and were left."));
        }
    }

    internal static string Write(ImmutableArray<ExchangedPlace> places) => XmlPlaces.Write(writer =>
    {
        writer.WriteStartElement("kml", Namespace);
        writer.WriteStartElement("Document", Namespace);
        foreach (ExchangedPlace place in places)
        {
            writer.WriteStartElement("Placemark", Namespace);
            writer.WriteElementString("name", Namespace, XmlPlaces.Clean(place.Name));
            if (place.Remark.Length > 0)
            {
                writer.WriteElementString("description", Namespace, XmlPlaces.Clean(place.Remark));
            }

            writer.WriteStartElement("ExtendedData", Namespace);
            Data(writer, "key", place.Key);
            Data(writer, "kind", place.IsNeighbour == true ? "neighbour" : "site");
            Data(writer, "radius", PlaceNumbers.Write(place.Position.RadiusMetres));
            writer.WriteEndElement();
            writer.WriteStartElement("Point", Namespace);
            string elevation = place.ElevationMetres is { } metres ? "," + PlaceNumbers.Write(metres) : "";
            if (elevation.Length > 0)
            {
                writer.WriteElementString("altitudeMode", Namespace, "absolute");
            }

            writer.WriteElementString(
                "coordinates", Namespace, $"{PlaceNumbers.Write(place.Position.Point.LongitudeDegrees)},{PlaceNumbers.Write(place.Position.Point.LatitudeDegrees)}{elevation}");
            writer.WriteEndElement();
            writer.WriteEndElement();
        }

        writer.WriteEndElement();
        writer.WriteEndElement();
    });

    private static void Data(XmlWriter writer, string name, string value)
    {
        writer.WriteStartElement("Data", Namespace);
        writer.WriteAttributeString("name", name);
        writer.WriteElementString("value", Namespace, value);
        writer.WriteEndElement();
    }

    private static ExchangedPlace? Placemark(XmlReader reader)
    {
        int line = XmlPlaces.Line(reader);
        string name = "";
        string coordinates = "";
        string data = "";
        string altitudeMode = "";
        Dictionary<string, string> own = new(StringComparer.Ordinal);
        List<string> remarks = [];
        bool point = false;
        int depth = reader.Depth;
        bool empty = reader.IsEmptyElement;
        while (!empty && XmlPlaces.Read(reader) && !(reader.NodeType == XmlNodeType.EndElement && reader.Depth == depth))
        {
            if (reader.NodeType != XmlNodeType.Element)
            {
                continue;
            }

            switch (reader.LocalName)
            {
                case "name" when reader.Depth == depth + 1:
                    name = XmlPlaces.Text(reader);
                    break;
                case "description" when reader.Depth == depth + 1:
                    remarks.Add(XmlPlaces.Text(reader));
                    break;
                case "Data":
                    data = reader.GetAttribute("name") ?? "";
                    break;
                case "SimpleData":
                    remarks.Add($"{reader.GetAttribute("name")}: {XmlPlaces.Text(reader)}");
                    break;
                case "value" when data is "key" or "kind" or "radius":
                    own[data] = XmlPlaces.Text(reader);
                    break;
                case "value":
                    remarks.Add($"{data}: {XmlPlaces.Text(reader)}");
                    break;
                case "Point":
                    point = true;
                    break;
                case "altitudeMode":
                    altitudeMode = XmlPlaces.Text(reader);
                    break;
                case "coordinates" when point && coordinates.Length == 0:
                    coordinates = XmlPlaces.Text(reader);
                    break;
            }
        }

        if (!point)
        {
            return null;
        }

        string[] numbers = coordinates.Split(',', StringSplitOptions.TrimEntries);
        if (numbers.Length is not (2 or 3))
        {
            throw new PlaceFaultException(line, "These are not the coordinates of a point.", coordinates, "longitude,latitude or longitude,latitude,altitude");
        }

        GeoPoint place = PlaceNumbers.Point(line, numbers[1], numbers[0]);

        // Only an absolute altitude is one above sea level; the format's own default is "clamped to the ground", which ignores it.
        double? elevation = numbers.Length == 3 && altitudeMode == "absolute" ? PlaceNumbers.Metres(line, numbers[2], -12_000) : null;
        return new()
        {
            Name = name,
            Key = own.GetValueOrDefault("key", ""),
            IsNeighbour = PlaceFile.Kind(own.GetValueOrDefault("kind", "")),
            Position = new(place, PlaceNumbers.Metres(line, own.GetValueOrDefault("radius"), 0) ?? 0),
            ElevationMetres = elevation,
            Remark = string.Join("\n", remarks.Where(remark => remark.Length > 0)),
        };
    }
}
