using System.Collections.Immutable;
using System.Globalization;
using System.Xml;
using Mastwright.Geodesy;

namespace Mastwright.Storage.Plans.Exchange;

/// <summary>GPX 1.1: a way point is a place.</summary>
internal static class GpxPlaces
{
    private const string Namespace = "http://www.topografix.com/GPX/1/1";

    internal static void Read(byte[] bytes, List<ExchangedPlace> places, List<string> left)
    {
        using XmlReader reader = XmlPlaces.Open(bytes);
        reader.MoveToContent();
        if (reader.LocalName != "gpx")
        {
            throw new PlaceFaultException(XmlPlaces.Line(reader), "This is not a GPX file.", reader.LocalName, "a document whose outermost element is gpx");
        }

        int tracks = 0;
        while (XmlPlaces.Read(reader))
        {
            if (reader.NodeType != XmlNodeType.Element)
            {
                continue;
            }

            if (reader.LocalName == "wpt")
            {
                places.Add(WayPoint(reader));
            }
            else if (reader.LocalName is "rte" or "trk")
            {
                tracks++;
            }
        }

        if (tracks > 0)
        {
            left.Add(string.Create(CultureInfo.InvariantCulture, $"{tracks} routes or tracks are no places and were left."));
        }
    }

    internal static string Write(ImmutableArray<ExchangedPlace> places) => XmlPlaces.Write(writer =>
    {
        writer.WriteStartElement("gpx", Namespace);
        writer.WriteAttributeString("version", "1.1");
        writer.WriteAttributeString("creator", "Mastwright");
        writer.WriteAttributeString("xmlns", "station", null, XmlPlaces.OwnNamespace);
        foreach (ExchangedPlace place in places)
        {
            writer.WriteStartElement("wpt", Namespace);
            writer.WriteAttributeString("lat", PlaceNumbers.Write(place.Position.Point.LatitudeDegrees));
            writer.WriteAttributeString("lon", PlaceNumbers.Write(place.Position.Point.LongitudeDegrees));
            if (place.ElevationMetres is { } elevation)
            {
                writer.WriteElementString("ele", Namespace, PlaceNumbers.Write(elevation));
            }

            writer.WriteElementString("name", Namespace, XmlPlaces.Clean(place.Name));
            if (place.Remark.Length > 0)
            {
                writer.WriteElementString("desc", Namespace, XmlPlaces.Clean(place.Remark));
            }

            writer.WriteStartElement("extensions", Namespace);
            writer.WriteElementString("key", XmlPlaces.OwnNamespace, place.Key);
            writer.WriteElementString("kind", XmlPlaces.OwnNamespace, place.IsNeighbour == true ? "neighbour" : "site");
            writer.WriteElementString("radius", XmlPlaces.OwnNamespace, PlaceNumbers.Write(place.Position.RadiusMetres));
            writer.WriteEndElement();
            writer.WriteEndElement();
        }

        writer.WriteEndElement();
    });

    private static ExchangedPlace WayPoint(XmlReader reader)
    {
        int line = XmlPlaces.Line(reader);
        GeoPoint point = PlaceNumbers.Point(line, reader.GetAttribute("lat") ?? "", reader.GetAttribute("lon") ?? "");
        string name = "";
        string key = "";
        string kind = "";
        double? elevation = null;
        double radius = 0;
        List<string> remarks = [];
        int depth = reader.Depth;
        bool empty = reader.IsEmptyElement;
        while (!empty && XmlPlaces.Read(reader) && !(reader.NodeType == XmlNodeType.EndElement && reader.Depth == depth))
        {
            if (reader.NodeType != XmlNodeType.Element || reader.LocalName is "extensions")
            {
                continue;
            }

            bool own = reader.NamespaceURI == XmlPlaces.OwnNamespace;
            string element = reader.LocalName;
            if (element == "link" && reader.GetAttribute("href") is { Length: > 0 } target)
            {
                remarks.Add($"link: {target}");
            }

            string text = XmlPlaces.Text(reader);
            switch (element)
            {
                case "ele":
                    elevation = PlaceNumbers.Metres(line, text, -12_000);
                    break;
                case "name":
                    name = text;
                    break;
                case "key" when own:
                    key = text;
                    break;
                case "kind" when own:
                    kind = text;
                    break;
                case "radius" when own:
                    radius = PlaceNumbers.Metres(line, text, 0) ?? 0;
                    break;
                case "desc":
                    remarks.Add(text);
                    break;
                default:
                    if (text.Length > 0)
                    {
                        remarks.Add($"{element}: {text}");
                    }

                    break;
            }
        }

        return new()
        {
            Name = name,
            Key = key,
            IsNeighbour = PlaceFile.Kind(kind),
            Position = new(point, radius),
            ElevationMetres = elevation,
            Remark = string.Join("\n", remarks.Where(remark => remark.Length > 0)),
        };
    }
}
